package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.ExpectedInputs;
import dev.reelproof.genealogy.Implausible;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.QueryTimeoutException;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;

/** What is asked of lots beside one pedigree: what reels have in common, what shares a run or a machine, what is incomplete. */
@ApplicationScoped
public class LotQuestions {
    /** The most that one answer lists. */
    public static final int MOST_LISTED = 10_000;

    private static final String LONGEST_SEARCH = "10s";
    private static final String LOT_COLUMNS =
            "l.id, l.kind, l.quantity_value, l.quantity_unit, l.made, l.step, l.machine, l.run";

    private final Session session;
    private final LotReading reading;

    LotQuestions(Session session, LotReading reading) {
        this.session = session;
        this.reading = reading;
    }

    /**
     * An ancestor of several reels.
     *
     * @param lot the ancestor
     * @param reels from how many of them it is reached; a reel counts once, however many ways lead to it
     */
    public record Common(Pedigree.Member lot, int reels) {}

    /**
     * A reel and where it is.
     *
     * @param lot the reel
     * @param order the registered order; null when there is none
     * @param customer the registered customer; null when there is none
     */
    public record SharingReel(Pedigree.Member lot, String order, String customer) {}

    /**
     * What shares a run or a machine's time.
     *
     * @param outputs the lots that were made in it
     * @param reels the reels that descend from them, themselves included; at most {@value #MOST_LISTED}
     * @param reelCount how many reels there are
     */
    public record Shared(List<Pedigree.Member> outputs, List<SharingReel> reels, int reelCount) {}

    /** A report that waits, and for what. */
    public record Waiting(LotId lot, LotKind kind, OffsetDateTime received, List<LotId> missing) {}

    /** A report that had waited and turned out wrong. */
    public record RefusedLater(
            LotId lot, OffsetDateTime received, OffsetDateTime refused, String reason, String reportJson) {}

    /**
     * A lot in which something can hardly be so.
     *
     * @param registered when it was registered, or a later one that does not fit it
     */
    public record Doubtful(LotId lot, OffsetDateTime registered, List<Implausible> implausible) {}

    /** A lot of which not all inputs can have been reported. */
    public record Lacking(LotId lot, LotKind kind, OffsetDateTime made, List<String> missing) {}

    private void limitTime() {
        session.createNativeQuery("select set_config('statement_timeout', :most, true)", String.class)
                .setParameter("most", LONGEST_SEARCH)
                .getSingleResult();
    }

    private <T> T inTime(Supplier<T> search) {
        limitTime();
        try {
            return search.get();
        } catch (QueryTimeoutException e) {
            throw new SearchTooLargeException("the answer was not found within " + LONGEST_SEARCH
                    + "; ask for less: fewer reels, or a shorter time");
        }
    }

    private static Pedigree.Member member(String plant, Object[] row) {
        int column = 0;
        return new Pedigree.Member(
                new LotId((String) row[column++]),
                plant,
                LotKind.named((String) row[column++]),
                new Amount((Double) row[column++], (String) row[column++]),
                UtcTimes.utc((Instant) row[column++]),
                (String) row[column++],
                (String) row[column++],
                row[column] == null ? null : new RunId((String) row[column]),
                List.of());
    }

    /**
     * The ancestors of several reels, those shared by most first; of more than one reel, only what at least two share.
     *
     * @param reels the reels, each once
     */
    @Transactional
    public List<Common> commonAncestors(String plant, Collection<LotId> reels) {
        return inTime(() -> session
                .createNativeQuery(
                        """
                        with recursive above(reel, id) as (
                            select r, r from unnest(cast(:reels as text[])) r
                            union
                            select a.reel, i.parent from above a join lot_input i on i.plant = :plant and i.child = a.id),
                        shared as (
                            select id, count(*) as reels from above group by id having count(*) >= :least
                            order by 2 desc, 1 limit :most)
                        select %s, s.reels from shared s join lot l on l.plant = :plant and l.id = s.id
                        order by s.reels desc, l.id"""
                                .formatted(LOT_COLUMNS),
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.stream().map(LotId::value).toArray(String[]::new))
                .setParameter("least", Math.min(2, reels.size()))
                .setParameter("most", MOST_LISTED)
                .getResultList()
                .stream()
                .map(row -> new Common(member(plant, row), ((Number) row[row.length - 1]).intValue()))
                .toList());
    }

