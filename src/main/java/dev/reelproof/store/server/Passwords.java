package dev.reelproof.store.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Optional;

/**
 * The passwords of the database's two users. They stand in the data folder, in a file that the program's own account alone may read:
 * another user of the machine reaches the server's port, and is asked for one.
 *
 * @param owner of the owner, as whom migrations run
 * @param service of the role as which the service works
 */
record Passwords(String owner, String service) {
    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int BYTES = 24;

    /** Two new passwords of letters, digits, dash and underscore. */
    static Passwords made() {
        return new Passwords(word(), word());
    }

    private static String word() {
        byte[] bytes = new byte[BYTES];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** The passwords of a file; empty when there is none, or not both. */
    static Optional<Passwords> in(Path file) throws IOException {
        try {
            List<String> lines = Files.readAllLines(file);
            return lines.size() == 2 ? Optional.of(new Passwords(lines.get(0), lines.get(1))) : Optional.empty();
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    /** Writes them to a file, complete or not at all. */
    void keep(Path file) throws IOException {
        Path stage = file.resolveSibling(file.getFileName() + ".unfinished");
        Files.deleteIfExists(stage);
        if (DataFolder.hasPosixRights(file)) {
            Files.createFile(stage, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        }
        Files.write(stage, List.of(owner, service));
        Files.move(stage, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    /** Not what they are. */
    @Override
    public String toString() {
        return "Passwords[not shown]";
    }
}
