package dev.reelproof.genealogy.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.admission.LotAdmission.Decisions;
import dev.reelproof.genealogy.admission.LotOutcome.Fate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What is admitted: late, repeated, before its parents, more taken than there is, and told otherwise. */
class LotAdmissionTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final KnownLots NOTHING = new KnownLots(Map.of(), Map.of(), Set.of(), Map.of(), Map.of());

    private static Lot lot(String id, StepRun run, LotInput... inputs) {
        return new Lot(
                new LotId(id),
                "north",
                LotKind.UNIT,
                new Amount(100, "m"),
                MORNING,
                run == null ? null : run.step(),
                run == null ? null : run.machine(),
                List.of(inputs),
                run,
                List.of());
    }

    private static Lot lot(String id, LotInput... inputs) {
        return lot(id, null, inputs);
    }

    private static LotInput of(String parent, double metres) {
        return new LotInput(new LotId(parent), new Amount(metres, "m"));
    }

    private static StepRun run(String operator) {
        return new StepRun(new RunId("RUN"), "stranding", "STR-1", null, operator, null, null, null, Map.of());
    }

    private static List<LotReport> reports(Lot... lots) {
        return Arrays.stream(lots).map(lot -> new LotReport(lot, "")).toList();
    }

    private static <T> Map<LotId, T> byId(Function<Lot, T> value, Lot... lots) {
        return Arrays.stream(lots).collect(Collectors.toMap(Lot::id, value));
    }

    private static KnownLots registered(Lot... lots) {
        return new KnownLots(byId(lot -> lot, lots), Map.of(), Set.of(), Map.of(), byId(Stock::of, lots));
    }

    private static KnownLots waiting(Lot... lots) {
        return new KnownLots(Map.of(), byId(lot -> lot, lots), Set.of(), Map.of(), Map.of());
    }

    private static Decisions decide(KnownLots known, AdmissionTerms terms, Lot... lots) {
        return LotAdmission.decide(reports(lots), known, terms, missing -> Map.of());
    }

    private static List<Fate> fates(Decisions decided) {
        return decided.outcomes().stream().map(LotOutcome::fate).toList();
    }

    private static List<String> ids(List<Lot> lots) {
        return lots.stream().map(lot -> lot.id().value()).toList();
    }

    @Test
    void admitsABatchInAnyOrderParentsFirst() {
        Decisions decided =
                decide(NOTHING, AdmissionTerms.IN_BULK, lot("C", of("B", 1)), lot("B", of("A", 1)), lot("A"));
        assertEquals(List.of(Fate.REGISTERED, Fate.REGISTERED, Fate.REGISTERED), fates(decided));
        assertEquals(List.of("A", "B", "C"), ids(decided.lots()));
        assertEquals(List.of(), decided.waiting());
    }

    @Test
    void letsWaitInBulkWhatComesBeforeItsParentsAndRefusesItAlone() {
        Lot late = lot("B", of("A", 1), of("X", 1));
        Decisions inBulk = decide(registered(lot("X")), AdmissionTerms.IN_BULK, late);
        assertEquals(List.of(Fate.WAITING), fates(inBulk));
        assertEquals(Set.of(new LotId("A")), inBulk.waiting().get(0).missing());
        assertEquals(List.of(), inBulk.admitted());
        LotOutcome alone = decide(registered(lot("X")), AdmissionTerms.ALONE, late)
                .outcomes()
                .get(0);
        assertEquals(Fate.REFUSED, alone.fate());
        assertEquals("/inputs/0/lot: unknown lot A; register it before what is made from it", alone.reason());
    }

    @Test
    void knowsTheSameReportAgainAndTellsInWhatAnotherDiffers() {
        Lot before = lot("A");
        Lot other = lot("A", of("B", 1));
        assertEquals(List.of(Fate.KNOWN), fates(decide(registered(before), AdmissionTerms.ALONE, before)));
        assertEquals(List.of(Fate.WAITING), fates(decide(waiting(other), AdmissionTerms.IN_BULK, other)));
        assertEquals(
                "/id: lot A is registered with other content (inputs); a registered lot does not change: send it as it"
                        + " was, or give this one its own identifier",
                decide(registered(before), AdmissionTerms.ALONE, other)
                        .outcomes()
                        .get(0)
                        .reason());
        assertEquals(
                "/id: lot A is reported with other content (inputs); a reported lot does not change: send it as it"
                        + " was, or give this one its own identifier",
                decide(waiting(other), AdmissionTerms.ALONE, before)
                        .outcomes()
                        .get(0)
                        .reason());
    }

    @Test
    void countsAReportThatIsThereTwiceInOneBatchOnce() {
        Decisions decided = decide(
                NOTHING,
                AdmissionTerms.IN_BULK,
                lot("A"),
                lot("A"),
                lot("B", of("X", 1)),
                lot("B", of("X", 1)),
                lot("A", of("X", 1)),
                lot("B"));
        assertEquals(
                List.of(Fate.REGISTERED, Fate.REGISTERED, Fate.WAITING, Fate.WAITING, Fate.CONFLICT, Fate.CONFLICT),
                fates(decided));
        assertEquals(List.of("A"), ids(decided.lots()));
        assertEquals(1, decided.waiting().size());
        assertTrue(decided.outcomes().get(4).reason().contains("is registered with other content"));
        assertTrue(decided.outcomes().get(5).reason().contains("is reported with other content"));
    }

    @Test
    void refusesWhatSeveralTakeTogetherBeyondWhatThereIs() {
        // 100 m: alone no more than that, in bulk the counters' 2 % beyond it
        Lot parent = lot("A");
        assertEquals(
                List.of(Fate.REGISTERED, Fate.REFUSED),
                fates(decide(registered(parent), AdmissionTerms.ALONE, lot("B", of("A", 60)), lot("C", of("A", 41)))));
        Decisions inBulk = decide(
                registered(parent),
                AdmissionTerms.IN_BULK,
                lot("B", of("A", 60)),
                lot("C", of("A", 41)),
                lot("D", of("A", 2)));
        assertEquals(List.of(Fate.REGISTERED, Fate.REGISTERED, Fate.REFUSED), fates(inBulk));
        assertTrue(inBulk.admitted().get(1).implausible().stream()
                .anyMatch(found -> found.message().contains("by less than the counters' 2 %")));
        assertTrue(inBulk.outcomes().get(2).reason().contains("lot A had 100 m, of which 0 m are left"));
    }

    @Test
    void refusesWithItsReasonWhatWaitedForALotOfTheSameBatch() {
        Decisions decided =
                decide(NOTHING, AdmissionTerms.IN_BULK, lot("B", of("A", 5_000)), lot("C", of("B", 1)), lot("A"));
        assertEquals(List.of(Fate.REFUSED, Fate.WAITING, Fate.REGISTERED), fates(decided));
        assertTrue(decided.outcomes().get(0).reason().contains("5000 m is too much"));
    }

    @Test
    void lotsOfOneRunTellTheSameOfIt() {
        Decisions decided = decide(
                NOTHING, AdmissionTerms.IN_BULK, lot("A", run("op-7")), lot("B", run("op-7")), lot("C", run("op-8")));
        assertEquals(List.of(Fate.REGISTERED, Fate.REGISTERED, Fate.CONFLICT), fates(decided));
        assertEquals(List.of(run("op-7")), decided.newRuns());
        assertEquals(
                "/run: run RUN was told otherwise by another lot (operator); lots of one run tell the same of it:"
                        + " send it as it was, or name another run",
                decided.outcomes().get(2).reason());
        KnownLots known = new KnownLots(Map.of(), Map.of(), Set.of(), Map.of(new RunId("RUN"), run("op-7")), Map.of());
        Decisions later = decide(known, AdmissionTerms.ALONE, lot("D", run("op-7")), lot("E", run("op-8")));
        assertEquals(List.of(Fate.REGISTERED, Fate.CONFLICT), fates(later));
        assertEquals(List.of(), later.newRuns());
    }

    @Test
    void givesTheNumberOfAReelToAReelAlone() {
        KnownLots known = new KnownLots(Map.of(), Map.of(), Set.of(new LotId("R-1")), Map.of(), Map.of());
        assertEquals(
                "/id: 'R-1' is the number of a registered reel; a lot of kind unit needs an identifier of its own",
                decide(known, AdmissionTerms.ALONE, lot("R-1"))
                        .outcomes()
                        .get(0)
                        .reason());
        Lot reel = new Lot(new LotId("R-1"), "north", LotKind.REEL, new Amount(1, "m"), MORNING, null, null, List.of());
        assertEquals(List.of(Fate.REGISTERED), fates(decide(known, AdmissionTerms.ALONE, reel)));
    }

    @Test
    void refusesTheReportThatClosesACircle() {
        Decisions decided = decide(
                NOTHING, AdmissionTerms.IN_BULK, lot("A", of("C", 1)), lot("B", of("A", 1)), lot("C", of("B", 1)));
        assertEquals(List.of(Fate.WAITING, Fate.WAITING, Fate.REFUSED), fates(decided));
        assertEquals(
                "/inputs: lot C would descend from itself; what it is made from waits for lots that are made from it",
                decided.outcomes().get(2).reason());
        assertEquals(2, decided.waiting().size());
    }

    @Test
    void looksForCirclesAmongThoseThatWaitedBefore() {
        List<Set<LotId>> asked = new ArrayList<>();
        Decisions decided = LotAdmission.decide(
                reports(lot("Q", of("P", 1)), lot("S", of("T", 1))), NOTHING, AdmissionTerms.IN_BULK, missing -> {
                    asked.add(missing);
                    return Map.of(new LotId("P"), Set.of(new LotId("Q")));
                });
        assertEquals(List.of(Set.of(new LotId("P"), new LotId("T"))), asked);
        assertEquals(List.of(Fate.REFUSED, Fate.WAITING), fates(decided));
    }

    @Test
    void asksForNoOneThatWaitsWhenNoneBeginsTo() {
        LotAdmission.decide(reports(lot("A")), NOTHING, AdmissionTerms.IN_BULK, missing -> {
            throw new AssertionError("a statement too many");
        });
    }

    @Test
    void refusesAnOutcomeThatContradictsItself() {
        LotFault fault = new LotFault("/id", "wrong");
        assertThrows(IllegalArgumentException.class, () -> new LotOutcome(Fate.REGISTERED, List.of(fault)));
        assertThrows(IllegalArgumentException.class, () -> new LotOutcome(Fate.REFUSED, List.of()));
    }
}
