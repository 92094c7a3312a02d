package dev.reelproof.store.seal;

import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.seal.SealKey;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The file that holds the key which signs heads: two blocks of PEM, {@code PRIVATE KEY} (PKCS #8) and {@code PUBLIC KEY}
 * (SubjectPublicKeyInfo), both of Ed25519.
 */
public final class SealKeyFile {
    private SealKeyFile() {}

    /** Reads the key; makes one, readable to its owner alone, when there is no file. */
    public static SealKey readOrMake(Path file) {
        try {
            if (!Files.exists(file)) {
                make(file);
            }
            String text = Files.readString(file);
            return SealKey.ofBase64(block("PRIVATE KEY", text, file), block("PUBLIC KEY", text, file));
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "The key of the log in " + file + " could not be read: " + e.getMessage(), e);
        } catch (IllegalArgumentException e) {
            throw new IllegalStateException("The key of the log in " + file + " is none: " + e.getMessage(), e);
        }
    }

    /** Reads the public key alone: all that a check needs. */
    public static PublicSealKey readPublic(Path file) {
        try {
            return PublicSealKey.ofBase64(block("PUBLIC KEY", Files.readString(file), file));
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "The public key of the log in " + file + " could not be read: " + e.getMessage(), e);
        } catch (IllegalArgumentException e) {
            throw new IllegalStateException("The public key of the log in " + file + " is none: " + e.getMessage(), e);
        }
    }

    private static void make(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null) {
            Files.createDirectories(folder);
        }
        SealKey key = SealKey.make();
        boolean posix = file.getFileSystem().supportedFileAttributeViews().contains("posix");
        FileAttribute<?>[] ownersAlone = posix
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
        // Written under another name first: a key that was cut off would keep the service from starting.
        Path draft = Files.createTempFile(
                folder == null ? Path.of(".") : folder, file.getFileName().toString(), ".new", ownersAlone);
        Files.writeString(
                draft,
                pem("PRIVATE KEY", key.secretBase64())
                        + pem("PUBLIC KEY", key.open().base64()),
                StandardOpenOption.WRITE,
                StandardOpenOption.SYNC);
        try {
            Files.move(draft, file);
        } catch (FileAlreadyExistsException e) {
            // Another copy of the service was first: its key stands.
            Files.delete(draft);
        }
    }

    /** A block of PEM. */
    public static String pem(String label, String base64) {
        return "-----BEGIN " + label + "-----\n" + base64 + "\n-----END " + label + "-----\n";
    }

    private static String block(String label, String text, Path file) {
        Matcher matcher = Pattern.compile("-----BEGIN " + label + "-----([^-]+)-----END " + label + "-----")
                .matcher(text);
        if (!matcher.find()) {
            throw new IllegalStateException("The key of the log in " + file + " has no block '" + label + "'.");
        }
        return matcher.group(1);
    }
}
