package dev.reelproof.store.seal;

import dev.reelproof.seal.Frontier;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.MerkleTree;
import dev.reelproof.seal.SealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import dev.reelproof.store.AdvisoryLocks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.hibernate.Session;

/**
 * Gives leaves their places, one plant at a time, and signs heads.
 *
 * <p>Each method is a transaction of its own and holds the plant's turn: a head speaks only of leaves that were committed before, so that
 * no signature is ever given for a tree that is rolled back.
 */
@ApplicationScoped
public class LogSequence {
    private static final int AT_ONCE = 500;

    private final Session session;

    LogSequence(Session session) {
        this.session = session;
    }

    private void takeTurn(String plant) {
        AdvisoryLocks.take(session, plant + "/seal");
    }

    /** The plants that have something to be sealed. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Set<String> waitingPlants() {
        return new TreeSet<>(session.createNativeQuery("select distinct plant from seal_pending", String.class)
                .getResultList());
    }

    /** The plants that have rows or a log, whether they are served here or not. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Set<String> plantsWithRows() {
        return new TreeSet<>(
                session.createNativeQuery(SealedTable.plants(), String.class).getResultList());
    }

    /**
     * Begins the log of a plant that has none: with a note that says how many rows were there before it, and with those rows. They are
     * sealed as they are found: nothing is said of what happened to them earlier.
     *
     * @param outside the heads outside the database
     * @return how many rows were taken in; empty when the plant has a log already
     * @throws LogSetBackException when there is a head outside although the log is empty
     */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<Long> begin(String plant, HeadsFile outside) {
        takeTurn(plant);
        return session.doReturningWork(connection -> {
            if (KeptSubtrees.size(connection, plant) > 0 || hasBegun(connection, plant)) {
                return Optional.<Long>empty();
            }
            Optional<SignedHead> newest = outside.newest(plant);
            if (newest.isPresent()) {
                throw LogSetBackException.older(
                        newest.get().head(), 0, outside.path().toString());
            }
            return Optional.of(Backfill.run(connection, plant));
        });
    }

    private static boolean hasBegun(Connection connection, String plant) throws SQLException {
        try (PreparedStatement query =
                connection.prepareStatement("select from seal_pending where plant = ? and kind = ? and id = ?")) {
            query.setString(1, plant);
            query.setString(2, LeafKind.NOTE.word());
            query.setString(3, Backfill.NOTE);
            try (ResultSet rows = query.executeQuery()) {
                return rows.next();
            }
        }
    }

    /** Appends what waits, at most some hundreds at once; says how many. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public int append(String plant) {
        takeTurn(plant);
        return session.doReturningWork(connection -> {
            dropWhatIsSealed(connection, plant);
            List<Leaf> waiting = waiting(connection, plant);
            if (!waiting.isEmpty()) {
                append(connection, plant, waiting);
            }
            return waiting.size();
        });
    }

    /** A file that two certificates sealed at once waits twice, once too often. */
    private static void dropWhatIsSealed(Connection connection, String plant) throws SQLException {
        try (PreparedStatement delete = connection.prepareStatement(
                """
                delete from seal_pending p using seal_leaf l
                where p.plant = ? and (l.plant, l.kind, l.id) = (p.plant, p.kind, p.id)""")) {
            delete.setString(1, plant);
            delete.executeUpdate();
        }
    }

