package dev.reelproof.store.search;

import dev.reelproof.search.SearchKeys;
import dev.reelproof.search.Searched;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flywaydb.core.api.MigrationVersion;
import org.flywaydb.core.api.migration.Context;
import org.flywaydb.core.api.migration.JavaMigration;
import org.jspecify.annotations.Nullable;

/**
 * Makes all search keys anew, by the one rule of the core. Flyway runs it after all numbered migrations, once for each revision of
 * that rule: the revision stands as its checksum.
 */
public class SearchKeysMigration implements JavaMigration {
    private static final int HANDFUL = 5_000;

    /** What each kind is made of: plant, name, and the time that counts. */
    private static final Map<Searched, String> NAMES = Map.of(
            Searched.REEL,
            "select plant, id, registered from reel",
            Searched.CERTIFICATE,
            "select plant, number, min(issued) from (select plant, number, issued from certificate"
                    + " union all select plant, number, issued from collective_certificate) c group by plant, number",
            Searched.PRODUCT,
            "select plant, product, min(registered) from reel group by plant, product",
            Searched.ORDER,
            named("order_number"),
            Searched.CUSTOMER,
            named("customer"));

    private static final String INSERT =
            """
            insert into search_key (plant, what, key, whole, name, at)
            select * from unnest(?::text[], ?::text[], ?::text[], ?::boolean[], ?::text[], ?::timestamptz[])
            on conflict do nothing""";

    private static String named(String column) {
        return "select plant, name, min(at) from (select plant, " + column + " as name, registered as at from reel"
                + " union all select plant, " + column + ", issued from certificate) n"
                + " where name is not null group by plant, name";
    }

    @Override
    public @Nullable MigrationVersion getVersion() {
        return null;
    }

    @Override
    public String getDescription() {
        return "search keys";
    }

    @Override
    public Integer getChecksum() {
        return SearchKeys.REVISION;
    }

    @Override
    public boolean canExecuteInTransaction() {
        return true;
    }

    @Override
    public void migrate(Context context) throws SQLException {
        Connection database = context.getConnection();
        try (Statement statement = database.createStatement()) {
            statement.execute("truncate search_key");
        }
        for (Searched kind : Searched.values()) {
            copy(database, kind);
        }
    }

    private static void copy(Connection database, Searched kind) throws SQLException {
        try (Statement names = database.createStatement();
                PreparedStatement insert = database.prepareStatement(INSERT)) {
            names.setFetchSize(HANDFUL);
            Rows rows = new Rows();
            try (ResultSet name = names.executeQuery(NAMES.get(kind))) {
                while (name.next()) {
                    rows.add(name.getString(1), kind, name.getString(2), name.getTimestamp(3));
                    if (rows.keys.size() >= HANDFUL) {
                        rows.insert(database, insert);
                    }
                }
            }
            rows.insert(database, insert);
        }
    }

    /** Rows that are inserted together, by columns. */
    private static final class Rows {
        private final List<String> plants = new ArrayList<>();
        private final List<String> kinds = new ArrayList<>();
        private final List<String> keys = new ArrayList<>();
        private final List<Boolean> wholes = new ArrayList<>();
        private final List<String> names = new ArrayList<>();
        private final List<Timestamp> times = new ArrayList<>();

        void add(String plant, Searched kind, String name, Timestamp at) {
            List<String> all = SearchKeys.of(name);
            for (int i = 0; i < all.size(); i++) {
                plants.add(plant);
                kinds.add(kind.word());
                keys.add(all.get(i));
                wholes.add(i == 0);
                names.add(name);
                times.add(at);
            }
        }

        void insert(Connection database, PreparedStatement statement) throws SQLException {
            List<List<?>> columns = List.of(plants, kinds, keys, wholes, names, times);
            List<String> types = List.of("text", "text", "text", "boolean", "text", "timestamptz");
            for (int i = 0; i < columns.size(); i++) {
                statement.setArray(
                        i + 1,
                        database.createArrayOf(types.get(i), columns.get(i).toArray()));
            }
            statement.executeUpdate();
            columns.forEach(List::clear);
        }
    }
}
