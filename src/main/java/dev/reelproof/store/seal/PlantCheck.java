package dev.reelproof.store.seal;

import dev.reelproof.seal.Frontier;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import dev.reelproof.store.seal.LogCheck.Difference;
import dev.reelproof.store.seal.LogCheck.WholePlant;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** Checks one plant: heads, leaves in their order with the rows that they speak of, rows without a leaf, and what waits. */
final class PlantCheck {
    private static final int AT_ONCE = 500;

    private final Connection connection;
    private final String plant;
    private final String headsFile;
    private final RowsCheck rowsCheck;
    private final NodesCheck nodesCheck;
    private final PublicSealKey key;
    private final List<SignedHead> outside;

    private Frontier frontier = Frontier.EMPTY;
    private long confirmed;
    private long waiting;

    PlantCheck(
            Connection connection,
            RowDigests digests,
            PublicSealKey key,
            String headsFile,
            String plant,
            List<SignedHead> outside) {
        this.connection = connection;
        this.plant = plant;
        this.headsFile = headsFile;
        this.key = key;
        this.outside = outside;
        this.rowsCheck = new RowsCheck(connection, digests, plant);
        this.nodesCheck = new NodesCheck(connection, plant);
    }

    private record PlacedLeaf(long position, Leaf leaf, String hash, String since) {}

    /** What the check has found when {@link #first} found no difference. */
    WholePlant whole() {
        return new WholePlant(plant, frontier.size(), waiting, outside.size());
    }

    Optional<Difference> first() throws SQLException {
        NavigableMap<Long, List<SignedHead>> heads = new TreeMap<>();
        Optional<Difference> difference = gather(outside, headsFile, heads);
        if (difference.isEmpty()) {
            difference = gather(headsInDatabase(), "seal_head", heads);
        }
        if (difference.isEmpty()) {
            difference = setBack();
        }
        if (difference.isEmpty()) {
            difference = leaves(heads);
        }
        if (difference.isEmpty()) {
            difference = rowsCheck.withoutLeaf();
        }
        return difference.isPresent() ? difference : waiting();
    }

    private Optional<Difference> gather(
            List<SignedHead> from, String where, NavigableMap<Long, List<SignedHead>> heads) {
        for (SignedHead head : from) {
            if (!key.signed(head)) {
                return Optional.of(new Difference(
                        where,
                        plant + " " + head.head().size(),
                        "The head of " + head.head().at() + " was not signed by the key " + key.id() + "."));
            }
            heads.computeIfAbsent(head.head().size(), size -> new ArrayList<>()).add(head);
        }
        return Optional.empty();
    }

