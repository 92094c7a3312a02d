package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausible;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.reel.Dispositions;
import dev.reelproof.store.reel.ReelBelow;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.sql.DataSource;

/**
 * Reads a lot with all above or below it, row by row as the database comes upon them: first the lots, nearest first, then the links,
 * then the reels with where they are. One statement and so one state of the tables; of 500,000 rows no more than {@value
 * #ROWS_AT_ONCE} are in memory.
 */
@ApplicationScoped
class PedigreeReading {
    /** What is put in order comes at once, or shows with one row more that it is too much; and the first rows of all come soon. */
    private static final int ROWS_AT_FIRST = Lots.MOST_IN_ORDER + 1;

    /** A round trip for so many costs little beside them. */
    private static final int ROWS_AT_ONCE = 4_000;

    private static final String CANCELLED = "57014";

    /** Whoever does not read on for so long has gone, and gives the connection to the database back. */
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(1);

    private static final String LIMITS =
            """
            set local statement_timeout = %%d;
            set local idle_in_transaction_session_timeout = %d;
            """
                    .formatted(LONGEST_PAUSE.toMillis());

    // The statement's rows are of three sorts; a column means what its sort makes of it.
    private static final int LOT = 1;
    private static final int LINK = 2;

    /**
     * Only identifiers may count when UNION drops what was there before: so each lot comes once and a circle ends. How far it is from
     * the start rides along in a way in which it does not count: as the number of decimals of a zero, 0 = 0.0 = 0.00; a lot comes first
     * on a shortest way, as all lots of one depth come before those of the next (up to 16,383, the most decimals there are).
     *
     * <p>"offset 0" keeps each search where it stands, one look into the index for each lot found: how many lots there will be cannot
     * be estimated, and a plan for many reads whole tables. The statement begins to answer while it still goes round.
     */
    private static final String FIND =
            """
            with recursive relative(id, depth) as (
                select cast(? as text), 0.
                union
                select i.%1$s, r.depth * 0.0
                from relative r
                cross join lateral (select %1$s from lot_input where plant = ? and %2$s = r.id offset 0) i),
            member as materialized (
                select scale(r.depth) as depth, l.*
                from relative r
                cross join lateral (
                    select id, kind, quantity_value, quantity_unit, made, step, machine, run
                    from lot where plant = ? and id = r.id offset 0) l)
            select 1, m.depth, m.id, m.kind, m.quantity_value, m.quantity_unit, m.made, m.step, m.machine, m.run,
                   cast(null as double precision), cast(null as double precision), cast(null as text),
                   cast(null as double precision), cast(null as double precision), cast(null as text), d.parents, d.messages
            from member m
            left join lateral (
                select array_agg(parent order by ordinal) as parents, array_agg(message order by ordinal) as messages
                from implausible_link where plant = ? and lot = m.id group by lot) d on true
            union all
            select 2, m.depth, i.parent, i.child, i.quantity_value, i.quantity_unit, null, null, null, null,
                   i.position_from, i.position_to, i.position_unit, i.onto_from, i.onto_to, i.onto_unit, null, null
            from member m
            cross join lateral (
                select parent, child, quantity_value, quantity_unit,
                       position_from, position_to, position_unit, onto_from, onto_to, onto_unit
                from lot_input where plant = ? and %2$s = m.id offset 0) i""";

    private static final String FIND_ANCESTORS = FIND.formatted("parent", "child");

    /** What was not told of a reel is in stock, as in {@link ReelBelow#state()}; those shipped come by recipient. */
    private static final String FIND_DESCENDANTS = FIND.formatted("child", "parent")
            + """

            union all
            select 3, null, r.id, r.order_number, null, r.customer, r.at, r.state, r.recipient, r.reason,
                   null, null, r.actor, null, null, null, null, null
            from (
                select m.id, e.order_number, e.customer, d.at, d.state, d.recipient, d.reason, d.actor
                from member m
                left join lateral (
                    select order_number, customer from reel where plant = ? and id = m.id offset 0) e on true
                left join lateral (
                    select state, recipient, reason, actor, at from reel_disposition
                    where plant = ? and reel = m.id order by reel_disposition.id desc limit 1) d on true
                where m.kind = 'reel'
                order by coalesce(d.state, 'in-stock'), d.recipient, m.depth, m.id) r""";

    private final DataSource database;

