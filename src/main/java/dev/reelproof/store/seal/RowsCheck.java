package dev.reelproof.store.seal;

import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.seal.LogCheck.Difference;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Checks a plant's rows against the leaves that speak of them. */
final class RowsCheck {
    private final Connection connection;
    private final RowDigests digests;
    private final String plant;

    RowsCheck(Connection connection, RowDigests digests, String plant) {
        this.connection = connection;
        this.digests = digests;
        this.plant = plant;
    }

    /** What leaves would say of their rows now, by kind and identifier. */
    Map<LeafKind, Map<String, String>> now(List<Leaf> leaves) throws SQLException {
        Map<LeafKind, Map<String, String>> now = new EnumMap<>(LeafKind.class);
        for (LeafKind kind : LeafKind.values()) {
            List<String> ids = leaves.stream()
                    .filter(leaf -> leaf.kind() == kind)
                    .map(Leaf::id)
                    .toList();
            now.put(kind, kind.hasRow() && !ids.isEmpty() ? digests.of(kind, plant, ids, connection) : Map.of());
        }
        return now;
    }

    /**
     * The first row that is not what its leaf says.
     *
     * @param since how long the leaf has been known, for the sentence
     */
    Optional<Difference> first(Leaf leaf, Map<LeafKind, Map<String, String>> now, String since) {
        if (!leaf.kind().hasRow()) {
            return Optional.empty();
        }
        String lines = now.getOrDefault(leaf.kind(), Map.of()).get(leaf.id());
        Map<String, String> sealed = byRow(leaf.parts());
        Map<String, String> found = lines == null ? Map.of() : byRow(List.of(lines.split("\n")));
        for (Map.Entry<String, String> row : sealed.entrySet()) {
            String digest = found.get(row.getKey());
            if (digest == null) {
                return Optional.of(difference(leaf, row.getKey(), "The row is gone; it is " + since + "."));
            }
            if (!digest.equals(row.getValue())) {
                return Optional.of(difference(
                        leaf,
                        row.getKey(),
                        "The row was changed: its columns no longer give the digest that is " + since + "."));
            }
        }
        return found.keySet().stream()
                .filter(row -> !sealed.containsKey(row))
                .findFirst()
                .map(row -> difference(
                        leaf, row, "The row was added afterwards; what it belongs to is " + since + " without it."));
    }

    private Difference difference(Leaf leaf, String row, String what) {
        int slash = row.indexOf('/');
        return new Difference(
                slash < 0 ? row : row.substring(0, slash),
                plant + " " + leaf.id() + (slash < 0 ? "" : " " + row.substring(slash + 1)),
                what);
    }

    private static Map<String, String> byRow(List<String> parts) {
        Map<String, String> digests = new LinkedHashMap<>();
        for (String part : parts) {
            int space = part.indexOf(' ');
            digests.put(space < 0 ? part : part.substring(0, space), space < 0 ? "" : part.substring(space + 1));
        }
        return digests;
    }

    /** The first row that no leaf speaks of. The service writes both in one transaction, so somebody else put it there. */
    Optional<Difference> withoutLeaf() throws SQLException {
        for (LeafKind kind : LeafKind.values()) {
            if (!kind.hasRow()) {
                continue;
            }
            try (PreparedStatement query = connection.prepareStatement(UnsealedRows.query(kind) + " limit 1")) {
                query.setString(1, plant);
                try (ResultSet rows = query.executeQuery()) {
                    if (rows.next()) {
                        return Optional.of(
                                new Difference(
                                        SealedTable.rootOf(kind).table,
                                        plant + " " + rows.getString(1),
                                        "The row is not in the log: it was not written by the service, or its leaf was removed."));
                    }
                }
            }
        }
        return Optional.empty();
    }
}