    private List<SignedHead> headsInDatabase() throws SQLException {
        List<SignedHead> heads = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                "select " + LeafRows.HEAD_COLUMNS + " from seal_head where plant = ? order by size")) {
            query.setString(1, plant);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    heads.add(LeafRows.head(rows));
                }
            }
        }
        return heads;
    }

    /** A database that was set back is whole in itself; only a head outside it knows better. */
    private Optional<Difference> setBack() throws SQLException {
        long size = KeptSubtrees.size(connection, plant);
        return outside.stream()
                .map(SignedHead::head)
                .filter(head -> head.size() > size)
                .findFirst()
                .map(head -> new Difference(
                        "seal_leaf",
                        plant + " " + size,
                        LogSetBackException.older(head, size, headsFile).sentence()));
    }

    private Optional<Difference> leaves(NavigableMap<Long, List<SignedHead>> heads) throws SQLException {
        List<PlacedLeaf> batch = read(-1);
        while (!batch.isEmpty()) {
            Optional<Difference> difference = rowsOf(batch);
            if (difference.isEmpty()) {
                difference = treeOf(batch, heads);
            }
            if (difference.isPresent()) {
                return difference;
            }
            batch = read(batch.get(batch.size() - 1).position());
        }
        // A head over more leaves than there are, in the database alone.
        return heads.isEmpty() || heads.lastKey() <= frontier.size()
                ? Optional.empty()
                : Optional.of(new Difference(
                        "seal_leaf",
                        plant + " " + frontier.size(),
                        LogSetBackException.older(
                                        heads.lastEntry().getValue().get(0).head(), frontier.size(), "seal_head")
                                .sentence()));
    }

    private List<PlacedLeaf> read(long after) throws SQLException {
        List<PlacedLeaf> batch = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                """
                select position, kind, id, parts, hash,
                       to_char(sequenced at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')
                from seal_leaf where plant = ? and position > ? order by position limit\s"""
                        + AT_ONCE)) {
            query.setString(1, plant);
            query.setLong(2, after);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    batch.add(new PlacedLeaf(
                            rows.getLong(1),
                            LeafRows.leaf(rows.getString(2), plant, rows.getString(3), rows.getString(4)),
                            rows.getString(5),
                            rows.getString(6)));
                }
            }
        }
        return batch;
    }

    private Optional<Difference> rowsOf(List<PlacedLeaf> batch) throws SQLException {
        Map<LeafKind, Map<String, String>> now =
                rowsCheck.now(batch.stream().map(PlacedLeaf::leaf).toList());
        for (PlacedLeaf placed : batch) {
            Optional<Difference> difference = rowsCheck.first(placed.leaf(), now, "in the log since " + placed.since());
            if (difference.isPresent()) {
                return difference;
            }
        }
        return Optional.empty();
    }

    private Optional<Difference> treeOf(List<PlacedLeaf> batch, NavigableMap<Long, List<SignedHead>> heads)
            throws SQLException {
        List<Frontier.Subtree> completed = new ArrayList<>();
        for (PlacedLeaf placed : batch) {
            if (placed.position() != frontier.size()) {
                return Optional.of(
                        new Difference("seal_leaf", plant + " " + frontier.size(), "The leaf is gone from the log."));
            }
            if (!placed.leaf().hash().hex().equals(placed.hash())) {
                return Optional.of(new Difference(
                        "seal_leaf",
                        plant + " " + placed.position(),
                        "The leaf of " + placed.leaf().kind().word() + " "
                                + placed.leaf().id() + " was changed: its hash is another."));
            }
            Frontier.Appended appended = frontier.append(placed.leaf().hash());
            completed.addAll(appended.completed());
            frontier = appended.frontier();
            Optional<Difference> difference = headsAt(heads);
            if (difference.isPresent()) {
                // The nodes tell more closely which leaf it is, where they were not rewritten too.
                Optional<Difference> closer = nodesCheck.first(completed);
                return closer.isPresent() ? closer : difference;
            }
        }
        return nodesCheck.first(completed);
    }

    private Optional<Difference> headsAt(NavigableMap<Long, List<SignedHead>> heads) {
        for (SignedHead signed : heads.getOrDefault(frontier.size(), List.of())) {
            TreeHead head = signed.head();
            if (!head.root().equals(frontier.root())) {
                return Optional.of(new Difference(
                        "seal_leaf",
                        plant + " " + confirmed + " to " + (frontier.size() - 1),
                        "At least one of these leaves is not what was signed on " + head.at()
                                + ": the log was rewritten, or the database was set back and went on from there."));
            }
            confirmed = frontier.size();
        }
        return Optional.empty();
    }

    private Optional<Difference> waiting() throws SQLException {
        List<Leaf> batch = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                """
                select kind, id, parts, written < clock_timestamp() - interval '1 hour',
                       to_char(written at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')
                from seal_pending where plant = ? order by written, kind, id""")) {
            query.setString(1, plant);
            query.setFetchSize(AT_ONCE);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    waiting++;
                    if (rows.getBoolean(4)) {
                        return Optional.of(
                                new Difference(
                                        "seal_pending",
                                        plant + " " + rows.getString(1) + " " + rows.getString(2),
                                        "It has waited for its place in the log since " + rows.getString(5)
                                                + ": the service does not run, or cannot add to the log; its own log says why."));
                    }
                    batch.add(LeafRows.leaf(rows.getString(1), plant, rows.getString(2), rows.getString(3)));
                    if (batch.size() == AT_ONCE) {
                        Optional<Difference> difference = waitingRows(batch);
                        if (difference.isPresent()) {
                            return difference;
                        }
                        batch.clear();
                    }
                }
            }
        }
        return waitingRows(batch);
    }

    private Optional<Difference> waitingRows(List<Leaf> batch) throws SQLException {
        Map<LeafKind, Map<String, String>> now = rowsCheck.now(batch);
        for (Leaf leaf : batch) {
            Optional<Difference> difference = rowsCheck.first(leaf, now, "waiting for its place in the log");
            if (difference.isPresent()) {
                return difference;
            }
        }
        return Optional.empty();
    }
}
