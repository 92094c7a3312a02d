package dev.reelproof.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * A PostgreSQL of the program's own, in its data folder: it starts with the program and stops with it, and what it holds stays.
 *
 * <p>One program at a time may use a data folder; a lock in the folder sees to that. The server listens on the local machine
 * alone, on a port of its own choice.
 */
public final class EmbeddedDatabase implements AutoCloseable {
    private static final Duration LONGEST_START = Duration.ofSeconds(60);
    private static final Duration LONGEST_STOP_OF_AN_ORPHAN = Duration.ofSeconds(60);
    private static final String POSTGRES = "postgres";
    private static final int PORT_LINE = 3;

    /** The user that owns the database. */
    static final String OWNER = POSTGRES;

    private final EmbeddedPostgres server;
    private final FileChannel lockFile;

    private EmbeddedDatabase(EmbeddedPostgres server, FileChannel lockFile) {
        this.server = server;
        this.lockFile = lockFile;
    }

    /**
     * Starts the server on {@code folder/db}, which is made when it is not there.
     *
     * @param folder the data folder
     * @throws IllegalStateException when the folder is in use by another program or the server does not start
     */
    public static EmbeddedDatabase start(Path folder) {
        Path root = folder.toAbsolutePath().normalize();
        Path database = root.resolve("db");
        try {
            makePrivate(root);
            makePrivate(database);
            FileChannel lockFile = lock(root);
            try {
                stopOrphan(database);
                return new EmbeddedDatabase(startServer(root, database), lockFile);
            } catch (IOException | RuntimeException e) {
                lockFile.close();
                throw e;
            }
        } catch (IOException e) {
            throw new IllegalStateException(
                    "The database in " + database + " did not start (" + e.getMessage()
                            + "). The folder must be writable and its disk not full; or name a PostgreSQL server of your"
                            + " own with QUARKUS_DATASOURCE_JDBC_URL.",
                    e);
        }
    }

    private static EmbeddedPostgres startServer(Path root, Path database) throws IOException {
        return EmbeddedPostgres.builder()
                .setDataDirectory(database)
                .setCleanDataDirectory(false)
                .setOverrideWorkingDirectory(root.resolve("server").toFile())
                // The library is made for tests and turns durability off; a record that was answered must survive a
                // power cut.
                .setServerConfig("fsync", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("max_connections", "100")
                .setServerConfig("listen_addresses", "localhost")
                // The same order and the same upper and lower case on every machine, whatever its language.
                .setLocaleConfig("locale", "C")
                .setLocaleConfig("locale-provider", "builtin")
                .setLocaleConfig("builtin-locale", "C.UTF-8")
                .setPGStartupWait(LONGEST_START)
                .start();
    }

    private static void makePrivate(Path folder) throws IOException {
        Files.createDirectories(folder);
        if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    private static FileChannel lock(Path root) throws IOException {
        FileChannel channel =
                FileChannel.open(root.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        FileLock lock = null;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            // Held by this very program: the same answer as for another one.
        }
        if (lock == null) {
            channel.close();
            throw new IllegalStateException("The data folder " + root
                    + " is in use by another running copy of Reelproof. Stop that one, or set REELPROOF_DATA to another"
                    + " folder.");
        }
        return channel;
    }

    /**
     * Stops a server that outlived a program which was killed, and clears the mark of one that is gone.
     *
     * <p>The lock is ours by now, so that no living program owns it. A mark whose process number belongs to something else by now
     * would keep PostgreSQL from starting.
     */
    private static void stopOrphan(Path database) throws IOException {
        Path mark = database.resolve("postmaster.pid");
        if (!Files.exists(mark)) {
            return;
        }
        List<String> lines = Files.readAllLines(mark);
        Optional<ProcessHandle> process = lines.isEmpty()
                ? Optional.empty()
                : ProcessHandle.of(Long.parseLong(lines.get(0).trim()));
        if (process.isEmpty() || !isServer(process.get())) {
            Files.deleteIfExists(mark);
            return;
        }
        // PostgreSQL's own stop on this signal waits for its clients, which died with the killed program.
        process.get().destroy();
        try {
            process.get().onExit().get(LONGEST_STOP_OF_AN_ORPHAN.toSeconds(), TimeUnit.SECONDS);
        } catch (TimeoutException | ExecutionException e) {
            throw new IllegalStateException(
                    "A PostgreSQL left over from an earlier run (process "
                            + process.get().pid() + ") still uses " + database
                            + " and does not stop: something is connected to it. Disconnect that, or stop the process.",
                    e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("Interrupted while a left-over PostgreSQL was stopping", e);
        }
    }

    private static boolean isServer(ProcessHandle process) {
        // A process that may not be looked into is taken for the server: PostgreSQL then judges its own mark.
        return process.info()
                .command()
                .map(command -> Path.of(command).getFileName().toString().startsWith(POSTGRES))
                .orElse(true);
    }

    /** The address of the database, with its owner as the user; there is no password. */
    public String jdbcUrl() {
        return as(OWNER, address());
    }

    /**
     * The address of the database that another program runs in a data folder; empty when none holds the folder.
     *
     * @param folder the data folder
     */
    public static Optional<String> addressOfRunning(Path folder) {
        Path root = folder.toAbsolutePath().normalize();
        try {
            if (isFree(root)) {
                return Optional.empty();
            }
            // The fourth line of the mark is the port.
            List<String> lines = Files.readAllLines(root.resolve("db").resolve("postmaster.pid"));
            return Optional.of(address(Integer.parseInt(lines.get(PORT_LINE).trim())));
        } catch (IOException | NumberFormatException | IndexOutOfBoundsException e) {
            throw new IllegalStateException(
                    "The database of the running copy of Reelproof in " + root + " could not be found: "
                            + e.getMessage(),
                    e);
        }
    }

    private static boolean isFree(Path root) throws IOException {
        try {
            lock(root).close();
            return true;
        } catch (IllegalStateException inUse) {
            return false;
        }
    }

    private static String address(int port) {
        return "jdbc:postgresql://localhost:" + port + "/" + POSTGRES;
    }

    /** The address of the database, without a user. */
    public String address() {
        return address(server.getPort());
    }

    /** An address of the database with a user. */
    static String as(String user, String address) {
        return address + "?user=" + user;
    }

    /** Stops the server; what it holds stays. */
    @Override
    public void close() {
        try {
            server.close();
            lockFile.close();
        } catch (IOException e) {
            throw new UncheckedIOException("The database did not stop: " + e.getMessage(), e);
        }
    }
}
