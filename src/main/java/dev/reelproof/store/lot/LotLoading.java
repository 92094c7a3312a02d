package dev.reelproof.store.lot;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.genealogy.Descent;
import dev.reelproof.genealogy.Implausible;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotChecks;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.Stock;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.access.AuditTrail;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.Session;

/**
 * Takes reports of lots: one, or many at once with a few statements for all of them.
 *
 * <p>Among single reports, those that take from the same parents go one after the other. Reports in bulk have the plant's lots to
 * themselves for one transaction, also against other copies of the service: so may a report wait for parents without missing
 * them.
 */
@ApplicationScoped
public class LotLoading {
    /** How many reports that waited join at once; all of them do in one transaction. */
    private static final int WAVE = 5_000;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final Session session;
    private final LotReading reading;
    private final Overlaps overlaps;
    private final AuditTrail audit;

    LotLoading(Session session, LotReading reading, Overlaps overlaps, AuditTrail audit) {
        this.session = session;
        this.reading = reading;
        this.overlaps = overlaps;
        this.audit = audit;
    }

    /**
     * A report.
     *
     * @param lot what it tells of
     * @param sha256 the SHA-256 of the report as received
     */
    public record Report(Lot lot, String sha256) {}

    /** What became of a report. */
    public enum Fate {
        /** It is registered. */
        REGISTERED,
        /** The same was registered before. */
        KNOWN,
        /** It is kept until its parents come. */
        WAITING,
        /** It cannot be so, and is not kept. */
        REFUSED,
        /** Another lot has its identifier, or its run was told otherwise; it is not kept. */
        CONFLICT
    }

    /**
     * What became of a report.
     *
     * @param fate what became of it
     * @param faults why it is not kept; empty when it is
     */
    public record Outcome(Fate fate, List<LotFault> faults) {
        static Outcome of(Fate fate) {
            return new Outcome(fate, List.of());
        }

        static Outcome conflict(String where, String message) {
            return new Outcome(Fate.CONFLICT, List.of(new LotFault(where, message)));
        }

        /** Why it is not kept, in one sentence. */
        public String reason() {
            return faults.stream()
                    .map(fault -> fault.where() + ": " + fault.message())
                    .collect(Collectors.joining("; "));
        }
    }

    /**
     * What became of some reports.
     *
     * @param outcomes in the order of the reports
     * @param joined reports that had waited and are registered now
     * @param refusedLater reports that had waited and turned out wrong now, with the reason
     */
    public record Loaded(List<Outcome> outcomes, Set<LotId> joined, Map<LotId, String> refusedLater) {}

    /** A report that others wait for was about to be taken without the plant's lots to itself. */
    private static final class OthersWaitException extends RuntimeException {
        OthersWaitException() {
            super("reports wait for this lot", null, false, false);
        }
    }

    /** Takes one report, whose parents must be registered. */
    Outcome takeOne(String plant, Report report, OffsetDateTime now) {
        if (!isWaitedFor(plant, report.lot().id())) {
            try {
                return QuarkusTransaction.joiningExisting().call(() -> {
                    shareLots(plant, report.lot());
                    // Looked at again: from here on nobody begins to wait.
                    if (isWaitedFor(plant, report.lot().id())) {
                        throw new OthersWaitException();
                    }
                    return new Batch(plant, now, false, LotChecks.EXACT)
                            .take(List.of(report))
                            .get(0);
                });
            } catch (OthersWaitException e) {
                // Rolled back; once more, with the lots to itself.
            }
        }
        return take(plant, List.of(report), now, false, LotChecks.EXACT)
                .outcomes()
                .get(0);
    }

    /**
     * Takes reports in bulk, in one transaction: all that can be so are kept. Late and repeated ones are as good as others, and
     * so are those that come before their parents: they wait.
     *
     * @param plant the plant of all of them
     * @param now the time of receipt
     */
    public Loaded takeMany(String plant, List<Report> reports, OffsetDateTime now) {
        return take(plant, reports, now, true, LotChecks.OF_COUNTERS);
    }

