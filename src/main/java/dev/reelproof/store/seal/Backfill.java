package dev.reelproof.store.seal;

import dev.reelproof.seal.LeafKind;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Takes the rows from before the log into it, once, and says so in the log's first leaf. */
final class Backfill {
    /** The identifier of that leaf. */
    static final String NOTE = "rows-from-before-the-log";

    private static final int AT_ONCE = 500;

    private Backfill() {}

    /** Puts a plant's rows that no leaf speaks of on the waiting list, behind the note; says how many. */
    static long run(Connection connection, String plant) throws SQLException {
        RowDigests digests = RowDigests.read(connection);
        long taken = 0;
        for (LeafKind kind : LeafKind.values()) {
            if (kind.hasRow()) {
                taken += take(connection, digests, kind, plant);
            }
        }
        try (PreparedStatement note = connection.prepareStatement(
                """
                insert into seal_pending (plant, kind, id, parts, written)
                values (?, ?, ?, ?, timestamptz '1970-01-01 00:00:00+00')""")) {
            note.setString(1, plant);
            note.setString(2, LeafKind.NOTE.word());
            note.setString(3, NOTE);
            note.setString(4, "taken in as they were found: " + taken);
            note.executeUpdate();
        }
        return taken;
    }

    private static long take(Connection connection, RowDigests digests, LeafKind kind, String plant)
            throws SQLException {
        long taken = 0;
        try (PreparedStatement query = connection.prepareStatement(UnsealedRows.query(kind));
                PreparedStatement insert = connection.prepareStatement("insert into seal_pending (plant, kind, id,"
                        + " parts) select ?, ?, of.id, of.parts from (" + digests.partsOf(kind) + ") as of")) {
            query.setFetchSize(AT_ONCE);
            query.setString(1, plant);
            List<String> ids = new ArrayList<>();
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    ids.add(rows.getString(1));
                    if (ids.size() == AT_ONCE) {
                        taken += insert(insert, kind, plant, ids);
                        ids.clear();
                    }
                }
            }
            if (!ids.isEmpty()) {
                taken += insert(insert, kind, plant, ids);
            }
        }
        return taken;
    }

    private static int insert(PreparedStatement insert, LeafKind kind, String plant, List<String> ids)
            throws SQLException {
        insert.setString(1, plant);
        insert.setString(2, kind.word());
        RowDigests.bind(insert, 3, kind, plant, ids);
        return insert.executeUpdate();
    }
}
