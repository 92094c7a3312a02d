package dev.reelproof.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedDatabaseTest {

    @TempDir
    Path folder;

    @Test
    void keepsWhatItHoldsOverARestart() throws Exception {
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            run(database.jdbcUrl(), "create table kept (words text)", "insert into kept values ('Ärger')");
        }
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertEquals("ärger", ask(database.jdbcUrl(), "select lower(words) from kept"));
        }
    }

    @Test
    void isDurableAndPrivate() throws Exception {
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertEquals("on", ask(database.jdbcUrl(), "show fsync"));
            assertEquals("on", ask(database.jdbcUrl(), "show synchronous_commit"));
            assertEquals(
                    "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("db"))));
        }
    }

    @Test
    void refusesAFolderInUse() {
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            IllegalStateException refusal =
                    assertThrows(IllegalStateException.class, () -> EmbeddedDatabase.start(folder));
            assertTrue(refusal.getMessage().contains("in use by another running copy"), refusal.getMessage());
            assertTrue(database.jdbcUrl().startsWith("jdbc:postgresql://localhost:"));
        }
    }

    @Test
    void startsAgainAfterTheProgramWasKilled() throws Exception {
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Program.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        String url = program.inputReader()
                .lines()
                .filter(line -> line.startsWith("jdbc:"))
                .findFirst()
                .orElseThrow();
        run(url, "create table kept (words text)", "insert into kept values ('still here')");
        program.destroyForcibly();
        assertTrue(program.waitFor(10, TimeUnit.SECONDS));
        assertTrue(Files.exists(folder.resolve("db/postmaster.pid")));
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertEquals("still here", ask(database.jdbcUrl(), "select words from kept"));
        }
    }

    @Test
    void startsAgainWhenTheNumberOfAGoneServerBelongsToAnotherProcess() throws Exception {
        EmbeddedDatabase.start(folder).close();
        Files.writeString(
                folder.resolve("db/postmaster.pid"), ProcessHandle.current().pid() + "\n" + folder + "\n");
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder)) {
            assertEquals("1", ask(database.jdbcUrl(), "select 1"));
        }
    }

    /** A program that is killed while its database runs. */
    static final class Program {
        private Program() {}

        public static void main(String[] arguments) throws IOException, InterruptedException {
            EmbeddedDatabase database = EmbeddedDatabase.start(Path.of(arguments[0]));
            System.out.println(database.jdbcUrl());
            Thread.sleep(TimeUnit.MINUTES.toMillis(1));
        }
    }

    private static void run(String url, String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private static String ask(String url, String question) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url);
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertTrue(answer.next());
            return answer.getString(1);
        }
    }
}
