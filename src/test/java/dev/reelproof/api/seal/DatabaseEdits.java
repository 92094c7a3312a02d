package dev.reelproof.api.seal;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.seal.HeadsFile;
import dev.reelproof.store.seal.LogCheck;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** What the database's owner does with the triggers off, and what the check says then. */
final class DatabaseEdits {
    private DatabaseEdits() {}

    /** Edits, checks, and takes the edits back. */
    static LogCheck.Result checkAfter(PublicSealKey key, HeadsFile heads, String... edits) throws SQLException {
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            owner.setAutoCommit(false);
            statement.execute("set local session_replication_role = replica");
            for (String edit : edits) {
                assertTrue(statement.executeUpdate(edit) > 0, "edits something: " + edit);
            }
            LogCheck.Result result = LogCheck.check(owner, key, heads);
            owner.rollback();
            return result;
        }
    }

    static String ask(String question) throws SQLException {
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement();
                ResultSet answer = statement.executeQuery(question)) {
            assertTrue(answer.next());
            return answer.getString(1);
        }
    }
}
