package dev.reelproof.pdf.signature;

import java.security.GeneralSecurityException;
import java.security.Key;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.Provider;
import java.security.Signature;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A private key with the certificates that say whose it is. It may stay in a device; it is never given out. */
public final class SigningKey {
    private static final String ELLIPTIC = "EC";
    private static final String RSA = "RSA";
    private static final int DIGITAL_SIGNATURE = 0;
    private static final int NON_REPUDIATION = 1;

    private final PrivateKey key;
    private final List<X509Certificate> chain;
    private final @Nullable Provider device;
    private final boolean demo;

    private SigningKey(PrivateKey key, List<X509Certificate> chain, @Nullable Provider device, boolean demo) {
        this.key = key;
        this.chain = List.copyOf(chain);
        this.device = device;
        this.demo = demo;
    }

    /**
     * The key of a store that is open.
     *
     * @param where the store in words, for the refusals
     * @param device who computes with a key that does not leave its device; null for a key of a file
     * @throws CannotSignException when the store has no such key, several and none is named, or one that cannot sign
     */
    static SigningKey of(
            KeyStore store,
            char[] password,
            Optional<String> alias,
            String where,
            @Nullable Provider device,
            boolean demo) {
        try {
            String name = alias.isPresent() ? alias.get() : onlyKeyOf(store, where);
            Key key = store.getKey(name, password);
            Certificate @Nullable [] certificates = store.getCertificateChain(name);
            if (!(key instanceof PrivateKey privateKey) || certificates == null) {
                throw new CannotSignException(where + " has no key with a certificate named '" + name + "'. It has: "
                        + String.join(", ", Collections.list(store.aliases())) + ".");
            }
            List<X509Certificate> chain =
                    Arrays.stream(certificates).map(X509Certificate.class::cast).toList();
            requireFit(chain.get(0), where);
            return new SigningKey(privateKey, chain, device, demo);
        } catch (GeneralSecurityException e) {
            throw new CannotSignException("The key of " + where + " cannot be read: " + e.getMessage(), e);
        }
    }

    private static String onlyKeyOf(KeyStore store, String where) throws GeneralSecurityException {
        List<String> keys = Collections.list(store.aliases());
        for (String name : List.copyOf(keys)) {
            if (!store.isKeyEntry(name)) {
                keys.remove(name);
            }
        }
        if (keys.isEmpty()) {
            throw new CannotSignException(where + " has no private key with a certificate.");
        }
        if (keys.size() > 1) {
            throw new CannotSignException(where + " has several keys: " + String.join(", ", keys)
                    + ". Say which with REELPROOF_SIGNING_ALIAS.");
        }
        return keys.get(0);
    }

    private static void requireFit(X509Certificate certificate, String where) {
        String algorithm = certificate.getPublicKey().getAlgorithm();
        if (!(algorithm.equals(ELLIPTIC) || algorithm.equals(RSA))) {
            throw new CannotSignException(where + " has a key of type " + algorithm
                    + "; certificates are signed with an RSA key or one on an elliptic curve (EC).");
        }
        boolean @Nullable [] usage = certificate.getKeyUsage();
        if (usage != null && !(usage[DIGITAL_SIGNATURE] || usage[NON_REPUDIATION])) {
            throw new CannotSignException(
                    "The certificate of " + where + " does not allow its key to sign documents (key usage).");
        }
    }

    /** Whether it is a key that anybody can make, and that proves nothing. */
    public boolean isDemo() {
        return demo;
    }

    public X509Certificate certificate() {
        return chain.get(0);
    }

    /** The certificate and those that vouch for it, as the store has them. */
    List<X509Certificate> chain() {
        return chain;
    }

    /**
     * Asks whether the key may sign at this time.
     *
     * @throws CannotSignException when its certificate does not hold then
     */
    public void requireValidAt(Instant time) {
        Instant from = certificate().getNotBefore().toInstant();
        Instant to = certificate().getNotAfter().toInstant();
        if (time.isBefore(from)) {
            throw new CannotSignException("The signing key's certificate holds from " + from + " on only.");
        }
        if (time.isAfter(to)) {
            throw new CannotSignException("The signing key's certificate expired at " + to
                    + ". Put a key with a certificate that holds into its place.");
        }
    }

    boolean isElliptic() {
        return certificate().getPublicKey().getAlgorithm().equals(ELLIPTIC);
    }

    /** Signs the SHA-256 of the data. */
    byte[] sign(byte[] data) {
        String algorithm = isElliptic() ? "SHA256withECDSA" : "SHA256withRSA";
        try {
            Signature signature =
                    device == null ? Signature.getInstance(algorithm) : Signature.getInstance(algorithm, device);
            signature.initSign(key);
            signature.update(data);
            return signature.sign();
        } catch (GeneralSecurityException e) {
            throw new CannotSignException("The signing key did not sign: " + e.getMessage(), e);
        }
    }
}
