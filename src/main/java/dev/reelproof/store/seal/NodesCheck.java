package dev.reelproof.store.seal;

import dev.reelproof.seal.Frontier;
import dev.reelproof.store.seal.LogCheck.Difference;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Checks the nodes that the database keeps against those that follow from its leaves. */
final class NodesCheck {
    private final Connection connection;
    private final String plant;

    NodesCheck(Connection connection, String plant) {
        this.connection = connection;
        this.plant = plant;
    }

    /** The first node, the lowest on the left, that does not follow from the leaves. */
    Optional<Difference> first(List<Frontier.Subtree> completed) throws SQLException {
        List<Frontier.Subtree> nodes =
                completed.stream().filter(node -> node.level() > 0).toList();
        Map<String, String> kept = kept(nodes);
        for (Frontier.Subtree node : nodes) {
            if (!node.hash().hex().equals(kept.get(node.level() + "/" + node.index()))) {
                long from = node.index() << node.level();
                long to = from + (1L << node.level()) - 1;
                return Optional.of(new Difference(
                        "seal_leaf",
                        plant + " " + from + " to " + to,
                        "One of these leaves was rewritten, or the node of seal_node over them (level " + node.level()
                                + ", position " + node.index() + ")."));
            }
        }
        return Optional.empty();
    }

    private Map<String, String> kept(List<Frontier.Subtree> nodes) throws SQLException {
        Map<String, String> kept = new HashMap<>();
        try (PreparedStatement query = connection.prepareStatement(
                """
                select n.level, n.position, n.hash
                from unnest(cast(? as int[]), cast(? as bigint[])) as w(level, position)
                join seal_node n on n.plant = ? and n.level = w.level and n.position = w.position""")) {
            query.setArray(
                    1,
                    connection.createArrayOf(
                            "int4", nodes.stream().map(Frontier.Subtree::level).toArray()));
            query.setArray(
                    2,
                    connection.createArrayOf(
                            "int8", nodes.stream().map(Frontier.Subtree::index).toArray()));
            query.setString(3, plant);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    kept.put(rows.getInt(1) + "/" + rows.getLong(2), rows.getString(3));
                }
            }
        }
        return kept;
    }
}
