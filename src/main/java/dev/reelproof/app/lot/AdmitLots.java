package dev.reelproof.app.lot;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.AdmissionTerms;
import dev.reelproof.genealogy.admission.KnownLots;
import dev.reelproof.genealogy.admission.LotAdmission;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.genealogy.admission.LotReport;
import dev.reelproof.genealogy.balance.OverlappingCuts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.lot.ImplausibleLots;
import dev.reelproof.store.lot.ImplausibleLots.ClaimedTwice;
import dev.reelproof.store.lot.LotLocks;
import dev.reelproof.store.lot.admission.KnownLotsReading;
import dev.reelproof.store.lot.admission.LotInserts;
import dev.reelproof.store.lot.admission.OverlappingInputs;
import dev.reelproof.store.lot.admission.OverlappingInputs.PlacedInput;
import dev.reelproof.store.lot.admission.WaitingReports;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Admits reports of lots in one transaction: one, or many at once with a few statements for all of them.
 *
 * <p>Single reports that take from the same parents go one after the other; others go side by side. Reports in bulk have the plant's
 * lots to themselves for the transaction, also against other copies of the service: so may a report wait for its parents without
 * missing them.
 */
@ApplicationScoped
class AdmitLots {
    /** How many reports that waited join with one run of statements; all of them do in one transaction. */
    private static final int WAVE = 5_000;

    private final LotLocks locks;
    private final KnownLotsReading knownLots;
    private final LotInserts inserts;
    private final OverlappingInputs overlapping;
    private final ImplausibleLots implausible;
    private final WaitingReports waiting;
    private final AuditTrail audit;

    AdmitLots(
            LotLocks locks,
            KnownLotsReading knownLots,
            LotInserts inserts,
            OverlappingInputs overlapping,
            ImplausibleLots implausible,
            WaitingReports waiting,
            AuditTrail audit) {
        this.locks = locks;
        this.knownLots = knownLots;
        this.inserts = inserts;
        this.overlapping = overlapping;
        this.implausible = implausible;
        this.waiting = waiting;
        this.audit = audit;
    }

    /**
     * What became of some reports.
     *
     * @param outcomes in the order of the reports
     * @param joined lots whose reports had waited and are registered now
     * @param refusedLater lots whose reports had waited and turned out wrong now, with the reason
     */
    record Admission(List<LotOutcome> outcomes, Set<LotId> joined, Map<LotId, String> refusedLater) {}

    /**
     * Admits one report beside others, whose parents must be registered and for which no report waits.
     *
     * @param now the time of receipt
     * @throws OthersWaitException when reports wait for its lot; nothing is kept
     */
    @Transactional
    LotOutcome one(LotReport report, OffsetDateTime now) {
        Lot lot = report.lot();
        locks.takeOne(lot);
        // From here on nobody begins to wait.
        if (waiting.isWaitedFor(lot.plant(), lot.id())) {
            throw new OthersWaitException();
        }
        return admit(lot.plant(), List.of(report), AdmissionTerms.ALONE, now)
                .outcomes()
                .get(0);
    }

    /**
     * Admits reports with the plant's lots to itself, then those that waited for them, and so on.
     *
     * @param plant the plant of all of them
     * @param now the time of receipt
     */
    @Transactional
    Admission many(String plant, List<LotReport> reports, AdmissionTerms terms, OffsetDateTime now) {
        locks.takeAll(plant);
        LotAdmission.Decisions decided = admit(plant, reports, terms, now);
        Set<LotId> joined = new LinkedHashSet<>();
        Map<LotId, String> refusedLater = new LinkedHashMap<>();
        Collection<LotId> arrived = registered(decided);
        while (!arrived.isEmpty()) {
            List<LotId> next = new ArrayList<>();
            List<LotId> ready = waiting.endWaitFor(plant, arrived);
            for (int from = 0; from < ready.size(); from += WAVE) {
                List<LotId> wave = ready.subList(from, Math.min(ready.size(), from + WAVE));
                next.addAll(letJoin(plant, wave, now, refusedLater));
            }
            joined.addAll(next);
            arrived = next;
        }
        return new Admission(decided.outcomes(), joined, refusedLater);
    }

