package dev.reelproof.store.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** A running PostgreSQL on a data directory. */
final class ServerProcess {
    private static final Duration LONGEST_START = Duration.ofSeconds(60);

    /** After a crash it reads its log again, which may take a while. */
    private static final Duration LONGEST_RECOVERY = Duration.ofMinutes(10);

    private static final Duration LONGEST_STOP = Duration.ofSeconds(60);
    private static final String SECONDS_TO_STOP = "60";
    private static final Duration LONGEST_FAREWELL = Duration.ofSeconds(20);
    private static final Duration BETWEEN_QUESTIONS = Duration.ofMillis(50);
    private static final long MOST_LOG_BYTES = 10L * 1024 * 1024;
    private static final String STARTING_UP = "57P03";
    private static final String POSTGRES = "postgres";

    private final Process process;
    private final ServerPrograms programs;
    private final DataDirectory directory;

    private ServerProcess(Process process, ServerPrograms programs, DataDirectory directory) {
        this.process = process;
        this.programs = programs;
        this.directory = directory;
    }

    /**
     * Starts a server and waits until it answers.
     *
     * @param root the data folder, for what the server writes about itself
     * @param port the port of the local machine on which it listens
     * @throws IOException when it does not start; the message ends with what it said
     */
    static ServerProcess start(
            Path root, ServerPrograms programs, DataDirectory directory, int port, Passwords passwords)
            throws IOException {
        stopOrphan(directory.path());
        Path log = root.resolve("server.log");
        keepShort(log);
        Path access = root.resolve("server/access.conf");
        Files.writeString(access, "host all all 127.0.0.1/32 scram-sha-256\n");
        long before = Files.exists(log) ? Files.size(log) : 0;
        Process process = new ProcessBuilder(programs.command(
                        POSTGRES,
                        List.of(
                                "-D",
                                directory.path().toString(),
                                "-p",
                                Integer.toString(port),
                                "-c",
                                "hba_file=" + access,
                                "-c",
                                "listen_addresses=127.0.0.1",
                                "-c",
                                "unix_socket_directories=",
                                "-c",
                                "max_connections=100",
                                "-c",
                                "fsync=on",
                                "-c",
                                "full_page_writes=on",
                                "-c",
                                "synchronous_commit=on")))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                .start();
        ServerProcess server = new ServerProcess(process, programs, directory);
        boolean answers = false;
        try {
            server.waitUntilItAnswers(port, passwords, log, before);
            answers = true;
        } finally {
            if (!answers) {
                process.destroyForcibly();
            }
        }
        return server;
    }

    private static void keepShort(Path log) throws IOException {
        if (Files.exists(log) && Files.size(log) > MOST_LOG_BYTES) {
            Files.move(log, log.resolveSibling("server.log.1"), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private void waitUntilItAnswers(int port, Passwords passwords, Path log, long before) throws IOException {
        Stopwatch watch = new Stopwatch();
        Duration longest = LONGEST_START;
        while (true) {
            if (!process.isAlive()) {
                throw new IOException("PostgreSQL ended with code " + process.exitValue() + ": " + said(log, before));
            }
            try {
                connect(port, passwords).close();
                return;
            } catch (SQLException e) {
                if (STARTING_UP.equals(e.getSQLState())) {
                    longest = LONGEST_RECOVERY;
                }
                if (watch.isBeyond(longest)) {
                    throw new IOException(
                            "PostgreSQL did not answer within " + longest.toSeconds() + " s: " + e.getMessage(), e);
                }
            }
            pause();
        }
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(BETWEEN_QUESTIONS.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("Interrupted while waiting for PostgreSQL", e);
        }
    }

    private static String said(Path log, long before) throws IOException {
        byte[] all = Files.readAllBytes(log);
        int from = (int) Math.min(before, all.length);
        return new String(all, from, all.length - from, StandardCharsets.UTF_8).strip();
    }

    /** A connection as the owner. */
    static Connection connect(int port, Passwords passwords) throws SQLException {
        Properties properties = new Properties();
        properties.setProperty("user", EmbeddedDatabase.OWNER);
        properties.setProperty("password", passwords.owner());
        properties.setProperty("connectTimeout", "5");
        properties.setProperty("loginTimeout", "5");
        return DriverManager.getConnection(EmbeddedDatabase.address(port), properties);
    }

    /** The number of the process. */
    long pid() {
        return process.pid();
    }

    /** Waits until the server has ended, for whatever reason, and says with which code. */
    int waitForEnd() throws InterruptedException {
        return process.waitFor();
    }

    /** Stops the server once the program's other parts have left it, or after a while without asking them. */
    void stop(int port, Passwords passwords) throws IOException {
        if (!process.isAlive()) {
            return;
        }
        waitUntilClientsHaveLeft(port, passwords);
        try {
            new ProcessBuilder(programs.command(
                            "pg_ctl",
                            List.of("stop", "-D", directory.path().toString(), "-m", "fast", "-t", SECONDS_TO_STOP)))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start()
                    .waitFor();
            if (!process.waitFor(LONGEST_STOP.toSeconds(), TimeUnit.SECONDS)) {
                throw new IOException("PostgreSQL (process " + process.pid() + ") did not stop");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("Interrupted while PostgreSQL was stopping", e);
        }
    }

    private static void waitUntilClientsHaveLeft(int port, Passwords passwords) throws IOException {
        Stopwatch watch = new Stopwatch();
        while (!watch.isBeyond(LONGEST_FAREWELL)) {
            try (Connection own = connect(port, passwords);
                    Statement statement = own.createStatement();
                    ResultSet others =
                            statement.executeQuery("select from pg_stat_activity where backend_type = 'client backend'"
                                    + " and pid <> pg_backend_pid() limit 1")) {
                if (!others.next()) {
                    return;
                }
            } catch (SQLException e) {
                return; // it is ending, or frozen: nobody is served any more
            }
            pause();
        }
    }

    /**
     * Stops a server that outlived a program which was killed, and clears the mark of one that is gone.
     *
     * <p>The folder is ours by now, so that no living program owns it. A mark whose process number belongs to something else by now
     * would keep PostgreSQL from starting.
     */
    static void stopOrphan(Path database) throws IOException {
        Path mark = database.resolve("postmaster.pid");
        if (!Files.exists(mark)) {
            return;
        }
        Optional<ProcessHandle> process = processOf(Files.readAllLines(mark));
        if (process.isEmpty() || !isServer(process.get())) {
            Files.deleteIfExists(mark);
            return;
        }
        // PostgreSQL's own stop on this signal waits for its clients, which died with the killed program.
        process.get().destroy();
        try {
            process.get().onExit().get(LONGEST_STOP.toSeconds(), TimeUnit.SECONDS);
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

    private static Optional<ProcessHandle> processOf(List<String> mark) {
        try {
            return mark.isEmpty()
                    ? Optional.empty()
                    : ProcessHandle.of(Long.parseLong(mark.get(0).trim()));
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static boolean isServer(ProcessHandle process) {
        // A process that may not be looked into is taken for the server: PostgreSQL then judges its own mark.
        return process.info()
                .command()
                .map(command -> Path.of(command).getFileName().toString().startsWith(POSTGRES))
                .orElse(true);
    }
}
