package dev.reelproof.store.seal;

import dev.reelproof.seal.CompleteSubtrees;
import dev.reelproof.seal.Hash;
import dev.reelproof.seal.MerkleTree;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** The tree of a plant as the database keeps it. */
final class KeptSubtrees implements CompleteSubtrees {
    private final Connection connection;
    private final String plant;

    private KeptSubtrees(Connection connection, String plant) {
        this.connection = connection;
        this.plant = plant;
    }

    /** The tree over so many of a plant's leaves. */
    static MerkleTree tree(Connection connection, String plant, long size) {
        return new MerkleTree(size, new KeptSubtrees(connection, plant));
    }

    /** How many leaves a plant's log has. */
    static long size(Connection connection, String plant) throws SQLException {
        try (PreparedStatement query =
                connection.prepareStatement("select coalesce(max(position) + 1, 0) from seal_leaf where plant = ?")) {
            query.setString(1, plant);
            try (ResultSet rows = query.executeQuery()) {
                rows.next();
                return rows.getLong(1);
            }
        }
    }

    @Override
    public Hash hash(int level, long index) {
        String query = level == 0
                ? "select hash from seal_leaf where plant = ? and position = ?"
                : "select hash from seal_node where plant = ? and position = ? and level = ?";
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            statement.setString(1, plant);
            statement.setLong(2, index);
            if (level > 0) {
                statement.setInt(3, level);
            }
            try (ResultSet rows = statement.executeQuery()) {
                if (!rows.next()) {
                    throw new IllegalStateException(
                            "the log of plant " + plant + " has lost its node " + index + " of level " + level);
                }
                return Hash.ofHex(rows.getString(1));
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the log of plant " + plant + " could not be read: " + e.getMessage(), e);
        }
    }
}
