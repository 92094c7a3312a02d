package dev.reelproof.store.server;

import dev.reelproof.digest.Sha256;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.tukaani.xz.XZInputStream;

/**
 * PostgreSQL's programs for this machine, unpacked from the jar into the data folder.
 *
 * <p>The folder is named by the digest of what it was unpacked from, so that a newer version of the program brings its own.
 */
final class ServerPrograms {
    private static final int DIGITS_OF_DIGEST = 16;
    private static final boolean WINDOWS =
            System.getProperty("os.name").toLowerCase(Locale.ROOT).contains("windows");

    private final Path home;
    private final boolean asRoot;

    private ServerPrograms(Path home, boolean asRoot) {
        this.home = home;
        this.asRoot = asRoot;
    }

    /**
     * Unpacks the programs, once.
     *
     * @param servers the folder for them
     * @throws IOException when the folder cannot be written or its disk is full
     * @throws IllegalStateException when the jar has no programs for this machine
     */
    static ServerPrograms unpacked(Path servers) throws IOException {
        DataFolder.makePrivate(servers);
        byte[] packed = packed();
        Path home = servers.resolve("postgresql-" + Sha256.hex(packed).substring(0, DIGITS_OF_DIGEST));
        Stages.clear(home);
        if (!Files.isDirectory(home)) {
            Path stage = Stages.begin(home);
            unpack(packed, stage);
            Files.move(stage, home, StandardCopyOption.ATOMIC_MOVE);
        }
        return new ServerPrograms(home, isRoot(home));
    }

    private static byte[] packed() throws IOException {
        String name = "postgres-" + system() + "-" + architecture() + ".txz";
        try (InputStream resource = ServerPrograms.class.getResourceAsStream("/" + name)) {
            if (resource == null) {
                throw new IllegalStateException("This program brings no PostgreSQL for this machine (" + name
                        + "). Name a server of your own with QUARKUS_DATASOURCE_JDBC_URL.");
            }
            return resource.readAllBytes();
        }
    }

    private static String system() {
        String name = System.getProperty("os.name").toLowerCase(Locale.ROOT);
        return WINDOWS ? "windows" : name.contains("mac") ? "darwin" : name;
    }

    private static String architecture() {
        return switch (System.getProperty("os.arch").toLowerCase(Locale.ROOT)) {
            case "amd64", "x86_64" -> "x86_64";
            case "aarch64", "arm64" -> "arm_64";
            default -> System.getProperty("os.arch").toLowerCase(Locale.ROOT);
        };
    }

    private static void unpack(byte[] packed, Path stage) throws IOException {
        try (TarArchiveInputStream archive =
                new TarArchiveInputStream(new XZInputStream(new ByteArrayInputStream(packed)))) {
            for (TarArchiveEntry entry = archive.getNextEntry(); entry != null; entry = archive.getNextEntry()) {
                Path target = stage.resolve(entry.getName()).normalize();
                if (!target.startsWith(stage)) {
                    throw new IOException("The packed programs name a file outside their folder: " + entry.getName());
                }
                if (entry.isDirectory()) {
                    Files.createDirectories(target);
                } else {
                    Files.createDirectories(target.getParent());
                    if (entry.isSymbolicLink()) {
                        Files.createSymbolicLink(target, Path.of(entry.getLinkName()));
                    } else {
                        write(archive, entry, target);
                    }
                }
            }
        }
    }

    private static void write(InputStream content, TarArchiveEntry entry, Path target) throws IOException {
        Files.copy(content, target);
        boolean isProgram = (entry.getMode() & 0100) != 0;
        if (isProgram && !target.toFile().setExecutable(true, true)) {
            throw new IOException("The programs in " + target.getParent()
                    + " may not be run there; the data folder must be on a file system that lets programs run.");
        }
        // The folder takes its place before the power may fail: what the server runs is on the disk by then.
        if (isProgram) {
            try (FileChannel channel = FileChannel.open(target, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
        }
    }

    private static boolean isRoot(Path own) throws IOException {
        return own.getFileSystem().supportedFileAttributeViews().contains("unix")
                && Integer.valueOf(0).equals(Files.getAttribute(own, "unix:uid"));
    }

    /** The command that runs one of the programs with arguments. PostgreSQL refuses to run as root, so that it is then nobody. */
    List<String> command(String program, List<String> arguments) {
        List<String> command = new ArrayList<>(asRoot ? List.of("unshare", "-U") : List.of());
        command.add(home.resolve("bin")
                .resolve(WINDOWS ? program + ".exe" : program)
                .toString());
        command.addAll(arguments);
        return List.copyOf(command);
    }
}
