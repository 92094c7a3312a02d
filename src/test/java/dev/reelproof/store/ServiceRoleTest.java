package dev.reelproof.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.store.access.AuditTrail;
import io.agroal.api.AgroalDataSource;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the service's own database role may not do to records, tried on the connection that the service uses. */
@QuarkusTest
class ServiceRoleTest {
    private static final String INSUFFICIENT_PRIVILEGE = "42501";

    @Inject
    AgroalDataSource database;

    @Inject
    AuditTrail audit;

    private void write(String subject) {
        QuarkusTransaction.requiringNew().run(() -> audit.write("north", "tried", subject, null, Map.of("n", 1)));
    }

    @Test
    void theServiceConnectsAsARoleThatOwnsNothing() throws SQLException {
        try (Connection service = database.getConnection()) {
            assertEquals("reelproof_service", ask(service, "select current_user"));
            assertEquals(
                    "f",
                    ask(
                            service,
                            "select rolsuper or rolcreaterole or rolcreatedb or rolreplication or rolbypassrls"
                                    + " from pg_roles where rolname = current_user"));
            assertEquals(
                    "0", ask(service, "select count(*) from pg_class where pg_get_userbyid(relowner) = current_user"));
            assertEquals(
                    "0", ask(service, "select count(*) from pg_auth_members where member = current_user::regrole"));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update audit_entry set actor = 'somebody else'",
                "update audit_entry set at = now() where false",
                "delete from audit_entry",
                "delete from audit_entry where false",
                "truncate audit_entry",
                "select * from audit_entry for update",
                "drop trigger audit_entry_is_kept on audit_entry",
                "alter table audit_entry disable trigger all",
                "drop table audit_entry",
                "alter table audit_entry owner to reelproof_service",
                "create or replace function refuse_change() returns trigger language plpgsql as 'begin return new; end'",
                "drop function refuse_change() cascade",
                "set session_replication_role = replica",
                "set role postgres",
                "select setval('audit_entry_id_seq', 1)",
                "create table own (n int)",
                "update flyway_schema_history set success = false",
                "delete from approval",
                "truncate approval",
                "drop trigger approval_is_decided_once on approval",
                "update test_record set verdict = 'accepted'",
                "update test_record_2026 set verdict = 'accepted'",
                "truncate test_record_2026",
                "delete from certificate",
                "update uncertainty_model_revision set text = ''",
                "update lot set quantity_value = 1",
                "delete from lot_input",
                "update step_run set machine = 'another'",
                "delete from lot_sample",
                "delete from implausible_link",
                "update reel_disposition set state = 'scrapped'",
                "delete from refused_report",
                "update hold set held_by = 'another'",
                "delete from hold_release",
                "update installation_default set value = false",
                "delete from retest_acceptance",
                "delete from certificate_withdrawal",
                "update collective_certificate set customer = 'another'",
                "update limit_revision_wrong set reason = 'another'",
                "update concession set reason = 'another'",
                "delete from concession_decision",
                "update judged_again set of_record = record_id",
                "update certificate_batch set asked_as = 'administrator'",
                "delete from seal_leaf",
                "update seal_node set hash = ''",
                "truncate seal_head"
            })
    void mayNot(String attempt) throws SQLException {
        String subject = "try/" + UUID.randomUUID();
        write(subject);
        try (Connection service = database.getConnection();
                Statement statement = service.createStatement()) {
            SQLException refusal = assertThrows(SQLException.class, () -> statement.execute(attempt));
            assertEquals(INSUFFICIENT_PRIVILEGE, refusal.getSQLState(), refusal.getMessage());
            assertEquals("1", ask(service, "select count(*) from audit_entry where subject = '" + subject + "'"));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update audit_entry set actor = 'somebody else'",
                "delete from audit_entry",
                "truncate audit_entry",
                "delete from approval",
                "truncate approval cascade"
            })
    void theTriggersRefuseEvenTheOwner(String attempt) throws SQLException {
        write("try/owner");
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            statement.execute("insert into approval (plant, action, subject, reason, requested_by, requested)"
                    + " values ('nowhere', 'hold', 's', 'r', 'a', now())");
            SQLException refusal = assertThrows(SQLException.class, () -> statement.execute(attempt));
            assertTrue(refusal.getMessage().contains("never changed or removed"), refusal.getMessage());
        }
    }

    @Test
    void anEntryIsStampedByTheDatabase() throws SQLException {
        String subject = "try/" + UUID.randomUUID();
        try (Connection service = database.getConnection();
                Statement statement = service.createStatement()) {
            statement.execute("insert into audit_entry (plant, at, actor, actor_kind, action, subject, details)"
                    + " values ('north', '1999-01-01', 'a', 'person', 'tried', '" + subject + "', '{}')");
            assertEquals(
                    "t",
                    ask(
                            service,
                            "select at > now() - interval '1 hour' from audit_entry where subject = '" + subject
                                    + "'"));
        }
    }

    /** Each table that a trigger keeps, and those that are known to be records, whatever their triggers. */
    @Test
    void onTablesOfRecordsItReadsAndAddsOnly() throws SQLException {
        Set<String> kept = new TreeSet<>(Set.of(
                "audit_entry",
                "certificate",
                "certificate_batch",
                "certificate_withdrawal",
                "collective_certificate",
                "concession",
                "concession_decision",
                "finding",
                "hold",
                "hold_release",
                "implausible_link",
                "installation_default",
                "judged_again",
                "limit_revision_wrong",
                "limit_set_revision",
                "lot",
                "lot_input",
                "lot_sample",
                "reel_disposition",
                "refused_report",
                "retest_acceptance",
                "seal_head",
                "seal_leaf",
                "seal_node",
                "step_run",
                "sweep_block",
                "test_record",
                "uncertainty_model_revision",
                "upload",
                "upload_part"));
        Set<String> readAndAdd = new TreeSet<>();
        try (Connection service = database.getConnection();
                Statement statement = service.createStatement();
                ResultSet tables = statement.executeQuery(
                        """
                        select table_name, string_agg(privilege_type, ' ' order by privilege_type)
                        from information_schema.role_table_grants
                        where grantee = 'reelproof_service' group by table_name""")) {
            while (tables.next()) {
                if (tables.getString(2).equals("INSERT SELECT")) {
                    readAndAdd.add(tables.getString(1));
                }
            }
        }
        assertEquals(kept, readAndAdd);
    }

    private static String ask(Connection connection, String question) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertTrue(answer.next());
            return answer.getString(1);
        }
    }
}