    private Loaded take(String plant, List<Report> reports, OffsetDateTime now, boolean mayWait, double tolerance) {
        return QuarkusTransaction.joiningExisting().call(() -> {
            AdvisoryLocks.take(session, plant + "/lots");
            Batch batch = new Batch(plant, now, mayWait, tolerance);
            List<Outcome> outcomes = batch.take(reports);
            Set<LotId> joined = new LinkedHashSet<>();
            Map<LotId, String> refusedLater = new LinkedHashMap<>();
            letWaitersIn(plant, now, batch.registered(), joined, refusedLater);
            session.flush();
            session.clear();
            return new Loaded(outcomes, joined, refusedLater);
        });
    }

    /** Children of one parent register one after the other, so that what they take together is not more than there is. */
    private void shareLots(String plant, Lot lot) {
        AdvisoryLocks.share(session, plant + "/lots");
        Stream<String> names = Stream.concat(
                        Stream.of(lot.id()), lot.inputs().stream().map(LotInput::lot))
                .map(id -> plant + "/lot/" + id);
        Stream<String> runs = lot.run() == null
                ? Stream.of()
                : Stream.of(plant + "/run/" + lot.run().id());
        AdvisoryLocks.take(session, Stream.concat(names, runs).toArray(String[]::new));
    }

    private boolean isWaitedFor(String plant, LotId lot) {
        return QuarkusTransaction.joiningExisting().call(() -> session.createNativeQuery(
                        "select exists (select from waiting_parent where plant = :plant and parent = :lot)",
                        Boolean.class)
                .setParameter("plant", plant)
                .setParameter("lot", lot.value())
                .getSingleResult());
    }