    /** Those of these that are neither a lot nor a registered reel. */
    @Transactional
    public List<LotId> unknown(String plant, Collection<LotId> ids) {
        return session
                .createNativeQuery(
                        """
                        select r from unnest(cast(:ids as text[])) r
                        where not exists (select from lot where plant = :plant and id = r)
                          and not exists (select from reel where plant = :plant and id = r)
                        order by r""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("ids", ids.stream().map(LotId::value).toArray(String[]::new))
                .getResultList()
                .stream()
                .map(LotId::new)
                .toList();
    }

    /** The run of that identifier. */
    @Transactional
    public Optional<StepRun> run(String plant, RunId id) {
        return Optional.ofNullable(reading.runs(plant, List.of(id)).get(id));
    }

    /** The lots that are outputs of a run, in the order in which they were made. */
    @Transactional
    public List<Pedigree.Member> outputs(String plant, RunId run) {
        return session
                .createNativeQuery(
                        "select " + LOT_COLUMNS
                                + " from lot l where l.plant = :plant and l.run = :run order by l.made, l.id limit :most",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("run", run.value())
                .setParameter("most", MOST_LISTED)
                .getResultList()
                .stream()
                .map(row -> member(plant, row))
                .toList();
    }

    /** The outputs of a run, and the reels that descend from them and were made within a time. */
    @Transactional
    public Shared sharingRun(String plant, RunId run, OffsetDateTime from, OffsetDateTime to) {
        return shared(plant, "l.run = :what", run.value(), from, to, false);
    }

    /** What a machine made within a time, and the reels that descend from it. A lot counts when its run overlaps the time. */
    @Transactional
    public Shared sharingMachine(String plant, String machine, OffsetDateTime from, OffsetDateTime to) {
        return shared(plant, "l.machine = :what", machine, from, to, true);
    }

    private Shared shared(
            String plant,
            String condition,
            String what,
            OffsetDateTime from,
            OffsetDateTime to,
            boolean windowOnOutputs) {
        String window = within("l.made", "coalesce(%s, l.made)");
        String outputs = "select " + LOT_COLUMNS
                + " from lot l left join step_run r on r.plant = l.plant and r.id = l.run where l.plant = :plant and "
                + condition + (windowOnOutputs ? " and " + window.formatted("r.started") : "")
                + " order by l.made, l.id";
        return inTime(() -> {
            NativeQuery<Object[]> query = session.createNativeQuery(outputs + " limit :most", Object[].class)
                    .setParameter("plant", plant)
                    .setParameter("what", what)
                    .setParameter("most", MOST_LISTED);
            if (windowOnOutputs) {
                window(query, from, to);
            }
            List<Pedigree.Member> made = query.getResultList().stream()
                    .map(row -> member(plant, row))
                    .toList();
            NativeQuery<Object[]> below = session.createNativeQuery(
                            """
                            with recursive relative(id) as (
                                select unnest(cast(:starts as text[]))
                                union
                                select i.child from relative r join lot_input i on i.plant = :plant and i.parent = r.id)
                            select %s, e.order_number, e.customer, count(*) over ()
                            from relative x join lot l on l.plant = :plant and l.id = x.id and l.kind = 'reel'
                            left join reel e on e.plant = l.plant and e.id = l.id
                            where %s
                            order by l.made, l.id limit :most"""
                                    .formatted(LOT_COLUMNS, windowOnOutputs ? "true" : window.formatted("null")),
                            Object[].class)
                    .setParameter("plant", plant)
                    .setParameter(
                            "starts", made.stream().map(lot -> lot.id().value()).toArray(String[]::new))
                    .setParameter("most", MOST_LISTED);
            if (!windowOnOutputs) {
                window(below, from, to);
            }
            List<Object[]> rows = below.getResultList();
            List<SharingReel> reels = rows.stream()
                    .map(row -> new SharingReel(
                            member(plant, row), (String) row[row.length - 3], (String) row[row.length - 2]))
                    .toList();
            int count = rows.isEmpty() ? 0 : ((Number) rows.get(0)[rows.get(0).length - 1]).intValue();
            return new Shared(made, reels, count);
        });
    }

    /** The condition that a time, or the two of a run, lies within what {@link #window} sets. */
    private static String within(String ended, String began) {
        return ended + " >= coalesce(cast(:from as timestamptz), '-infinity') and " + began
                + " <= coalesce(cast(:to as timestamptz), 'infinity')";
    }

    private static void window(NativeQuery<?> query, OffsetDateTime from, OffsetDateTime to) {
        query.setParameter("from", UtcTimes.instant(from), Instant.class)
                .setParameter("to", UtcTimes.instant(to), Instant.class);
    }

    /** Reports that wait, oldest first. */
    @Transactional
    public List<Waiting> waiting(String plant, int limit) {
        return session
                .createNativeQuery(
                        """
                        select w.lot, w.report ->> 'kind', w.received,
                               array(select p.parent from waiting_parent p
                                     where p.plant = w.plant and p.lot = w.lot order by p.parent)
                        from waiting_report w where w.plant = :plant order by w.received, w.lot limit :limit""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(row -> new Waiting(
                        new LotId((String) row[0]),
                        LotKind.named((String) row[1]),
                        UtcTimes.utc((Instant) row[2]),
                        Stream.of((Object[]) row[3])
                                .map(parent -> new LotId((String) parent))
                                .toList()))
                .toList();
    }

    /** How many reports wait. */
    @Transactional
    public int waitingCount(String plant) {
        return session.createNativeQuery("select count(*) from waiting_report where plant = :plant", Long.class)
                .setParameter("plant", plant)
                .getSingleResult()
                .intValue();
    }

    /** Reports that had waited and turned out wrong, the newest first. */
    @Transactional
    public List<RefusedLater> refusedLater(String plant, int limit) {
        return session
                .createNativeQuery(
                        """
                        select lot, received, refused, reason, cast(report as text) from refused_report
                        where plant = :plant order by id desc limit :limit""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(row -> new RefusedLater(
                        new LotId((String) row[0]),
                        UtcTimes.utc((Instant) row[1]),
                        UtcTimes.utc((Instant) row[2]),
                        (String) row[3],
                        (String) row[4]))
                .toList();
    }

    /** Lots in which something can hardly be so, those in which it was found last first. */
    @Transactional
    public List<Doubtful> implausible(String plant, int limit) {
        Map<LotId, OffsetDateTime> registered = new LinkedHashMap<>();
        session.createNativeQuery(
                        """
                        select f.lot, f.registered from implausible_link f
                        where f.plant = :plant
                          and not exists (select from implausible_link g
                                          where g.plant = f.plant and g.lot = f.lot
                                            and (g.registered, g.ordinal) > (f.registered, f.ordinal))
                        order by f.registered desc, f.lot limit :limit""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("limit", limit)
                .getResultList()
                .forEach(row -> registered.put(new LotId((String) row[0]), UtcTimes.utc((Instant) row[1])));
        Map<LotId, List<Implausible>> found = reading.implausible(plant, registered.keySet());
        List<Doubtful> doubtful = new ArrayList<>();
        registered.forEach((lot, at) -> doubtful.add(new Doubtful(lot, at, found.get(lot))));
        return doubtful;
    }

    /**
     * Reels that are registered but of which no inputs were reported.
     *
     * @param from the earliest time of registration, or of making for one that is a lot alone; null for any
     * @param to the latest, itself included; null for any
     */
    @Transactional
    public List<LotId> reelsWithoutInputs(String plant, OffsetDateTime from, OffsetDateTime to, int limit) {
        return inTime(() -> {
            NativeQuery<String> query = session.createNativeQuery(
                            """
                            select id from (
                                select r.id from reel r
                                where r.plant = :plant and %s
                                union
                                select l.id from lot l
                                where l.plant = :plant and l.kind = 'reel' and %s) reels
                            where not exists (select from lot_input i where i.plant = :plant and i.child = reels.id)
                            order by id limit :limit"""
                                    .formatted(within("r.registered", "r.registered"), within("l.made", "l.made")),
                            String.class)
                    .setParameter("plant", plant)
                    .setParameter("limit", limit);
            window(query, from, to);
            return query.getResultList().stream().map(LotId::new).toList();
        });
    }

    /**
     * Lots that were made within a time and lack a kind of input that lots of their kind always have, oldest first. Reels without
     * any input are not among them: {@link #reelsWithoutInputs} has those.
     *
     * @param from the earliest time; null for any
     * @param to the latest time, itself included; null for any
     */
    @Transactional
    public List<Lacking> lacking(String plant, OffsetDateTime from, OffsetDateTime to, int limit) {
        String[] kinds = Arrays.stream(LotKind.values())
                .filter(kind -> !ExpectedInputs.missing(kind, List.of()).isEmpty())
                .map(LotKind::word)
                .toArray(String[]::new);
        return inTime(() -> {
            // Few combinations of kinds are judged, and not each of many lots.
            Map<String, List<String>> lacking = new TreeMap<>();
            NativeQuery<Object[]> query = session.createNativeQuery(
                            """
                            select l.id, l.kind, l.made,
                                   array(select distinct p.kind from lot_input i
                                         join lot p on p.plant = i.plant and p.id = i.parent
                                         where i.plant = l.plant and i.child = l.id order by 1)
                            from lot l
                            where l.plant = :plant and l.kind = any(:kinds) and %s
                            order by l.made, l.id"""
                                    .formatted(within("l.made", "l.made")),
                            Object[].class)
                    .setParameter("plant", plant)
                    .setParameter("kinds", kinds);
            window(query, from, to);
            List<Lacking> found = new ArrayList<>();
            try (Stream<Object[]> rows = query.setFetchSize(1_000).getResultStream()) {
                rows.takeWhile(row -> found.size() < limit).forEach(row -> {
                    String key = row[1] + Arrays.toString((Object[]) row[3]);
                    List<String> missing = lacking.computeIfAbsent(
                            key,
                            k -> ExpectedInputs.missing(
                                    LotKind.named((String) row[1]),
                                    Stream.of((Object[]) row[3])
                                            .map(kind -> LotKind.named((String) kind))
                                            .toList()));
                    boolean isBareReel = row[1].equals(LotKind.REEL.word()) && ((Object[]) row[3]).length == 0;
                    if (!missing.isEmpty() && !isBareReel) {
                        found.add(new Lacking(
                                new LotId((String) row[0]),
                                LotKind.named((String) row[1]),
                                UtcTimes.utc((Instant) row[2]),
                                missing));
                    }
                });
            }
            return found;
        });
    }
}
