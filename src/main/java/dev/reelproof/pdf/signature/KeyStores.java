package dev.reelproof.pdf.signature;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.Provider;
import java.security.Security;
import java.security.UnrecoverableKeyException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where a plant's signing key is kept: a PKCS#12 file, or a device that speaks PKCS#11. */
public final class KeyStores {
    private static final String PKCS12 = "PKCS12";
    private static final String PKCS11 = "PKCS11";
    private static final String DEVICES = "SunPKCS11";
    private static final String QUOTE = "\"";

    private KeyStores() {}

    /**
     * The key of a PKCS#12 file.
     *
     * @param alias which key; may be empty when there is one
     * @throws CannotSignException when the file is missing or is none, the password is wrong, or no fit key is inside
     */
    public static SigningKey file(Path file, String password, Optional<String> alias) {
        return file(file, password, alias, false);
    }

    static SigningKey file(Path file, String password, Optional<String> alias, boolean demo) {
        String where = "The key file " + file;
        if (!Files.isRegularFile(file)) {
            throw new CannotSignException(
                    where + " is not there. REELPROOF_SIGNING_KEYSTORE names the PKCS#12 file with the signing key.");
        }
        char[] secret = password.toCharArray();
        try (InputStream in = Files.newInputStream(file)) {
            KeyStore store = KeyStore.getInstance(PKCS12);
            store.load(in, secret);
            return SigningKey.of(store, secret, alias, where, null, demo);
        } catch (IOException e) {
            if (e.getCause() instanceof UnrecoverableKeyException) {
                throw new CannotSignException(
                        where + " does not open with the password given (REELPROOF_SIGNING_PASSWORD).", e);
            }
            throw new CannotSignException(
                    where + " cannot be read as PKCS#12 (usual endings: .p12, .pfx): " + e.getMessage(), e);
        } catch (GeneralSecurityException e) {
            throw new CannotSignException(where + " cannot be read: " + e.getMessage(), e);
        }
    }

    /**
     * The key in a device, reached through its maker's PKCS#11 library.
     *
     * @param slot the index in the list of slots, from 0
     * @param pin what opens the device
     * @param alias which key; may be empty when there is one
     * @throws CannotSignException when the library or the device does not answer, the PIN is wrong, or no fit key is inside
     */
    public static SigningKey device(Path library, int slot, String pin, Optional<String> alias) {
        String where = "The signing device of " + library + ", slot " + slot + ",";
        if (!Files.isRegularFile(library)) {
            throw new CannotSignException("The PKCS#11 library " + library
                    + " is not there. REELPROOF_SIGNING_PKCS11_LIBRARY names the device's library.");
        }
        Provider prototype = Security.getProvider(DEVICES);
        if (prototype == null) {
            throw new CannotSignException("This Java has no PKCS#11 (module jdk.crypto.cryptoki).");
        }
        try {
            Provider provider = prototype.configure("--name=reelproof" + slot + "\nlibrary=" + QUOTE + library + QUOTE
                    + "\nslotListIndex=" + slot + "\n");
            KeyStore store = KeyStore.getInstance(PKCS11, provider);
            store.load(null, pin.toCharArray());
            return SigningKey.of(store, pin.toCharArray(), alias, where, provider, false);
        } catch (IOException | GeneralSecurityException e) {
            throw new CannotSignException(
                    where + " does not open: " + cause(e) + ". Check the device, the slot and the PIN.", e);
        } catch (RuntimeException e) {
            if (e instanceof CannotSignException) {
                throw e;
            }
            throw new CannotSignException(where + " does not answer: " + cause(e) + ".", e);
        }
    }

    /** What lies at the bottom, where a device's own word is found. */
    private static @Nullable String cause(Throwable e) {
        Throwable root = e;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        return root.getMessage();
    }
}
