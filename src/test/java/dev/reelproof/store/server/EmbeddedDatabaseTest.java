package dev.reelproof.store.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.ref.WeakReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedDatabaseTest {
    private static final String WRONG_PASSWORD = "28P01";

    @TempDir
    Path folder;

    private Process program;

    @AfterEach
    void endTheOtherProgram() {
        if (program != null) {
            program.destroyForcibly();
        }
    }

    private EmbeddedDatabase start() {
        return EmbeddedDatabase.start(folder, () -> {});
    }

    @Test
    void keepsWhatItHoldsOverARestart() throws Exception {
        try (EmbeddedDatabase database = start()) {
            run(database.address(), "create table kept (words text)", "insert into kept values ('Ärger')");
        }
        try (EmbeddedDatabase database = start()) {
            assertEquals("ärger", ask(database.address(), "select lower(words) from kept"));
        }
    }

    @Test
    void isDurableAndPrivate() throws Exception {
        try (EmbeddedDatabase database = start()) {
            assertEquals("on", ask(database.address(), "show fsync"));
            assertEquals("on", ask(database.address(), "show synchronous_commit"));
            assertEquals("on", ask(database.address(), "show data_checksums"));
            assertEquals("127.0.0.1", ask(database.address(), "show listen_addresses"));
            assertEquals("", ask(database.address(), "show unix_socket_directories"));
            assertEquals(
                    "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("db"))));
            assertEquals(
                    "rw-------",
                    PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("server/passwords"))));
        }
    }

    /** Another user of the machine reaches the port; without the password of the folder nobody comes in. */
    @Test
    void asksForThePasswordOfTheFolder() {
        try (EmbeddedDatabase database = start()) {
            for (String user : List.of(EmbeddedDatabase.OWNER, EmbeddedDatabase.SERVICE_ROLE)) {
                SQLException refusal = assertThrows(
                        SQLException.class, () -> DriverManager.getConnection(database.address(), user, "a guess"));
                assertEquals(WRONG_PASSWORD, refusal.getSQLState());
            }
        }
    }

    /** Up to version 0.2.0 the server let any user of the machine in. */
    @Test
    void aDatabaseOfAVersionThatAskedForNoPasswordGetsOne() throws Exception {
        try (EmbeddedDatabase database = start()) {
            run(database.address(), "create table kept (words text)", "insert into kept values ('old')");
            run(database.address(), "alter role postgres password null", "drop role reelproof_service");
        }
        Files.delete(folder.resolve("server/passwords"));
        try (EmbeddedDatabase database = start()) {
            assertEquals("old", ask(database.address(), "select words from kept"));
        }
    }

    @Test
    void refusesAFolderInUse() throws SQLException {
        try (EmbeddedDatabase database = start()) {
            assertRefused();
            assertRefused();
            assertEquals("1", ask(database.address(), "select 1"));
        }
    }

    private void assertRefused() {
        IllegalStateException refusal = assertThrows(IllegalStateException.class, this::start);
        assertTrue(refusal.getMessage().contains("in use by another running copy"), refusal.getMessage());
    }

    /** The lock is the program's for as long as it runs, though nothing refers to the database that it started. */
    @Test
    void aSecondProgramDoesNotTakeTheFolderOfARunningOne() throws Exception {
        String address = startInAnotherProgram();
        assertRefused();
        assertEquals("1", ask(address, "select 1"));
        assertTrue(program.isAlive());
    }

    @Test
    void startsAgainAfterTheProgramWasKilled() throws Exception {
        String address = startInAnotherProgram();
        run(address, "create table kept (words text)", "insert into kept values ('still here')");
        program.destroyForcibly();
        assertTrue(program.waitFor(10, TimeUnit.SECONDS));
        assertTrue(Files.exists(folder.resolve("db/postmaster.pid")));
        try (EmbeddedDatabase database = start()) {
            assertEquals("still here", ask(database.address(), "select words from kept"));
        }
    }

    @Test
    void startsAgainWhenTheNumberOfAGoneServerBelongsToAnotherProcess() throws Exception {
        start().close();
        Files.writeString(
                folder.resolve("db/postmaster.pid"), ProcessHandle.current().pid() + "\n" + folder + "\n");
        try (EmbeddedDatabase database = start()) {
            assertEquals("1", ask(database.address(), "select 1"));
        }
    }

    @Test
    void aServerThatWasKilledIsStartedAgainAtTheSameAddress() throws Exception {
        try (EmbeddedDatabase database = start()) {
            run(database.address(), "create table kept (words text)", "insert into kept values ('still here')");
            long lost = database.pid();
            ProcessHandle.of(lost).orElseThrow().destroyForcibly();
            assertEquals("still here", askPatiently(database.address(), "select words from kept"));
            // It answers a moment before the watch over it has noted its number.
            for (int i = 0; i < 100 && database.pid() == lost; i++) {
                Thread.sleep(100);
            }
            assertNotEquals(lost, database.pid());
        }
    }

    private String askPatiently(String address, String question) throws InterruptedException {
        Instant end = Instant.now().plus(Duration.ofSeconds(60));
        SQLException last = null;
        while (Instant.now().isBefore(end)) {
            try {
                return ask(address, question);
            } catch (SQLException e) {
                last = e;
                Thread.sleep(100);
            }
        }
        throw new AssertionError(last);
    }

    /** A start that was killed leaves stages, and versions before this one half a data directory. */
    @Test
    void aStartThatWasKilledNeedsNoHands() throws Exception {
        Files.createDirectories(folder.resolve("server/postgresql-0123456789abcdef.unfinished-1/bin"));
        Files.createDirectories(folder.resolve("db.unfinished-1/base"));
        Files.writeString(folder.resolve("db.unfinished-1/PG_VERSION"), "17\n");
        Files.writeString(folder.resolve("db.unfinished-1.owner"), "secret\n");
        Files.createDirectories(folder.resolve("db/global"));
        Files.writeString(folder.resolve("db/PG_VERSION"), "17\n");
        try (EmbeddedDatabase database = start()) {
            assertEquals("1", ask(database.address(), "select 1"));
        }
        try (Stream<Path> left = Files.list(folder)) {
            List<String> names =
                    left.map(path -> path.getFileName().toString()).sorted().toList();
            assertFalse(names.stream().anyMatch(name -> name.contains("unfinished")), names.toString());
            assertTrue(names.stream().anyMatch(name -> name.startsWith("db.half-made-")), names.toString());
        }
    }

    private String startInAnotherProgram() throws IOException {
        program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Program.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        return program.inputReader()
                .lines()
                .filter(line -> line.startsWith("jdbc:"))
                .findFirst()
                .orElseThrow();
    }

    /** A program that starts the database, keeps no hand on it, and has its garbage collected. */
    static final class Program {
        private Program() {}

        public static void main(String[] arguments) throws InterruptedException {
            WeakReference<EmbeddedDatabase> started =
                    new WeakReference<>(EmbeddedDatabase.start(Path.of(arguments[0]), () -> {}));
            String address = started.get().address();
            for (int i = 0; i < 5; i++) {
                System.gc();
                Thread.sleep(50);
            }
            System.out.println(address);
            Thread.sleep(TimeUnit.MINUTES.toMillis(1));
        }
    }

    private Connection connect(String address) throws SQLException {
        return DriverManager.getConnection(
                address, EmbeddedDatabase.OWNER, EmbeddedDatabase.password(folder, EmbeddedDatabase.OWNER));
    }

    private void run(String address, String... statements) throws SQLException {
        try (Connection connection = connect(address);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private String ask(String address, String question) throws SQLException {
        try (Connection connection = connect(address);
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertTrue(answer.next());
            return answer.getString(1);
        }
    }
}
