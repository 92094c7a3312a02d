package dev.reelproof.store.seal;

import dev.reelproof.store.seal.LogCheck.Difference;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Checks that what is read are the tables themselves: no view, no rule and no policy may show the check other rows than there are. */
final class TablesCheck {
    private static final List<String> OF_THE_LOG = List.of("seal_leaf", "seal_node", "seal_head", "seal_pending");

    private TablesCheck() {}

    static Optional<Difference> first(Connection connection) throws SQLException {
        List<String> tables = Stream.concat(
                        Stream.of(SealedTable.values()).map(table -> table.table), OF_THE_LOG.stream())
                .toList();
        try (PreparedStatement query = connection.prepareStatement(
                """
                select c.relkind in ('r', 'p') and not c.relrowsecurity and not c.relhasrules
                from pg_class c where c.oid = to_regclass(?)""")) {
            for (String table : tables) {
                query.setString(1, table);
                try (ResultSet rows = query.executeQuery()) {
                    if (!rows.next()) {
                        return Optional.of(new Difference(table, "all plants", "The table is gone."));
                    }
                    if (!rows.getBoolean(1)) {
                        return Optional.of(new Difference(
                                table,
                                "all plants",
                                "It is no plain table: a view, a rule or a policy stands in its place."));
                    }
                }
            }
        }
        return Optional.empty();
    }
}
