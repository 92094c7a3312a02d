package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.ReelBelow;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.Iterator;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/**
 * Reads a lot with all above or below it, row by row as the database comes upon them: first the lots, nearest first, then the links,
 * then the reels with where they are. One statement and so one state of the tables; of 500,000 rows no more than {@value
 * #ROWS_AT_ONCE} are in memory.
 */
@ApplicationScoped
class PedigreeReading {
    /** A round trip for so many costs little beside them, and the first of them come soon. */
    private static final int ROWS_AT_ONCE = 1_000;

    /** Whoever does not read on for so long has gone, and gives the connection to the database back. */
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(1);

    /**
     * UNION drops each row that was there before, and must compare identifiers alone: so each lot comes once and a circle ends. The
     * depth rides along without being compared, as the number of decimals of a zero: 0 = 0.0 = 0.00. All lots of one depth come before
     * those of the next, so that a lot comes with its least depth (up to 16,383, the most decimals there are).
     *
     * <p>"offset 0" makes each search one look into the index for each lot found. Without it the database, which cannot estimate how
     * many lots there will be, plans for many and reads whole tables. The statement begins to answer while it still recurses.
     */
    private static final String FIND =
            """
            with recursive relative(id, depth) as (
                select cast(:start as text), 0.
                union
                select i.%1$s, r.depth * 0.0
                from relative r
                cross join lateral (select %1$s from lot_input where plant = :plant and %2$s = r.id offset 0) i),
            member as materialized (
                select scale(r.depth) as depth, l.*
                from relative r
                cross join lateral (
                    select id, kind, quantity_value, quantity_unit, made, step, machine, run
                    from lot where plant = :plant and id = r.id offset 0) l)
            select 1, m.depth, m.id, cast(null as text), m.kind, m.quantity_value, m.quantity_unit,
                   m.made, m.step, m.machine, m.run,
                   cast(null as double precision), cast(null as double precision), cast(null as text),
                   cast(null as double precision), cast(null as double precision), cast(null as text),
                   d.parents, d.messages,
                   cast(null as text), cast(null as text), cast(null as text),
                   cast(null as text), cast(null as text), cast(null as text)
            from member m
            left join lateral (
                select array_agg(parent order by ordinal) as parents, array_agg(message order by ordinal) as messages
                from implausible_link where plant = :plant and lot = m.id group by lot) d on true
            union all
            select 2, null, i.parent, i.child, null, i.quantity_value, i.quantity_unit,
                   null, null, null, null,
                   i.position_from, i.position_to, i.position_unit, i.onto_from, i.onto_to, i.onto_unit,
                   null, null, null, null, null, null, null, null
            from member m
            cross join lateral (
                select parent, child, quantity_value, quantity_unit,
                       position_from, position_to, position_unit, onto_from, onto_to, onto_unit
                from lot_input where plant = :plant and %2$s = m.id offset 0) i""";

    private static final String FIND_ANCESTORS = FIND.formatted("parent", "child");

    /** Reels come by where they are, those shipped by recipient. */
    private static final String FIND_DESCENDANTS = FIND.formatted("child", "parent")
            + """

            union all
            select 3, null, r.id, null, null, null, null, r.at, null, null, null,
                   null, null, null, null, null, null, null, null,
                   r.order_number, r.customer, r.state, r.recipient, r.reason, r.actor
            from (
                select m.id, e.order_number, e.customer, d.at, d.state, d.recipient, d.reason, d.actor
                from member m
                left join lateral (
                    select order_number, customer from reel where plant = :plant and id = m.id offset 0) e on true
                left join lateral (
                    select state, recipient, reason, actor, at from reel_disposition
                    where plant = :plant and reel = m.id order by reel_disposition.id desc limit 1) d on true
                where m.kind = :reel
                order by coalesce(d.state, :untold), d.recipient, m.depth, m.id) r""";

    /**
     * Until the transaction ends the database plans no reading of a whole table where an index serves. Statistics of a time at which
     * one parent had almost all children would let it read all links for each lot.
     */
    private static final String PLAN =
            "select set_config('enable_seqscan', 'off', true) || set_config('enable_bitmapscan', 'off', true)";

    private final Session session;
    private final StatementTimeout timeout;

    PedigreeReading(Session session, StatementTimeout timeout) {
        this.session = session;
        this.timeout = timeout;
    }

    /** Takes the rows of a pedigree as they are read. */
    interface Reader {
        /**
         * A lot; nearest first.
         *
         * @return whether to read on
         */
        boolean lot(Pedigree.Entry lot);

        /** A link; those of the nearest lots first. */
        void link(Pedigree.Link link);

        /** A reel among the descendants; of ancestors none is given. */
        void reel(ReelBelow reel);
    }

    /**
     * Reads until all is read, or the reader has enough.
     *
     * @param start the lot that is asked for; nothing is read when it is not registered
     * @param longestStep how long the database may take for the next rows
     * @return whether all was read
     * @throws SearchTooLargeException when the database takes longer
     */
    @Transactional
    boolean read(String plant, LotId start, Direction direction, Duration longestStep, Reader reader) {
        return timeout.within(
                longestStep,
                "the pedigree of lot " + start + " was not found within " + longestStep.toSeconds()
                        + "s; ask again later, or for a lot nearer to what you look for",
                () -> {
                    session.createNativeQuery(PLAN, String.class).getSingleResult();
                    try (Stream<PedigreeRow> rows = query(plant, start, direction)
                            .setFetchSize(ROWS_AT_ONCE)
                            .getResultStream()) {
                        return give(plant, rows.iterator(), reader);
                    }
                });
    }

    /** Gives the connection to the database back when the reader takes nothing for too long, until the transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    void limitPauses() {
        session.createNativeQuery("select set_config('idle_in_transaction_session_timeout', :most, true)", String.class)
                .setParameter("most", Long.toString(LONGEST_PAUSE.toMillis()))
                .getSingleResult();
    }

    private NativeQuery<PedigreeRow> query(String plant, LotId start, Direction direction) {
        NativeQuery<PedigreeRow> query = direction == Direction.ANCESTORS
                ? session.createNativeQuery(FIND_ANCESTORS, PedigreeRow.class)
                : session.createNativeQuery(FIND_DESCENDANTS, PedigreeRow.class)
                        .setParameter("reel", LotKind.REEL.word())
                        .setParameter("untold", Disposition.State.IN_STOCK.word());
        return query.setParameter("start", start.value()).setParameter("plant", plant);
    }

    private static boolean give(String plant, Iterator<PedigreeRow> rows, Reader reader) {
        while (rows.hasNext()) {
            PedigreeRow row = rows.next();
            switch (row.sort()) {
                case PedigreeRow.LOT -> {
                    if (!reader.lot(row.lot(plant))) {
                        return false;
                    }
                }
                case PedigreeRow.LINK -> reader.link(row.link());
                default -> reader.reel(row.reel());
            }
        }
        return true;
    }
}