    /**
     * Takes back a report that waits, as the current caller: it waits no more, and the audit trail keeps all of it. What waits for
     * its lot goes on waiting.
     *
     * @return whether there was one
     */
    @Transactional
    public boolean withdraw(String plant, LotId lot, String reason) {
        AdvisoryLocks.take(session, plant + "/lots");
        List<?> missing = session.createNativeQuery(
                        "select parent from waiting_parent where plant = :plant and lot = :lot order by parent",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("lot", lot.value())
                .getResultList();
        List<Object[]> withdrawn = session.createNativeQuery(
                        """
                        delete from waiting_report where plant = :plant and lot = :lot
                        returning cast(report as text), source_sha256, received""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("lot", lot.value())
                .getResultList();
        for (Object[] row : withdrawn) {
            audit.write(
                    plant,
                    "lot-withdrawn",
                    "lot/" + lot,
                    reason,
                    Map.of(
                            "report",
                            RowJson.read((String) row[0]),
                            "sha256",
                            row[1],
                            "received",
                            row[2].toString(),
                            "waitedFor",
                            missing));
        }
        return !withdrawn.isEmpty();
    }

    private static String[] values(Collection<LotId> ids) {
        return ids.stream().map(LotId::value).toArray(String[]::new);
    }

    /** Registers what waited for these lots, then what waited for that, and so on. */
    private void letWaitersIn(
            String plant,
            OffsetDateTime now,
            Collection<LotId> registered,
            Set<LotId> joined,
            Map<LotId, String> refusedLater) {
        Collection<LotId> arrived = registered;
        while (!arrived.isEmpty()) {
            List<LotId> next = new ArrayList<>();
            List<String> ready = session.createNativeQuery(
                            """
                            with come as (
                                delete from waiting_parent where plant = :plant and parent = any(:ids) returning lot, parent)
                            select distinct c.lot from come c
                            where not exists (select from waiting_parent w
                                              where w.plant = :plant and w.lot = c.lot and w.parent <> all(:ids))
                            order by c.lot""",
                            String.class)
                    .setParameter("plant", plant)
                    .setParameter("ids", values(arrived))
                    .getResultList();
            for (int from = 0; from < ready.size(); from += WAVE) {
                List<String> wave = ready.subList(from, Math.min(ready.size(), from + WAVE));
                next.addAll(letIn(plant, now, wave, joined, refusedLater));
                session.flush();
                session.clear();
            }
            arrived = next;
        }
    }

    private Collection<LotId> letIn(
            String plant, OffsetDateTime now, List<String> ready, Set<LotId> joined, Map<LotId, String> refusedLater) {
        List<Object[]> rows = session.createNativeQuery(
                        """
                        delete from waiting_report where plant = :plant and lot = any(:lots)
                        returning cast(report as text), source_sha256, received""",
                        Object[].class)
                .setParameter("plant", plant)
                .setParameter("lots", ready.toArray(String[]::new))
                .getResultList();
        List<Report> reports = new ArrayList<>();
        Map<LotId, String> received = new HashMap<>();
        for (Object[] row : rows) {
            Lot lot = LotJson.lot((String) row[0]);
            reports.add(new Report(lot, (String) row[1]));
            received.put(lot.id(), row[2].toString());
        }
        // Of two that take more than there is, the same one is refused whatever the order of the rows.
        reports.sort((one, other) -> one.lot().id().compareTo(other.lot().id()));
        Batch batch = new Batch(plant, now, false, LotChecks.OF_COUNTERS);
        List<Outcome> outcomes = batch.take(reports);
        ArrayNode refused = NODES.arrayNode();
        Map<String, Map<String, ?>> entries = new LinkedHashMap<>();
        for (int i = 0; i < reports.size(); i++) {
            Report report = reports.get(i);
            LotId id = report.lot().id();
            Outcome outcome = outcomes.get(i);
            if (outcome.fate() == Fate.REGISTERED) {
                joined.add(id);
            } else {
                refusedLater.put(id, outcome.reason());
                refused.addObject()
                        .put("lot", id.value())
                        .put("report", LotJson.lot(report.lot()))
                        .put("sha256", report.sha256())
                        .put("received", received.get(id))
                        .put("reason", outcome.reason());
                entries.put("lot/" + id, Map.of("reason", outcome.reason(), "sha256", report.sha256()));
            }
        }
        if (!entries.isEmpty()) {
            insert(
                    """
                    insert into refused_report (plant, lot, report, source_sha256, received, refused, reason)
                    select :plant, lot, cast(report as jsonb), sha256, received, cast(:now as timestamptz), reason
                    from json_to_recordset(cast(:rows as json))
                        as r(lot text, report text, sha256 text, received timestamptz, reason text)""",
                    plant,
                    now,
                    refused);
            audit.writeAll(plant, "lot-refused-later", entries);
        }
        return batch.registered();
    }

    private void insert(String statement, String plant, OffsetDateTime now, ArrayNode rows) {
        if (!rows.isEmpty()) {
            var query = session.createNativeMutationQuery(statement)
                    .setParameter("plant", plant)
                    .setParameter("rows", RowJson.write(rows));
            if (now != null) {
                query.setParameter("now", now.toString());
            }
            query.executeUpdate();
        }
    }

    /** The reports of one transaction, or of one wave of it, with what is known of everything that they name. */
    private final class Batch {
        private final String plant;
        private final OffsetDateTime now;
        private final boolean mayWait;
        private final double tolerance;

        private Map<LotId, RegisteredLot> registeredBefore;
        private Map<LotId, Report> waitingBefore;
        private Set<LotId> reelNumbers;
        private Map<RunId, StepRun> runs;
        private Map<LotId, Stock> stocks;

        private final Map<LotId, Report> accepted = new LinkedHashMap<>();
        private final Map<LotId, List<Implausible>> implausible = new LinkedHashMap<>();
        private final Map<RunId, StepRun> newRuns = new LinkedHashMap<>();
        private final Map<LotId, Pending> pending = new LinkedHashMap<>();
        private final Map<LotId, List<LotId>> childrenOfMissing = new HashMap<>();
        private final Map<LotId, Outcome> settled = new HashMap<>();

        /** A report whose parents are not all there, with those that are not. */
        private record Pending(Report report, Set<LotId> missing) {}

        Batch(String plant, OffsetDateTime now, boolean mayWait, double tolerance) {
            this.plant = plant;
            this.now = now;
            this.mayWait = mayWait;
            this.tolerance = tolerance;
        }

        Collection<LotId> registered() {
            return accepted.keySet();
        }

        List<Outcome> take(List<Report> reports) {
            load(reports);
            List<Outcome> firsts = new ArrayList<>();
            for (Report report : reports) {
                firsts.add(look(report));
            }
            refuseCircles();
            pending.keySet().forEach(id -> settled.put(id, Outcome.of(Fate.WAITING)));
            write();
            List<Outcome> outcomes = new ArrayList<>();
            for (int i = 0; i < reports.size(); i++) {
                outcomes.add(
                        firsts.get(i) != null
                                ? firsts.get(i)
                                : settled.get(reports.get(i).lot().id()));
            }
            return outcomes;
        }

        private void load(List<Report> reports) {
            Set<LotId> ids = new TreeSet<>();
            Set<LotId> parents = new TreeSet<>();
            Set<RunId> runIds = new TreeSet<>();
            for (Report report : reports) {
                Lot lot = report.lot();
                ids.add(lot.id());
                lot.inputs().forEach(input -> parents.add(input.lot()));
                if (lot.run() != null) {
                    runIds.add(lot.run().id());
                }
            }
            registeredBefore = reading.lots(plant, ids);
            stocks = reading.stocks(plant, parents);
            runs = reading.runs(plant, runIds);
            reelNumbers = new TreeSet<>();
            session.createNativeQuery("select id from reel where plant = :plant and id = any(:ids)", String.class)
                    .setParameter("plant", plant)
                    .setParameter("ids", values(ids))
                    .getResultList()
                    .forEach(id -> reelNumbers.add(new LotId(id)));
            waitingBefore = new TreeMap<>();
            session.createNativeQuery(
                            """
                            select cast(report as text), source_sha256 from waiting_report
                            where plant = :plant and lot = any(:ids)""",
                            Object[].class)
                    .setParameter("plant", plant)
                    .setParameter("ids", values(ids))
                    .getResultList()
                    .forEach(row -> {
                        Lot lot = LotJson.lot((String) row[0]);
                        waitingBefore.put(lot.id(), new Report(lot, (String) row[1]));
                    });
        }

        /** What becomes of a report; null when that of its identifier decides, which may not be settled yet. */
        private Outcome look(Report report) {
            Lot lot = report.lot();
            LotId id = lot.id();
            Optional<Lot> same = sameIdentifier(id);
            if (same.isPresent()) {
                List<String> differences = lot.differencesFrom(same.get());
                if (!differences.isEmpty()) {
                    return Outcome.conflict("/id", otherContent(id, differences));
                }
                if (registeredBefore.containsKey(id)) {
                    return Outcome.of(Fate.KNOWN);
                }
                if (waitingBefore.containsKey(id) && mayWait) {
                    return Outcome.of(Fate.WAITING);
                }
                if (accepted.containsKey(id) || pending.containsKey(id)) {
                    return null;
                }
            }
            if (lot.kind() != LotKind.REEL && reelNumbers.contains(id)) {
                return refused(new LotFault(
                        "/id",
                        "'" + id + "' is the number of a registered reel; a lot of kind "
                                + lot.kind().word() + " needs an identifier of its own"));
            }
            List<LotFault> faults = LotChecks.faultsInItself(lot);
            if (!faults.isEmpty()) {
                return new Outcome(Fate.REFUSED, faults);
            }
            Set<LotId> missing = new LinkedHashSet<>();
            lot.inputs().stream()
                    .map(LotInput::lot)
                    .filter(parent -> !stocks.containsKey(parent))
                    .forEach(missing::add);
            if (mayWait && !missing.isEmpty()) {
                pending.put(id, new Pending(report, missing));
                missing.forEach(parent -> childrenOfMissing
                        .computeIfAbsent(parent, lotId -> new ArrayList<>())
                        .add(id));
                return null;
            }
            Outcome outcome = admit(report);
            if (outcome.fate() == Fate.REGISTERED) {
                settled.put(id, outcome);
                releaseThoseWaitingFor(id);
            }
            return outcome;
        }

        private Outcome refused(LotFault fault) {
            return new Outcome(Fate.REFUSED, List.of(fault));
        }

        private Optional<Lot> sameIdentifier(LotId id) {
            if (registeredBefore.containsKey(id)) {
                return Optional.of(registeredBefore.get(id).lot());
            }
            return Stream.of(
                            accepted.get(id),
                            pending.containsKey(id) ? pending.get(id).report() : null,
                            waitingBefore.get(id))
                    .filter(report -> report != null)
                    .map(Report::lot)
                    .findFirst();
        }

        private String otherContent(LotId id, List<String> differences) {
            boolean waits = !registeredBefore.containsKey(id) && !accepted.containsKey(id);
            return "lot " + id + " is " + (waits ? "reported" : "registered") + " with other content ("
                    + String.join(", ", differences) + "); a " + (waits ? "reported" : "registered")
                    + " lot does not change: send it as it was, or give this one its own identifier";
        }

        /** Registers a report whose parents are all there, unless something is wrong. */
        private Outcome admit(Report report) {
            Lot lot = report.lot();
            StepRun run = lot.run();
            if (run != null) {
                StepRun before = runs.getOrDefault(run.id(), newRuns.get(run.id()));
                List<String> differences = before == null ? List.of() : run.differencesFrom(before);
                if (!differences.isEmpty()) {
                    return Outcome.conflict(
                            "/run",
                            "run " + run.id() + " was told otherwise by another lot (" + String.join(", ", differences)
                                    + "); lots of one run tell the same of it: send it as it was, or name another run");
                }
            }
            List<LotFault> faults = LotChecks.faults(lot, stocks, tolerance);
            if (!faults.isEmpty()) {
                return new Outcome(Fate.REFUSED, faults);
            }
            implausible.put(lot.id(), LotChecks.implausible(lot, stocks));
            for (LotInput input : lot.inputs()) {
                stocks.computeIfPresent(input.lot(), (id, stock) -> stock.less(input.quantity()));
            }
            stocks.put(lot.id(), Stock.of(lot));
            if (run != null && !runs.containsKey(run.id())) {
                newRuns.put(run.id(), run);
            }
            accepted.put(lot.id(), report);
            return Outcome.of(Fate.REGISTERED);
        }

        private void releaseThoseWaitingFor(LotId registered) {
            Queue<LotId> arrived = new ArrayDeque<>(List.of(registered));
            while (!arrived.isEmpty()) {
                LotId parent = arrived.remove();
                for (LotId child : childrenOfMissing.getOrDefault(parent, List.of())) {
                    Pending waiting = pending.get(child);
                    waiting.missing().remove(parent);
                    if (waiting.missing().isEmpty()) {
                        pending.remove(child);
                        Outcome outcome = admit(waiting.report());
                        settled.put(child, outcome);
                        if (outcome.fate() == Fate.REGISTERED) {
                            arrived.add(child);
                        }
                    }
                }
            }
        }

        /** Of reports that wait for each other in a circle, the one that closes it is refused. */
        private void refuseCircles() {
            if (pending.isEmpty()) {
                return;
            }
            Map<LotId, Set<LotId>> parents = waitingAbove(pending.values().stream()
                    .flatMap(waiting -> waiting.missing().stream())
                    .collect(Collectors.toSet()));
            for (LotId id : List.copyOf(pending.keySet())) {
                parents.put(id, pending.get(id).missing());
                if (Descent.isCircular(id, parents)) {
                    parents.remove(id);
                    pending.remove(id);
                    settled.put(
                            id,
                            refused(new LotFault(
                                    "/inputs",
                                    "lot " + id + " would descend from itself; what it is made from waits for lots that"
                                            + " are made from it")));
                }
            }
        }

        /** What reports that wait are made from, of these lots and all above them that wait too. */
        private Map<LotId, Set<LotId>> waitingAbove(Set<LotId> lots) {
            Map<LotId, Set<LotId>> parents = new HashMap<>();
            session.createNativeQuery(
                            """
                            with recursive above(id) as (
                                select unnest(cast(:starts as text[]))
                                union
                                select w.parent from above a join waiting_parent w on w.plant = :plant and w.lot = a.id)
                            select w.lot, w.parent from above a join waiting_parent w on w.plant = :plant and w.lot = a.id""",
                            Object[].class)
                    .setParameter("starts", values(lots))
                    .setParameter("plant", plant)
                    .getResultList()
                    .forEach(row -> parents.computeIfAbsent(new LotId((String) row[0]), id -> new TreeSet<>())
                            .add(new LotId((String) row[1])));
            return parents;
        }

        private void write() {
            writeRuns();
            writeLots();
            writeInputs();
            writeSamples();
            writeImplausible();
            writeOverlaps();
            writeWaiting();
        }

        private void writeRuns() {
            ArrayNode rows = NODES.arrayNode();
            for (StepRun run : newRuns.values()) {
                ObjectNode row = rows.addObject();
                row.put("id", run.id().value());
                row.put("step", run.step());
                row.put("machine", run.machine());
                row.put("line", run.line());
                row.put("operator", run.operator());
                row.put("shift", run.shift());
                row.put("started", text(run.started()));
                row.put("finished", text(run.finished()));
                row.put("settings", LotJson.settings(run.settings()));
            }
            insert(
                    """
                    insert into step_run (plant, id, step, machine, line, operator, shift, started, finished, settings, registered)
                    select :plant, id, step, machine, line, operator, shift, started, finished, cast(settings as jsonb),
                           cast(:now as timestamptz)
                    from json_to_recordset(cast(:rows as json))
                        as r(id text, step text, machine text, line text, operator text, shift text,
                             started timestamptz, finished timestamptz, settings text)""",
                    plant,
                    now,
                    rows);
        }

        private void writeLots() {
            ArrayNode rows = NODES.arrayNode();
            Map<String, Map<String, ?>> entries = new LinkedHashMap<>();
            for (Report report : accepted.values()) {
                Lot lot = report.lot();
                ObjectNode row = rows.addObject();
                row.put("id", lot.id().value());
                row.put("kind", lot.kind().word());
                row.put("value", lot.quantity().value());
                row.put("unit", lot.quantity().unit());
                row.put("made", text(lot.made()));
                row.put("step", lot.step());
                row.put("machine", lot.machine());
                row.put("run", lot.run() == null ? null : lot.run().id().value());
                row.put("sha256", report.sha256());
                entries.put(
                        "lot/" + lot.id(),
                        Map.of("kind", lot.kind().word(), "inputs", lot.inputs().size(), "sha256", report.sha256()));
            }
            insert(
                    """
                    insert into lot (plant, id, kind, quantity_value, quantity_unit, made, step, machine, run, source_sha256,
                                     registered)
                    select :plant, id, kind, value, unit, made, step, machine, run, sha256, cast(:now as timestamptz)
                    from json_to_recordset(cast(:rows as json))
                        as r(id text, kind text, value double precision, unit text, made timestamptz, step text,
                             machine text, run text, sha256 text)""",
                    plant,
                    now,
                    rows);
            if (!entries.isEmpty()) {
                audit.writeAll(plant, "lot-registered", entries);
            }
        }

        private void writeInputs() {
            ArrayNode rows = NODES.arrayNode();
            for (Report report : accepted.values()) {
                Lot lot = report.lot();
                for (int i = 0; i < lot.inputs().size(); i++) {
                    LotInput input = lot.inputs().get(i);
                    ObjectNode row = rows.addObject();
                    row.put("child", lot.id().value());
                    row.put("parent", input.lot().value());
                    row.put("ordinal", i);
                    row.put("value", input.quantity().value());
                    row.put("unit", input.quantity().unit());
                    row.put("base", input.quantity().base());
                    Placement placement = input.placement();
                    if (placement != null) {
                        row.put("position_from", placement.from());
                        row.put("position_to", placement.to());
                        row.put("position_unit", placement.unit());
                        row.put("onto_from", placement.onParentFrom());
                        row.put("onto_to", placement.onParentTo());
                        row.put("onto_unit", placement.onParentUnit());
                    }
                }
            }
            insert(
                    """
                    insert into lot_input (plant, child, parent, ordinal, quantity_value, quantity_unit, amount_base,
                                           position_from, position_to, position_unit, onto_from, onto_to, onto_unit)
                    select :plant, child, parent, ordinal, value, unit, base,
                           position_from, position_to, position_unit, onto_from, onto_to, onto_unit
                    from json_to_recordset(cast(:rows as json))
                        as r(child text, parent text, ordinal int, value double precision, unit text,
                             base double precision, position_from double precision, position_to double precision,
                             position_unit text, onto_from double precision, onto_to double precision, onto_unit text)""",
                    plant,
                    null,
                    rows);
        }

        private void writeSamples() {
            ArrayNode rows = NODES.arrayNode();
            for (Report report : accepted.values()) {
                List<Sample> samples = report.lot().samples();
                for (int i = 0; i < samples.size(); i++) {
                    Sample sample = samples.get(i);
                    ObjectNode row = rows.addObject();
                    row.put("lot", report.lot().id().value());
                    row.put("ordinal", i);
                    row.put("property", sample.property());
                    row.put("value", sample.value());
                    row.put("unit", sample.unit());
                    row.put("taken", text(sample.taken()));
                    row.put("at_value", sample.at());
                    row.put("at_unit", sample.atUnit());
                }
            }
            insert(
                    """
                    insert into lot_sample (plant, lot, ordinal, property, value, unit, taken, at_value, at_unit)
                    select :plant, lot, ordinal, property, value, unit, taken, at_value, at_unit
                    from json_to_recordset(cast(:rows as json))
                        as r(lot text, ordinal int, property text, value double precision, unit text, taken timestamptz,
                             at_value double precision, at_unit text)""",
                    plant,
                    null,
                    rows);
        }

        private void writeImplausible() {
            ArrayNode rows = NODES.arrayNode();
            implausible.forEach((lot, found) -> {
                for (int i = 0; i < found.size(); i++) {
                    add(rows, lot, i, found.get(i));
                }
            });
            writeImplausible(rows);
        }

        private static void add(ArrayNode rows, LotId lot, int ordinal, Implausible found) {
            LotId parent = found.parent();
            rows.addObject()
                    .put("lot", lot.value())
                    .put("ordinal", ordinal)
                    .put("parent", parent == null ? null : parent.value())
                    .put("message", found.message());
        }

        /** What was found of a link before is not written again. */
        private void writeImplausible(ArrayNode rows) {
            insert(
                    """
                    insert into implausible_link (plant, lot, ordinal, parent, message, registered)
                    select :plant, lot, ordinal, parent, message, cast(:now as timestamptz)
                    from json_to_recordset(cast(:rows as json)) as r(lot text, ordinal int, parent text, message text)
                    on conflict do nothing""",
                    plant,
                    now,
                    rows);
        }

        /**
         * Flags the new lots that took what others took too, and these others. It is the last to arrive that finds them, whatever the
         * order; each link is flagged once.
         */
        private void writeOverlaps() {
            String[] placed = accepted.values().stream()
                    .map(Report::lot)
                    .filter(lot -> lot.inputs().stream().anyMatch(input -> input.placement() != null))
                    .map(lot -> lot.id().value())
                    .toArray(String[]::new);
            if (placed.length == 0) {
                return;
            }
            ArrayNode rows = NODES.arrayNode();
            overlaps.find(plant, placed).forEach(link -> add(rows, link.lot(), link.ordinal(), link.doubt()));
            writeImplausible(rows);
        }

        private void writeWaiting() {
            ArrayNode reports = NODES.arrayNode();
            ArrayNode parents = NODES.arrayNode();
            Map<String, Map<String, ?>> entries = new LinkedHashMap<>();
            pending.forEach((id, waiting) -> {
                reports.addObject()
                        .put("lot", id.value())
                        .put("report", LotJson.lot(waiting.report().lot()))
                        .put("sha256", waiting.report().sha256());
                waiting.missing()
                        .forEach(parent ->
                                parents.addObject().put("lot", id.value()).put("parent", parent.value()));
                entries.put(
                        "lot/" + id,
                        Map.of(
                                "waitsFor",
                                waiting.missing().size(),
                                "sha256",
                                waiting.report().sha256()));
            });
            insert(
                    """
                    insert into waiting_report (plant, lot, report, source_sha256, received)
                    select :plant, lot, cast(report as jsonb), sha256, cast(:now as timestamptz)
                    from json_to_recordset(cast(:rows as json)) as r(lot text, report text, sha256 text)""",
                    plant,
                    now,
                    reports);
            insert(
                    """
                    insert into waiting_parent (plant, parent, lot)
                    select :plant, parent, lot from json_to_recordset(cast(:rows as json)) as r(lot text, parent text)""",
                    plant,
                    null,
                    parents);
            if (!entries.isEmpty()) {
                audit.writeAll(plant, "lot-waiting", entries);
            }
        }

        private static String text(OffsetDateTime time) {
            return time == null ? null : time.toString();
        }
    }
}
