package dev.reelproof.store.lot;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.store.RowJson;
import java.time.OffsetDateTime;
import org.hibernate.Session;
import org.hibernate.query.MutationQuery;
import org.jspecify.annotations.Nullable;

/** Rows that one statement inserts, however many: they travel as one JSON text, which {@code json_to_recordset} reads. */
public final class JsonRows {
    private final ArrayNode rows = JsonNodeFactory.instance.arrayNode();

    public ObjectNode add() {
        return rows.addObject();
    }

    /** A time as the JSON text has it. */
    public static @Nullable String text(@Nullable OffsetDateTime time) {
        return time == null ? null : time.toString();
    }

    /**
     * Inserts the rows; nothing is sent when there are none.
     *
     * @param statement takes {@code :plant} and {@code :rows}
     */
    public void insert(Session session, String statement, String plant) {
        if (!rows.isEmpty()) {
            query(session, statement, plant).executeUpdate();
        }
    }

    /**
     * As {@link #insert(Session, String, String)}, of rows with the time at which they were kept.
     *
     * @param statement takes {@code :now} too
     */
    public void insert(Session session, String statement, String plant, OffsetDateTime now) {
        if (!rows.isEmpty()) {
            query(session, statement, plant).setParameter("now", now.toString()).executeUpdate();
        }
    }

    private MutationQuery query(Session session, String statement, String plant) {
        return session.createNativeMutationQuery(statement)
                .setParameter("plant", plant)
                .setParameter("rows", RowJson.write(rows));
    }
}
