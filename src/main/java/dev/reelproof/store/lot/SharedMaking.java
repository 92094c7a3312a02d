package dev.reelproof.store.lot;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.LotsTogether;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.SharingReel;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** Finds the lots that share the run of a step, or a machine within a time, and the reels that descend from them. */
@ApplicationScoped
public class SharedMaking {
    private static final String OF_RUN = "select " + LotRow.COLUMNS
            + " from lot l where l.plant = :plant and l.run = :run order by l.made, l.id limit :most";

    /** A lot counts when its run overlaps the time; one without a run was made in no time. */
    private static final String OF_MACHINE = "select " + LotRow.COLUMNS
            + " from lot l left join step_run r on r.plant = l.plant and r.id = l.run"
            + " where l.plant = :plant and l.machine = :machine and "
            + TimeWindow.overlaps("coalesce(r.started, l.made)", "l.made")
            + " order by l.made, l.id limit :most";

    private static final String REELS_BELOW =
            """
            with recursive relative(id) as (
                select unnest(cast(:starts as text[]))
                union
                select i.child from relative r join lot_input i on i.plant = :plant and i.parent = r.id)
            select l.id, l.kind, l.quantity_value, l.quantity_unit, l.made, l.step, l.machine, l.run,
                   e.order_number, e.customer, count(*) over ()
            from relative x join lot l on l.plant = :plant and l.id = x.id and l.kind = :reel
            left join reel e on e.plant = l.plant and e.id = l.id
            where %s
            order by l.made, l.id limit :most"""
                    .formatted(TimeWindow.contains("l.made"));

    private static final TimeWindow ANY_TIME = new TimeWindow(null, null);

    private final Session session;
    private final StatementTimeout timeout;

    SharedMaking(Session session, StatementTimeout timeout) {
        this.session = session;
        this.timeout = timeout;
    }

    private record ReelRow(
            String id,
            String kind,
            double value,
            String unit,
            Instant made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run,
            @Nullable String order,
            @Nullable String customer,
            long count) {
        SharingReel reel(String plant) {
            return new SharingReel(
                    new LotRow(id, kind, value, unit, made, step, machine, run).member(plant), order, customer);
        }
    }

    /** The lots that are outputs of a run, in the order in which they were made. */
    @Transactional
    public List<Pedigree.Member> outputs(String plant, RunId run) {
        return members(plant, session.createNativeQuery(OF_RUN, LotRow.class).setParameter("run", run.value()));
    }

    /**
     * The outputs of a run, and the reels that descend from them and were made within a time.
     *
     * @param from the earliest time; any when absent
     * @param to the latest time, itself included; any when absent
     * @throws SearchTooLargeException when it takes too long to find
     */
    @Transactional
    public LotsTogether ofRun(String plant, RunId run, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to) {
        return timeout.within(
                LotSearches.LONGEST,
                LotSearches.TOO_LONG,
                () -> shared(plant, outputs(plant, run), new TimeWindow(from, to)));
    }

    /**
     * What a machine made within a time, and the reels that descend from it.
     *
     * @param from the earliest time; any when absent
     * @param to the latest time, itself included; any when absent
     * @throws SearchTooLargeException when it takes too long to find
     */
    @Transactional
    public LotsTogether ofMachine(
            String plant, String machine, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to) {
        return timeout.within(LotSearches.LONGEST, LotSearches.TOO_LONG, () -> {
            NativeQuery<LotRow> made = new TimeWindow(from, to)
                    .bind(session.createNativeQuery(OF_MACHINE, LotRow.class).setParameter("machine", machine));
            return shared(plant, members(plant, made), ANY_TIME);
        });
    }

    private static List<Pedigree.Member> members(String plant, NativeQuery<LotRow> query) {
        return query.setParameter("plant", plant).setParameter("most", LotSearches.MOST_LISTED).getResultList().stream()
                .map(row -> row.member(plant))
                .toList();
    }

    private LotsTogether shared(String plant, List<Pedigree.Member> outputs, TimeWindow madeWithin) {
        List<LotId> starts = outputs.stream().map(Pedigree.Member::id).toList();
        List<ReelRow> rows = madeWithin
                .bind(session.createNativeQuery(REELS_BELOW, ReelRow.class)
                        .setParameter("plant", plant)
                        .setParameter("starts", Identifiers.of(starts))
                        .setParameter("reel", LotKind.REEL.word())
                        .setParameter("most", LotSearches.MOST_LISTED))
                .getResultList();
        return new LotsTogether(
                outputs,
                rows.stream().map(row -> row.reel(plant)).toList(),
                rows.isEmpty() ? 0 : Math.toIntExact(rows.get(0).count()));
    }
}
