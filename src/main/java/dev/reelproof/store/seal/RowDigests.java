package dev.reelproof.store.seal;

import dev.reelproof.seal.LeafKind;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.StringJoiner;
import java.util.UUID;

/**
 * What of a row is sealed, and its digest.
 *
 * <p>The digest is the SHA-256 of a text in UTF-8: for each column that is not null, in the order of their names by bytes, the name, a
 * space, the length of the value in bytes of UTF-8, a colon, the value, a line feed. Values: text as it is; numbers, booleans, UUIDs,
 * arrays and JSON as PostgreSQL writes them; a {@code double precision} as its 8 bytes in hexadecimal, so that no setting rounds it; a
 * time in UTC with six decimals ({@code 2026-03-02T14:05:00.000000}); bytes as their SHA-256 in hexadecimal. Generated columns are left
 * out. A column that is added later and is null in the rows of before changes no digest.
 *
 * <p>The database counts it, with functions of {@code pg_catalog} alone: nothing large is sent. All statements come from here, so that no
 * function that the database's owner can replace has a say.
 */
final class RowDigests {
    private static final Map<String, String> VALUES = Map.ofEntries(
            Map.entry("timestamptz", "to_char(%s at time zone 'UTC', 'YYYY-MM-DD\"T\"HH24:MI:SS.US')"),
            Map.entry("date", "to_char(%s, 'YYYY-MM-DD')"),
            Map.entry("float8", "encode(float8send(%s), 'hex')"),
            Map.entry("bytea", "encode(sha256(%s), 'hex')"),
            Map.entry("text", "%s"),
            Map.entry("int2", "%s::text"),
            Map.entry("int4", "%s::text"),
            Map.entry("int8", "%s::text"),
            Map.entry("numeric", "%s::text"),
            Map.entry("bool", "%s::text"),
            Map.entry("uuid", "%s::text"),
            Map.entry("jsonb", "%s::text"),
            Map.entry("_int4", "%s::text"),
            Map.entry("_text", "%s::text"));

    /** Lets PostgreSQL leave out the other partitions before it plans for them; without, a record costs three times as much. */
    private static final String WITHIN = " and t.received between cast(? as timestamptz) and cast(? as timestamptz)";

    private final Map<LeafKind, String> parts = new EnumMap<>(LeafKind.class);

    private RowDigests(Connection connection) throws SQLException {
        for (LeafKind kind : LeafKind.values()) {
            if (kind.hasRow()) {
                parts.put(kind, partsOf(kind, connection));
            }
        }
    }

    /** Reads the columns of the sealed tables. */
    static RowDigests read(Connection connection) throws SQLException {
        return new RowDigests(connection);
    }

    /**
     * A query for the parts of leaves: {@code id}, {@code parts}. {@link #bind} gives it its parameters; a leaf whose rows are all gone
     * gives no row.
     */
    String partsOf(LeafKind kind) {
        String query = parts.get(kind);
        if (query == null) {
            throw new IllegalArgumentException("no row stands behind a leaf of kind " + kind.word());
        }
        return query;
    }

    /** The parts of leaves, as the rows are now, by identifier. */
    Map<String, String> of(LeafKind kind, String plant, List<String> ids, Connection connection) throws SQLException {
        Map<String, String> found = new LinkedHashMap<>();
        try (PreparedStatement query = connection.prepareStatement(partsOf(kind))) {
            bind(query, 1, kind, plant, ids);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    found.put(rows.getString(1), rows.getString(2));
                }
            }
        }
        return found;
    }

    /**
     * Gives {@link #partsOf} its parameters.
     *
     * @param first the place of its first parameter in the statement
     */
    static void bind(PreparedStatement statement, int first, LeafKind kind, String plant, List<String> ids)
            throws SQLException {
        int next = first;
        statement.setString(next++, plant);
        statement.setArray(next++, statement.getConnection().createArrayOf("text", ids.toArray()));
        for (SealedTable table : SealedTable.of(kind)) {
            if (table.isPartitioned()) {
                LongSummaryStatistics received =
                        ids.stream().mapToLong(RowDigests::receivedMillis).summaryStatistics();
                statement.setObject(next++, utc(received.getMin()));
                statement.setObject(next++, utc(received.getMax()));
            }
        }
    }

    /** The first 48 bits of a UUID of version 7. */
    private static long receivedMillis(String id) {
        return UUID.fromString(id).getMostSignificantBits() >>> 16;
    }

    private static OffsetDateTime utc(long millis) {
        return Instant.ofEpochMilli(millis).atOffset(ZoneOffset.UTC);
    }

    private static String partsOf(LeafKind kind, Connection connection) throws SQLException {
        StringJoiner lines = new StringJoiner(" union all ");
        int rank = 0;
        for (SealedTable table : SealedTable.of(kind)) {
            String ordinal = table.ordinal == null ? "0" : "t." + table.ordinal;
            String name = "'" + table.table + (table.ordinal == null ? " '" : "/' || t." + table.ordinal + " || ' '");
            lines.add("select " + rank++ + " as rank, " + ordinal + " as ordinal, " + name + " || "
                    + digest(table, connection) + " as part from " + table.table
                    + " as t where t.plant = p.plant and " + table.ofLeaf
                    + (table.isPartitioned() ? WITHIN : ""));
        }
        return "with p as (select cast(? as text) as plant, cast(? as text[]) as ids)"
                + " select k.id, string_agg(line.part, chr(10) order by line.rank, line.ordinal) as parts"
                + " from p cross join lateral unnest(p.ids) as k(id) cross join lateral (" + lines + ") as line"
                + " group by k.id";
    }

    private static String digest(SealedTable table, Connection connection) throws SQLException {
        List<String> columns = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                """
                select a.attname, y.typname, quote_ident(a.attname)
                from pg_attribute a join pg_type y on y.oid = a.atttypid
                where a.attrelid = to_regclass(?) and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''
                order by a.attname::text collate "C\"""")) {
            query.setString(1, table.table);
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    String form = VALUES.get(rows.getString(2));
                    if (form == null) {
                        throw new IllegalStateException("column " + table.table + "." + rows.getString(1)
                                + " is of type " + rows.getString(2) + ", of which it is not stated how it is sealed");
                    }
                    String value = form.formatted("t." + rows.getString(3));
                    columns.add("coalesce('" + rows.getString(1) + " ' || octet_length(" + value + ") || ':' || "
                            + value + " || chr(10), '')");
                }
            }
        }
        if (columns.isEmpty()) {
            throw new IllegalStateException("table " + table.table + " is not there");
        }
        return "encode(sha256(convert_to(" + String.join(" || ", columns) + ", 'UTF8')), 'hex')";
    }
}
