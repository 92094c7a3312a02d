package dev.reelproof.store.seal;

import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.SignedHead;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.hibernate.Session;

/** Reads the log: heads, and proofs that a leaf is in it. */
@ApplicationScoped
public class LogReading {
    private final Session session;

    LogReading(Session session) {
        this.session = session;
    }

    /** How far a row has come. */
    public enum State {
        /** Nothing of that kind and identifier was ever sealed. */
        UNKNOWN,
        /** It waits for its place in the log. */
        WAITING,
        /** It is in the log, and no head over it was signed yet. */
        IN_LOG,
        PROVEN
    }

    /** How far a row has come; seen from a transaction of its own, so that nothing uncommitted counts. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public State state(String plant, LeafKind kind, String id) {
        return session.doReturningWork(connection -> {
            Optional<Placed> placed = placed(connection, plant, kind, id);
            if (placed.isPresent()) {
                return LeafRows.firstHeadOver(connection, plant, placed.get().position())
                                .isPresent()
                        ? State.PROVEN
                        : State.IN_LOG;
            }
            return isWaiting(connection, plant, kind, id) ? State.WAITING : State.UNKNOWN;
        });
    }

    /** The proof that a leaf is in the log, by the earliest head over it; empty when there is no leaf or no such head yet. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<InclusionProof> proof(String plant, LeafKind kind, String id) {
        return session.doReturningWork(connection -> {
            Optional<Placed> placed = placed(connection, plant, kind, id);
            Optional<SignedHead> head = placed.isEmpty()
                    ? Optional.empty()
                    : LeafRows.firstHeadOver(connection, plant, placed.get().position());
            if (placed.isEmpty() || head.isEmpty()) {
                return Optional.<InclusionProof>empty();
            }
            return Optional.of(new InclusionProof(
                    placed.get().leaf(),
                    placed.get().position(),
                    KeptSubtrees.tree(connection, plant, head.get().head().size())
                            .inclusionPath(placed.get().position()),
                    head.get()));
        });
    }

    /** The newest head of a plant; empty when none was signed. */
    @Transactional
    public Optional<SignedHead> newestHead(String plant) {
        return session.doReturningWork(connection -> {
            try (PreparedStatement query = connection.prepareStatement(
                    "select " + LeafRows.HEAD_COLUMNS + " from seal_head where plant = ? order by size desc limit 1")) {
                query.setString(1, plant);
                try (ResultSet rows = query.executeQuery()) {
                    return rows.next() ? Optional.of(LeafRows.head(rows)) : Optional.<SignedHead>empty();
                }
            }
        });
    }

    private record Placed(long position, Leaf leaf) {}

    private static Optional<Placed> placed(Connection connection, String plant, LeafKind kind, String id)
            throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(
                "select position, parts from seal_leaf where plant = ? and kind = ? and id = ?")) {
            query.setString(1, plant);
            query.setString(2, kind.word());
            query.setString(3, id);
            try (ResultSet rows = query.executeQuery()) {
                return rows.next()
                        ? Optional.of(
                                new Placed(rows.getLong(1), LeafRows.leaf(kind.word(), plant, id, rows.getString(2))))
                        : Optional.empty();
            }
        }
    }

    private static boolean isWaiting(Connection connection, String plant, LeafKind kind, String id)
            throws SQLException {
        try (PreparedStatement query =
                connection.prepareStatement("select from seal_pending where plant = ? and kind = ? and id = ?")) {
            query.setString(1, plant);
            query.setString(2, kind.word());
            query.setString(3, id);
            try (ResultSet rows = query.executeQuery()) {
                return rows.next();
            }
        }
    }
}
