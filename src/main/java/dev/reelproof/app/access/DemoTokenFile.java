package dev.reelproof.app.access;

import dev.reelproof.app.Settings;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;

/** The file in the data folder from which scripts read the demo's token. */
@Singleton
public class DemoTokenFile {
    private static final String NAME = "demo-token";

    private final Path folder;

    public DemoTokenFile(Settings settings) {
        this.folder = settings.data();
    }

    /** Where it lies. */
    public Path path() {
        return folder.resolve(NAME);
    }

    /** The token's secret; empty when there is no file. */
    public Optional<String> read() {
        try {
            return Files.exists(path()) ? Optional.of(Files.readString(path()).strip()) : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException("the demo's token cannot be read from " + path(), e);
        }
    }

    /** Writes beside the file first, so that nobody reads half of it, and never with rights for others. */
    void write(String secret) {
        try {
            Files.createDirectories(folder);
            boolean isPosix =
                    folder.getFileSystem().supportedFileAttributeViews().contains("posix");
            FileAttribute<?>[] ownersAlone = isPosix
                    ? new FileAttribute<?>[] {
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                    }
                    : new FileAttribute<?>[0];
            Path beside = Files.createTempFile(folder, NAME, null, ownersAlone);
            Files.write(beside, (secret + "\n").getBytes(StandardCharsets.UTF_8));
            Files.move(beside, path(), StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException("the demo's token cannot be kept in " + path(), e);
        }
    }
}
