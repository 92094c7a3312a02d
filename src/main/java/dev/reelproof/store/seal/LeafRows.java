package dev.reelproof.store.seal;

import dev.reelproof.seal.Hash;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** Leaves and heads as rows hold them. */
final class LeafRows {
    static final String HEAD_COLUMNS = "plant, size, root, at, key_id, signature";

    private LeafRows() {}

    static Leaf leaf(String kind, String plant, String id, String parts) {
        LeafKind known = LeafKind.named(kind)
                .orElseThrow(() -> new IllegalStateException("the log has a leaf of unknown kind '" + kind + "'"));
        return new Leaf(known, plant, id, List.of(parts.split("\n")));
    }

    static String parts(Leaf leaf) {
        return String.join("\n", leaf.parts());
    }

    /** The head over so many leaves of a plant; empty when none was signed. */
    static Optional<SignedHead> head(Connection connection, String plant, long size) throws SQLException {
        return head(connection, plant, size, "size = ?");
    }

    /** The earliest head over a leaf, so that the leaf's proof is always the same; empty when none was signed. */
    static Optional<SignedHead> firstHeadOver(Connection connection, String plant, long position) throws SQLException {
        return head(connection, plant, position, "size > ? order by size limit 1");
    }

    private static Optional<SignedHead> head(Connection connection, String plant, long size, String condition)
            throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(
                "select " + HEAD_COLUMNS + " from seal_head where plant = ? and " + condition)) {
            query.setString(1, plant);
            query.setLong(2, size);
            try (ResultSet rows = query.executeQuery()) {
                return rows.next() ? Optional.of(head(rows)) : Optional.empty();
            }
        }
    }

    /** The head of a row of {@link #HEAD_COLUMNS}. */
    static SignedHead head(ResultSet row) throws SQLException {
        return new SignedHead(
                new TreeHead(
                        row.getString(1),
                        row.getLong(2),
                        Hash.ofHex(row.getString(3)),
                        row.getTimestamp(4).toInstant()),
                row.getString(5),
                row.getString(6));
    }
}
