package dev.reelproof.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.store.server.EmbeddedDatabase;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The migrations on a server that is not the program's own, with one user or two, and on data of an earlier version. */
class OwnServerTest {
    private static final String INSUFFICIENT_PRIVILEGE = "42501";
    private static final String ADD_ENTRY =
            "insert into audit_entry (plant, actor, actor_kind, action, subject, details)"
                    + " values ('north', 'a', 'person', 'tried', 's/1', '{}')";
    private static final String CHANGE_ENTRY = "update audit_entry set actor = 'b'";

    @TempDir
    Path folder;

    private EmbeddedDatabase server;

    @BeforeEach
    void start() throws SQLException {
        server = EmbeddedDatabase.start(folder, () -> {});
        run(
                "postgres",
                "postgres",
                // It is made for the program's own server; a server of the plant's has none at first.
                "drop role reelproof_service",
                "create role plant_owner login",
                "create database plant owner plant_owner");
    }

    @AfterEach
    void stop() {
        server.close();
    }

    @Test
    void withOneUserTriggersAloneGuard() throws SQLException {
        migrate("plant_owner", null);
        assertEquals("0", ask("postgres", "postgres", "select count(*) from pg_roles where rolname like 'reelproof%'"));
        run("plant_owner", "plant", ADD_ENTRY);
        SQLException refusal = assertThrows(SQLException.class, () -> run("plant_owner", "plant", CHANGE_ENTRY));
        assertTrue(refusal.getMessage().contains("never changed or removed"), refusal.getMessage());
    }

    @Test
    void withARoleMadeBeforeTheServiceMayAddAndNotChange() throws SQLException {
        run("postgres", "postgres", "create role reelproof_service login");
        migrate("plant_owner", null);
        serviceMayAddAndNotChange();
    }

    @Test
    void withARoleMadeLaterTheNextStartGrants() throws SQLException {
        migrate("plant_owner", null);
        run("postgres", "postgres", "create role reelproof_service login");
        assertThrows(SQLException.class, () -> run("reelproof_service", "plant", ADD_ENTRY));
        migrate("plant_owner", null);
        serviceMayAddAndNotChange();
    }

    @Test
    void anOwnerWhoMayCreateRolesCreatesIt() throws SQLException {
        run("postgres", "postgres", "alter role plant_owner createrole");
        migrate("plant_owner", null);
        serviceMayAddAndNotChange();
    }

    @Test
    void theServicesRoleAsTheOneUserKeepsItsRights() throws SQLException {
        run(
                "postgres",
                "postgres",
                "create role reelproof_service login",
                "alter database plant owner to reelproof_service");
        migrate("reelproof_service", null);
        migrate("reelproof_service", null);
        run("reelproof_service", "plant", ADD_ENTRY, "alter table audit_entry add column more text");
    }

    @Test
    void dataOfTheVersionBeforeIsTakenOver() throws SQLException {
        migrate("plant_owner", "2");
        run("plant_owner", "plant", "insert into product values ('north', 'P-1', '{}', now())");
        run("postgres", "postgres", "alter role plant_owner createrole");
        migrate("plant_owner", null);
        assertEquals("P-1", ask("reelproof_service", "plant", "select id from product"));
        serviceMayAddAndNotChange();
    }

    @Test
    void aTableOfALaterMigrationIsCoveredWithoutALine() throws SQLException {
        run("postgres", "postgres", "create role reelproof_service login");
        migrate("plant_owner", null);
        run(
                "plant_owner",
                "plant",
                "create table later (id bigserial, words text)",
                "create table later_kept (words text)",
                "create trigger kept before update or delete on later_kept for each row execute function refuse_change()",
                "grant all on later_kept to reelproof_service");
        migrate("plant_owner", null);
        run(
                "reelproof_service",
                "plant",
                "insert into later (words) values ('a')",
                "update later set words = 'b'",
                "delete from later",
                "insert into later_kept values ('a')");
        refused("update later_kept set words = 'b'");
        refused("delete from later_kept");
        refused("truncate later_kept");
    }

    private void serviceMayAddAndNotChange() throws SQLException {
        run("reelproof_service", "plant", ADD_ENTRY);
        refused(CHANGE_ENTRY);
        refused("drop trigger audit_entry_is_kept on audit_entry");
        refused("update flyway_schema_history set success = false");
    }

    private void refused(String attempt) {
        SQLException refusal = assertThrows(SQLException.class, () -> run("reelproof_service", "plant", attempt));
        assertEquals(INSUFFICIENT_PRIVILEGE, refusal.getSQLState(), refusal.getMessage());
    }

    private void migrate(String user, String target) throws SQLException {
        var flyway = Flyway.configure().dataSource(url("plant"), user, password(user));
        if (target != null) {
            flyway.target(target);
        }
        flyway.load().migrate();
    }

    private String url(String database) {
        return server.address().replaceFirst("/[^/]*$", "/" + database);
    }

    /** A user's password, which is set here: a role that a migration makes has none. */
    private String password(String user) throws SQLException {
        String owners = EmbeddedDatabase.password(folder, EmbeddedDatabase.OWNER);
        if (user.equals(EmbeddedDatabase.OWNER)) {
            return owners;
        }
        try (Connection owner = DriverManager.getConnection(server.address(), EmbeddedDatabase.OWNER, owners);
                Statement statement = owner.createStatement()) {
            statement.execute("alter role " + user + " password 'of the test'");
        }
        return "of the test";
    }

    private Connection connect(String user, String database) throws SQLException {
        return DriverManager.getConnection(url(database), user, password(user));
    }

    private void run(String user, String database, String... statements) throws SQLException {
        try (Connection connection = connect(user, database);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private String ask(String user, String database, String question) throws SQLException {
        try (Connection connection = connect(user, database);
                Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertTrue(answer.next());
            return answer.getString(1);
        }
    }
}
