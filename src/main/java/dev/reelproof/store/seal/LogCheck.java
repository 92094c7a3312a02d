package dev.reelproof.store.seal;

import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.seal.SignedHead;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Checks a whole database against its log, and the log against the heads outside. It writes nothing, reads some hundreds of leaves at a
 * time, and stops at the first difference.
 *
 * <p>It asks the database for the digest of each row: who makes the database itself lie to these statements is not found by them. Check
 * a copy on a server of your own then.
 */
public final class LogCheck {
    private final Connection connection;
    private final PublicSealKey key;
    private final String headsFile;
    private final List<SignedHead> outside;

    private LogCheck(Connection connection, PublicSealKey key, HeadsFile heads) {
        this.connection = connection;
        this.key = key;
        this.headsFile = heads.path().toString();
        this.outside = heads.all();
    }

    /**
     * What is not as it was sealed.
     *
     * @param table the table, or the file of heads
     * @param key the plant, a space, what identifies the row
     * @param what in a sentence
     */
    public record Difference(String table, String key, String what) {}

    /**
     * A plant that was found whole.
     *
     * @param leaves in its log
     * @param waiting rows that are sealed and have no place yet
     * @param outside heads outside the database that its log agrees with
     */
    public record WholePlant(String plant, long leaves, long waiting, long outside) {}

    /**
     * What came of the check.
     *
     * @param whole the plants checked before the first difference
     * @param first the first difference; empty when there is none
     */
    public record Result(List<WholePlant> whole, Optional<Difference> first) {}

    /** Checks within the connection's transaction, which should see one state of the database. */
    public static Result check(Connection connection, PublicSealKey key, HeadsFile heads) throws SQLException {
        return new LogCheck(connection, key, heads).check();
    }

    private Result check() throws SQLException {
        searchBuiltInsFirst();
        List<WholePlant> whole = new ArrayList<>();
        Optional<Difference> first = TablesCheck.first(connection);
        if (first.isPresent()) {
            return new Result(whole, first);
        }
        RowDigests digests = RowDigests.read(connection);
        for (String plant : plants()) {
            List<SignedHead> ofPlant = outside.stream()
                    .filter(head -> head.head().plant().equals(plant))
                    .toList();
            PlantCheck check = new PlantCheck(connection, digests, key, headsFile, plant, ofPlant);
            first = check.first();
            if (first.isPresent()) {
                return new Result(whole, first);
            }
            whole.add(check.whole());
        }
        return new Result(whole, Optional.empty());
    }

    /** A function or table of the owner's must not stand in for one of PostgreSQL's. */
    private void searchBuiltInsFirst() throws SQLException {
        try (PreparedStatement set = connection.prepareStatement(
                "select set_config('search_path', 'pg_catalog, ' || quote_ident(current_schema()) || ', pg_temp', true)")) {
            set.executeQuery();
        }
    }

    private Set<String> plants() throws SQLException {
        Set<String> plants = new TreeSet<>();
        outside.forEach(head -> plants.add(head.head().plant()));
        try (PreparedStatement query = connection.prepareStatement("select plant from seal_leaf"
                        + " union select plant from seal_pending union select plant from seal_head union "
                        + SealedTable.plants());
                ResultSet rows = query.executeQuery()) {
            while (rows.next()) {
                plants.add(rows.getString(1));
            }
        }
        return plants;
    }
}