    private static List<Leaf> waiting(Connection connection, String plant) throws SQLException {
        List<Leaf> waiting = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                "select kind, id, parts from seal_pending where plant = ? order by written, kind, id limit "
                        + AT_ONCE)) {
            query.setString(1, plant);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    waiting.add(LeafRows.leaf(rows.getString(1), plant, rows.getString(2), rows.getString(3)));
                }
            }
        }
        return waiting;
    }

    private static void append(Connection connection, String plant, List<Leaf> leaves) throws SQLException {
        long size = KeptSubtrees.size(connection, plant);
        Frontier frontier = Frontier.of(KeptSubtrees.tree(connection, plant, size));
        try (PreparedStatement leafRows = connection.prepareStatement(
                        "insert into seal_leaf (plant, position, kind, id, parts, hash) values (?, ?, ?, ?, ?, ?)");
                PreparedStatement nodeRows = connection.prepareStatement(
                        "insert into seal_node (plant, level, position, hash) values (?, ?, ?, ?)");
                PreparedStatement done = connection.prepareStatement(
                        "delete from seal_pending where plant = ? and kind = ? and id = ?")) {
            for (Leaf leaf : leaves) {
                leafRows.setString(1, plant);
                leafRows.setLong(2, frontier.size());
                leafRows.setString(3, leaf.kind().word());
                leafRows.setString(4, leaf.id());
                leafRows.setString(5, LeafRows.parts(leaf));
                leafRows.setString(6, leaf.hash().hex());
                leafRows.addBatch();
                Frontier.Appended appended = frontier.append(leaf.hash());
                for (Frontier.Subtree node : appended.completed()) {
                    if (node.level() > 0) {
                        nodeRows.setString(1, plant);
                        nodeRows.setInt(2, node.level());
                        nodeRows.setLong(3, node.index());
                        nodeRows.setString(4, node.hash().hex());
                        nodeRows.addBatch();
                    }
                }
                frontier = appended.frontier();
                done.setString(1, plant);
                done.setString(2, leaf.kind().word());
                done.setString(3, leaf.id());
                done.addBatch();
            }
            leafRows.executeBatch();
            nodeRows.executeBatch();
            done.executeBatch();
        }
    }

    /**
     * Signs the log as it stands, unless nothing came since the last head, and writes the head outside the database.
     *
     * @param outside the heads outside the database
     * @return the head over all leaves; empty when the plant has none
     * @throws LogSetBackException when the log is not the one of the newest head outside: a second signature over another history would
     *     make a lie of the first
     */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<SignedHead> sign(String plant, SealKey key, HeadsFile outside, Instant at) {
        return sign(plant, key, outside, at, true);
    }

    /** As {@link #sign}, but the head stands in the database alone, until the next one is written outside. */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<SignedHead> signInside(String plant, SealKey key, HeadsFile outside, Instant at) {
        return sign(plant, key, outside, at, false);
    }

    private Optional<SignedHead> sign(String plant, SealKey key, HeadsFile outside, Instant at, boolean writeOutside) {
        takeTurn(plant);
        return session.doReturningWork(connection -> {
            long size = KeptSubtrees.size(connection, plant);
            Optional<SignedHead> newest = outside.newest(plant);
            if (newest.isPresent()) {
                requireGrownFrom(connection, newest.get().head(), size, outside);
            }
            if (size == 0) {
                return Optional.<SignedHead>empty();
            }
            MerkleTree tree = KeptSubtrees.tree(connection, plant, size);
            Optional<SignedHead> kept = LeafRows.head(connection, plant, size);
            SignedHead head = kept.isPresent() ? kept.get() : key.sign(new TreeHead(plant, size, tree.root(), at));
            if (writeOutside
                    && key.open().signed(head)
                    && newest.map(each -> each.head().size()).orElse(0L) < size) {
                outside.append(head);
            }
            if (kept.isEmpty()) {
                keep(connection, head);
            }
            return Optional.of(head);
        });
    }

    private static void requireGrownFrom(Connection connection, TreeHead outside, long size, HeadsFile file) {
        if (!(outside.size() <= size)) {
            throw LogSetBackException.older(outside, size, file.path().toString());
        }
        if (!KeptSubtrees.tree(connection, outside.plant(), outside.size())
                .root()
                .equals(outside.root())) {
            throw LogSetBackException.rewritten(outside, file.path().toString());
        }
    }

    private static void keep(Connection connection, SignedHead head) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "insert into seal_head (plant, size, root, at, key_id, signature) values (?, ?, ?, ?, ?, ?)")) {
            insert.setString(1, head.head().plant());
            insert.setLong(2, head.head().size());
            insert.setString(3, head.head().root().hex());
            insert.setTimestamp(4, Timestamp.from(head.head().at()));
            insert.setString(5, head.keyId());
            insert.setString(6, head.signature());
            insert.executeUpdate();
        }
    }
}
