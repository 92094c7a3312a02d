package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.admission.LotOutcome.Fate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Decides which of a plant's reports of lots are admitted, from what the plant knows already.
 *
 * <p>A lot never changes: the same report again is known, another one under its identifier is a conflict, and so is one that tells
 * its run otherwise than another lot did. A lot whose parents are not all known waits for them, or is refused, as the terms have it.
 * What {@link LotChecks} finds wrong is refused. Reports of one batch may stand in any order: what waits for a lot of the same batch
 * is admitted right after it. Of reports that wait for each other in a circle the one that closes it is refused.
 */
public final class LotAdmission {
    private final KnownLots known;
    private final AdmissionTerms terms;

    /** What is left of the lots, with those of this batch. */
    private final Map<LotId, Stock> stocks;

    private final Map<LotId, Admitted> admitted = new LinkedHashMap<>();
    private final Map<RunId, StepRun> newRuns = new LinkedHashMap<>();
    private final Map<LotId, Waiting> waiting = new LinkedHashMap<>();
    private final Map<LotId, List<LotId>> childrenOfMissing = new HashMap<>();
    private final Map<LotId, LotOutcome> settled = new HashMap<>();

    private LotAdmission(KnownLots known, AdmissionTerms terms) {
        this.known = known;
        this.terms = terms;
        this.stocks = new HashMap<>(known.stocks());
    }

    /**
     * A report that is admitted.
     *
     * @param implausible what can hardly be so in it
     */
    public record Admitted(LotReport report, List<Implausibility> implausible) {
        public Admitted {
            implausible = List.copyOf(implausible);
        }
    }

    /**
     * A report that begins to wait.
     *
     * @param missing its parents that are not registered; at least one
     */
    public record Waiting(LotReport report, Set<LotId> missing) {}

    /**
     * What is decided of a batch.
     *
     * @param outcomes what became of each report, in the order of the reports
     * @param admitted what is to be registered, each after its parents
     * @param newRuns the runs that are told for the first time
     * @param waiting what begins to wait
     */
    public record Decisions(
            List<LotOutcome> outcomes, List<Admitted> admitted, List<StepRun> newRuns, List<Waiting> waiting) {
        public Decisions {
            outcomes = List.copyOf(outcomes);
            admitted = List.copyOf(admitted);
            newRuns = List.copyOf(newRuns);
            waiting = List.copyOf(waiting);
        }

        /** The lots that are to be registered, each after its parents. */
        public List<Lot> lots() {
            return admitted.stream().map(one -> one.report().lot()).toList();
        }
    }

    /**
     * Decides on some reports of one plant.
     *
     * @param known what the plant knows of all that they name
     * @param waitingParents asked at most once, when any of the reports begins to wait
     */
    public static Decisions decide(
            List<LotReport> reports, KnownLots known, AdmissionTerms terms, WaitingParents waitingParents) {
        return new LotAdmission(known, terms).decide(reports, waitingParents);
    }

    private Decisions decide(List<LotReport> reports, WaitingParents waitingParents) {
        List<Optional<LotOutcome>> own = reports.stream().map(this::consider).toList();
        if (!waiting.isEmpty()) {
            refuseCircles(waitingParents);
        }
        waiting.keySet().forEach(id -> settled.put(id, LotOutcome.of(Fate.WAITING)));
        List<LotOutcome> outcomes = new ArrayList<>();
        for (int i = 0; i < reports.size(); i++) {
            LotId id = reports.get(i).lot().id();
            outcomes.add(own.get(i).orElseGet(() -> settled.get(id)));
        }
        return new Decisions(
                outcomes,
                List.copyOf(admitted.values()),
                List.copyOf(newRuns.values()),
                waiting.values().stream()
                        .map(one -> new Waiting(one.report(), Collections.unmodifiableSet(one.missing())))
                        .toList());
    }

    /** What becomes of a report; empty when it shares the fate of its identifier, which may not be settled yet. */
    private Optional<LotOutcome> consider(LotReport report) {
        Lot lot = report.lot();
        LotId id = lot.id();
        Optional<Lot> same = toldBefore(id);
        if (same.isPresent()) {
            List<String> differences = lot.differencesFrom(same.get());
            if (!differences.isEmpty()) {
                return Optional.of(LotOutcome.conflict("/id", otherContent(id, differences)));
            }
            if (known.registered().containsKey(id)) {
                return Optional.of(LotOutcome.of(Fate.KNOWN));
            }
            if (known.waiting().containsKey(id) && terms.mayWait()) {
                return Optional.of(LotOutcome.of(Fate.WAITING));
            }
            if (admitted.containsKey(id) || waiting.containsKey(id)) {
                return Optional.empty();
            }
        }
        if (lot.kind() != LotKind.REEL && known.reelNumbers().contains(id)) {
            return Optional.of(LotOutcome.refused(
                    "/id",
                    "'" + id + "' is the number of a registered reel; a lot of kind "
                            + lot.kind().word() + " needs an identifier of its own"));
        }
        List<LotFault> faults = LotChecks.faultsInItself(lot);
        if (!faults.isEmpty()) {
            return Optional.of(LotOutcome.refused(faults));
        }
        Set<LotId> missing = missingParents(lot);
        if (terms.mayWait() && !missing.isEmpty()) {
            letWait(report, missing);
            return Optional.empty();
        }
        LotOutcome outcome = admit(report);
        if (outcome.fate() == Fate.REGISTERED) {
            settled.put(id, outcome);
            admitThoseWaitingFor(id);
        }
        return Optional.of(outcome);
    }