    PedigreeReading(DataSource database) {
        this.database = database;
    }

    /**
     * Reads until all is read, or one lot more than may be.
     *
     * @param start the lot that is asked for; nothing is read when it is not registered
     * @param most the most lots
     * @param longestStep how long the database may take for the next rows
     * @param reels takes those of the descendants; of ancestors none are given
     * @return whether all was read
     * @throws SearchTooLargeException when the database takes longer
     */
    @Transactional
    boolean read(
            String plant,
            LotId start,
            Direction direction,
            int most,
            Duration longestStep,
            Consumer<Pedigree.Entry> lots,
            Consumer<Pedigree.Link> links,
            Consumer<ReelBelow> reels) {
        String query = direction == Direction.ANCESTORS ? FIND_ANCESTORS : FIND_DESCENDANTS;
        try (Connection connection = database.getConnection()) {
            // The limits go with the statement, in one round trip, and end with the transaction.
            try (PreparedStatement statement =
                    connection.prepareStatement(LIMITS.formatted(longestStep.toMillis()) + query)) {
                statement.setFetchSize(ROWS_AT_FIRST);
                int parameter = 1;
                statement.setString(parameter, start.value());
                int parameters = (int) query.chars().filter(mark -> mark == '?').count();
                while (parameter < parameters) {
                    statement.setString(++parameter, plant);
                }
                statement.execute();
                while (statement.getUpdateCount() != -1) {
                    statement.getMoreResults();
                }
                try (ResultSet row = statement.getResultSet()) {
                    row.setFetchSize(ROWS_AT_ONCE);
                    int count = 0;
                    while (row.next()) {
                        int sort = row.getInt(1);
                        if (sort == LOT && ++count > most) {
                            return false;
                        }
                        switch (sort) {
                            case LOT -> lots.accept(lot(plant, row));
                            case LINK -> links.accept(link(row));
                            default -> reels.accept(reel(row));
                        }
                    }
                    return true;
                }
            }
        } catch (SQLException e) {
            if (CANCELLED.equals(e.getSQLState())) {
                throw new SearchTooLargeException("the pedigree of lot " + start + " was not found within "
                        + longestStep.toSeconds() + "s; ask again later, or for a lot nearer to what you look for");
            }
            throw new IllegalStateException("the pedigree of lot " + start + " could not be read", e);
        }
    }

    private static Pedigree.Entry lot(String plant, ResultSet row) throws SQLException {
        String run = row.getString(10);
        return new Pedigree.Entry(
                new Pedigree.Member(
                        new LotId(row.getString(3)),
                        plant,
                        LotKind.named(row.getString(4)),
                        new Amount(row.getDouble(5), row.getString(6)),
                        row.getObject(7, OffsetDateTime.class),
                        row.getString(8),
                        row.getString(9),
                        run == null ? null : new RunId(run),
                        implausible(row.getArray(17), row.getArray(18))),
                row.getInt(2));
    }

    private static List<Implausible> implausible(Array parents, Array messages) throws SQLException {
        if (messages == null) {
            return List.of();
        }
        String[] parent = (String[]) parents.getArray();
        String[] message = (String[]) messages.getArray();
        List<Implausible> implausible = new ArrayList<>();
        for (int i = 0; i < message.length; i++) {
            implausible.add(new Implausible(parent[i] == null ? null : new LotId(parent[i]), message[i]));
        }
        return implausible;
    }

    private static Pedigree.Link link(ResultSet row) throws SQLException {
        String unit = row.getString(13);
        Placement placement = unit == null
                ? null
                : new Placement(
                        row.getDouble(11),
                        row.getDouble(12),
                        unit,
                        row.getDouble(14),
                        row.getDouble(15),
                        row.getString(16));
        return new Pedigree.Link(
                new LotId(row.getString(3)),
                new LotId(row.getString(4)),
                new Amount(row.getDouble(5), row.getString(6)),
                placement);
    }

    private static ReelBelow reel(ResultSet row) throws SQLException {
        LotId id = new LotId(row.getString(3));
        String state = row.getString(8);
        return new ReelBelow(
                id,
                row.getString(4),
                row.getString(6),
                state == null
                        ? null
                        : new Dispositions.Entry(
                                id,
                                Dispositions.State.named(state),
                                row.getString(9),
                                row.getString(10),
                                row.getString(13),
                                row.getObject(7, OffsetDateTime.class)));
    }
}