    /** Admits reports that waited and wait for nothing any more; gives the lots that are registered now. */
    private List<LotId> letJoin(String plant, List<LotId> ready, OffsetDateTime now, Map<LotId, String> refusedLater) {
        // Of two that take more than there is, the same one is refused whatever the order of the rows.
        List<WaitingReports.Waited> waited = waiting.takeOut(plant, ready).stream()
                .sorted(Comparator.comparing(one -> one.report().lot().id()))
                .toList();
        List<LotReport> reports =
                waited.stream().map(WaitingReports.Waited::report).toList();
        LotAdmission.Decisions decided = admit(plant, reports, AdmissionTerms.AFTER_WAITING, now);
        List<WaitingReports.RefusedReport> refused = new ArrayList<>();
        Map<String, Map<String, ?>> entries = new LinkedHashMap<>();
        for (int i = 0; i < reports.size(); i++) {
            LotReport report = reports.get(i);
            LotOutcome outcome = decided.outcomes().get(i);
            if (outcome.fate() != LotOutcome.Fate.REGISTERED) {
                LotId id = report.lot().id();
                refusedLater.put(id, outcome.reason());
                refused.add(new WaitingReports.RefusedReport(waited.get(i), outcome.reason()));
                entries.put("lot/" + id, Map.of("reason", outcome.reason(), "sha256", report.sha256()));
            }
        }
        waiting.keepRefused(plant, refused, now);
        audit(plant, "lot-refused-later", entries);
        return registered(decided);
    }

    private static List<LotId> registered(LotAdmission.Decisions decided) {
        return decided.lots().stream().map(Lot::id).toList();
    }

    /** Decides on some reports and keeps what is decided. */
    private LotAdmission.Decisions admit(
            String plant, List<LotReport> reports, AdmissionTerms terms, OffsetDateTime now) {
        KnownLots known =
                knownLots.of(plant, reports.stream().map(LotReport::lot).toList());
        LotAdmission.Decisions decided =
                LotAdmission.decide(reports, known, terms, lots -> waiting.parentsAbove(plant, lots));
        inserts.insert(plant, decided, now);
        implausible.insert(plant, decided.admitted(), now);
        flagOverlaps(plant, decided.lots(), now);
        waiting.add(plant, decided.waiting(), now);
        auditRegistered(plant, decided.admitted());
        auditWaiting(plant, decided.waiting());
        return decided;
    }

    /**
     * Flags the new lots that claim a stretch that another lot claims too, and these others. It is the last to arrive that finds them,
     * whatever the order; each link is flagged once.
     */
    private void flagOverlaps(String plant, List<Lot> lots, OffsetDateTime now) {
        List<LotId> placed = lots.stream()
                .filter(lot -> lot.inputs().stream().anyMatch(input -> input.placement() != null))
                .map(Lot::id)
                .toList();
        if (placed.isEmpty()) {
            return;
        }
        List<ClaimedTwice> claimed = overlapping.of(plant, placed).stream()
                .filter(pair -> OverlappingCuts.overlap(
                        pair.made().placement(), pair.other().placement()))
                .flatMap(pair -> Stream.of(flag(pair.parent(), pair.made()), flag(pair.parent(), pair.other())))
                .toList();
        implausible.insertByPosition(plant, claimed, now);
    }

    private static ClaimedTwice flag(LotId parent, PlacedInput input) {
        return new ClaimedTwice(
                input.lot(), input.ordinal(), OverlappingCuts.implausibility(parent, input.placement()));
    }

    private void auditRegistered(String plant, List<LotAdmission.Admitted> admitted) {
        Map<String, Map<String, ?>> entries = new LinkedHashMap<>();
        for (LotAdmission.Admitted one : admitted) {
            Lot lot = one.report().lot();
            entries.put(
                    "lot/" + lot.id(),
                    Map.of(
                            "kind", lot.kind().word(),
                            "inputs", lot.inputs().size(),
                            "sha256", one.report().sha256()));
        }
        audit(plant, "lot-registered", entries);
    }

    private void auditWaiting(String plant, List<LotAdmission.Waiting> begun) {
        Map<String, Map<String, ?>> entries = new LinkedHashMap<>();
        for (LotAdmission.Waiting one : begun) {
            entries.put(
                    "lot/" + one.report().lot().id(),
                    Map.of(
                            "waitsFor",
                            one.missing().size(),
                            "sha256",
                            one.report().sha256()));
        }
        audit(plant, "lot-waiting", entries);
    }

    private void audit(String plant, String action, Map<String, Map<String, ?>> entries) {
        if (!entries.isEmpty()) {
            audit.writeAll(plant, action, entries);
        }
    }
}