    /** The lot that was told under an identifier before, in this batch or earlier. */
    private Optional<Lot> toldBefore(LotId id) {
        if (known.registered().containsKey(id)) {
            return Optional.of(known.registered().get(id));
        }
        if (admitted.containsKey(id)) {
            return Optional.of(admitted.get(id).report().lot());
        }
        if (waiting.containsKey(id)) {
            return Optional.of(waiting.get(id).report().lot());
        }
        return Optional.ofNullable(known.waiting().get(id));
    }

    private String otherContent(LotId id, List<String> differences) {
        boolean isRegistered = known.registered().containsKey(id) || admitted.containsKey(id);
        String told = isRegistered ? "registered" : "reported";
        return "lot " + id + " is " + told + " with other content (" + String.join(", ", differences) + "); a " + told
                + " lot does not change: send it as it was, or give this one its own identifier";
    }

    private Set<LotId> missingParents(Lot lot) {
        return lot.inputs().stream()
                .map(LotInput::lot)
                .filter(parent -> !stocks.containsKey(parent))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private void letWait(LotReport report, Set<LotId> missing) {
        LotId id = report.lot().id();
        waiting.put(id, new Waiting(report, missing));
        missing.forEach(parent -> childrenOfMissing
                .computeIfAbsent(parent, lot -> new ArrayList<>())
                .add(id));
    }

    /** Admits a report, unless its run was told otherwise, a parent is unknown, or it cannot be made from its parents. */
    private LotOutcome admit(LotReport report) {
        Lot lot = report.lot();
        StepRun run = lot.run();
        if (run != null) {
            List<String> differences = differencesFromOthers(run);
            if (!differences.isEmpty()) {
                return LotOutcome.conflict(
                        "/run",
                        "run " + run.id() + " was told otherwise by another lot (" + String.join(", ", differences)
                                + "); lots of one run tell the same of it: send it as it was, or name another run");
            }
        }
        List<LotFault> faults = LotChecks.faults(lot, stocks, terms.tolerance());
        if (!faults.isEmpty()) {
            return LotOutcome.refused(faults);
        }
        admitted.put(lot.id(), new Admitted(report, LotChecks.implausible(lot, stocks)));
        for (LotInput input : lot.inputs()) {
            stocks.computeIfPresent(input.lot(), (id, stock) -> stock.less(input.quantity()));
        }
        stocks.put(lot.id(), Stock.of(lot));
        if (run != null && !known.runs().containsKey(run.id())) {
            newRuns.put(run.id(), run);
        }
        return LotOutcome.of(Fate.REGISTERED);
    }

    private List<String> differencesFromOthers(StepRun run) {
        StepRun before = known.runs().getOrDefault(run.id(), newRuns.get(run.id()));
        return before == null ? List.of() : run.differencesFrom(before);
    }

    /** Admits the reports of this batch that waited for a lot, then those that waited for them, and so on. */
    private void admitThoseWaitingFor(LotId registered) {
        Queue<LotId> arrived = new ArrayDeque<>(List.of(registered));
        while (!arrived.isEmpty()) {
            LotId parent = arrived.remove();
            for (LotId child : childrenOfMissing.getOrDefault(parent, List.of())) {
                Waiting one = waiting.get(child);
                one.missing().remove(parent);
                if (one.missing().isEmpty()) {
                    waiting.remove(child);
                    LotOutcome outcome = admit(one.report());
                    settled.put(child, outcome);
                    if (outcome.fate() == Fate.REGISTERED) {
                        arrived.add(child);
                    }
                }
            }
        }
    }

    private void refuseCircles(WaitingParents waitingParents) {
        Map<LotId, Set<LotId>> parents = new HashMap<>(waitingParents.above(
                waiting.values().stream().flatMap(one -> one.missing().stream()).collect(Collectors.toSet())));
        for (LotId id : List.copyOf(waiting.keySet())) {
            parents.put(id, waiting.get(id).missing());
            if (PedigreeCycle.isThrough(id, parents)) {
                parents.remove(id);
                waiting.remove(id);
                settled.put(
                        id,
                        LotOutcome.refused(
                                "/inputs",
                                "lot " + id + " would descend from itself; what it is made from waits for lots that are"
                                        + " made from it"));
            }
        }
    }
}
