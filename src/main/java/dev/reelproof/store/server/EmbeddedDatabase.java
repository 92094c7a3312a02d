package dev.reelproof.store.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * A PostgreSQL of the program's own, in its data folder: it starts with the program and stops with it, and what it holds stays.
 *
 * <p>One program at a time may use a data folder; a lock in the folder sees to that. The server listens on the local machine alone,
 * on a port of its own choice, and asks for a password, which stands in the data folder. When it ends by itself it is started again
 * on the same port.
 */
public final class EmbeddedDatabase implements AutoCloseable {
    /** The user that owns the database. */
    public static final String OWNER = "postgres";

    /** The role as which the service works; the migrations say what it may do. */
    public static final String SERVICE_ROLE = "reelproof_service";

    private static final Logger LOG = Logger.getLogger(EmbeddedDatabase.class);
    /** The fourth line of the server's mark is its port. */
    private static final int PORT_LINE = 3;

    private static final Duration FIRST_WAIT = Duration.ofMillis(500);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(15);

    /** So long it is tried to start a lost server again; a full disk may take somebody's work. */
    private static final Duration LONGEST_OUTAGE = Duration.ofMinutes(30);

    private final DataFolder folder;
    private final ServerPrograms programs;
    private final DataDirectory directory;
    private final Passwords passwords;
    private final int port;
    private final Runnable givenUp;
    private volatile ServerProcess server;
    private volatile boolean stopping;

    private EmbeddedDatabase(DataFolder folder, Runnable givenUp) throws IOException {
        this.folder = folder;
        this.givenUp = givenUp;
        Path root = folder.root();
        programs = ServerPrograms.unpacked(root.resolve("server"));
        Path kept = passwordFile(root);
        Optional<Passwords> known = Passwords.in(kept);
        passwords = known.orElseGet(Passwords::made);
        directory = DataDirectory.at(root.resolve("db"), programs, passwords);
        port = freePort();
        if (known.isEmpty()) {
            ServerProcess.stopOrphan(directory.path());
            directory.setOwnersPassword(programs, passwords);
            passwords.keep(kept);
        }
        server = ServerProcess.start(root, programs, directory, port, passwords);
    }

    /**
     * Starts the server on {@code folder/db}, which is made when it is not there.
     *
     * @param folder the data folder
     * @param givenUp told when the server was lost and could not be started again for {@link #LONGEST_OUTAGE}
     * @throws IllegalStateException when the folder is in use by another program or the server does not start
     */
    public static EmbeddedDatabase start(Path folder, Runnable givenUp) {
        try {
            DataFolder own = DataFolder.open(folder);
            @Nullable EmbeddedDatabase database = null;
            try {
                database = new EmbeddedDatabase(own, givenUp);
                database.makeServiceRole();
                database.watch();
                return database;
            } catch (SQLException e) {
                throw new IOException(e.getMessage(), e);
            } finally {
                if (database == null) {
                    own.close();
                }
            }
        } catch (IOException e) {
            throw new IllegalStateException(
                    "The database in " + folder.resolve("db") + " did not start (" + e.getMessage()
                            + "). The folder must be writable and its disk not full; or name a PostgreSQL server of your"
                            + " own with QUARKUS_DATASOURCE_JDBC_URL.",
                    e);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    /** Makes the service's role, or gives it the password that stands in the folder. */
    private void makeServiceRole() throws SQLException {
        try (Connection owner = ServerProcess.connect(port, passwords);
                Statement statement = owner.createStatement()) {
            statement.execute("do $$ begin if not exists (select from pg_roles where rolname = '" + SERVICE_ROLE
                    + "') then create role " + SERVICE_ROLE + " login; end if; end $$");
            statement.execute("alter role " + SERVICE_ROLE + " password '" + passwords.service() + "'");
        }
    }

    private void watch() {
        Thread watcher = new Thread(this::startAgainWheneverItEnds, "watch over the embedded database");
        watcher.setDaemon(true);
        watcher.start();
    }

    private void startAgainWheneverItEnds() {
        try {
            while (!stopping) {
                int code = server.waitForEnd();
                if (stopping) {
                    return;
                }
                LOG.errorf("The database's server ended with code %d; it is started again.", code);
                if (!startAgain()) {
                    return;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private boolean startAgain() throws InterruptedException {
        Stopwatch lost = new Stopwatch();
        Duration wait = FIRST_WAIT;
        while (!stopping) {
            try {
                startUnlessStopping();
                LOG.infof(
                        "The database's server runs again, %d ms after it was lost.",
                        lost.elapsed().toMillis());
                return true;
            } catch (IOException | IllegalStateException e) {
                LOG.errorf("The database's server could not be started again: %s", e.getMessage());
            }
            if (lost.isBeyond(LONGEST_OUTAGE)) {
                LOG.errorf("The database's server is given up after %d minutes.", LONGEST_OUTAGE.toMinutes());
                givenUp.run();
                return false;
            }
            Thread.sleep(wait.toMillis());
            wait = wait.multipliedBy(2).compareTo(LONGEST_WAIT) < 0 ? wait.multipliedBy(2) : LONGEST_WAIT;
        }
        return false;
    }

    private synchronized void startUnlessStopping() throws IOException {
        if (!stopping) {
            server = ServerProcess.start(folder.root(), programs, directory, port, passwords);
        }
    }

    /** The address of the database, without a user. */
    public String address() {
        return address(port);
    }

    /**
     * The address of the database that another program runs in a data folder; empty when none holds the folder.
     *
     * @throws IllegalStateException when one holds it and its database is not found
     */
    public static Optional<String> addressOfRunning(Path folder) {
        try {
            if (DataFolder.isFree(folder)) {
                return Optional.empty();
            }
            List<String> mark = Files.readAllLines(folder.resolve("db/postmaster.pid"));
            return Optional.of(address(Integer.parseInt(mark.get(PORT_LINE).trim())));
        } catch (IOException | NumberFormatException | IndexOutOfBoundsException e) {
            throw new IllegalStateException(
                    "The database of the running copy of Reelproof in " + folder + " could not be found: "
                            + e.getMessage(),
                    e);
        }
    }

    static String address(int port) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + OWNER;
    }

    /**
     * The password of a user of the database in a data folder.
     *
     * @param user {@link #OWNER} or {@link #SERVICE_ROLE}
     * @throws IllegalStateException when the database there was not started yet
     */
    public static String password(Path folder, String user) {
        try {
            Passwords kept = Passwords.in(passwordFile(folder))
                    .orElseThrow(() -> new IllegalStateException("No database was started in " + folder));
            return user.equals(OWNER) ? kept.owner() : kept.service();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path passwordFile(Path folder) {
        return folder.resolve("server/passwords");
    }

    /** The number of the server's process. */
    public long pid() {
        return server.pid();
    }

    /** Stops the server once its clients have left, or after a while; what it holds stays. */
    @Override
    public void close() {
        stopping = true;
        synchronized (this) {
            try {
                server.stop(port, passwords);
                folder.close();
            } catch (IOException e) {
                throw new UncheckedIOException("The database did not stop: " + e.getMessage(), e);
            }
        }
    }
}
