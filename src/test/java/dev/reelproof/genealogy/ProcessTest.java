package dev.reelproof.genealogy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.admission.PedigreeCycle;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Steps, runs, samples and descent. */
class ProcessTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");

    private static StepRun run(OffsetDateTime started, OffsetDateTime finished, Map<String, Setting> settings) {
        return new StepRun(new RunId("RUN-1"), "twisting", "TWN-1", "L1", "op-7", "early", started, finished, settings);
    }

    private static Lot lot(StepRun run, OffsetDateTime made, Sample... samples) {
        return new Lot(
                new LotId("TP-1"),
                "north",
                LotKind.TWISTED_PAIR,
                new Amount(1, "km"),
                made,
                "twisting",
                "TWN-1",
                List.of(),
                run,
                List.of(samples));
    }

    @Test
    void knowsTheStepsByAllTheirWords() {
        for (ProcessStep step : ProcessStep.values()) {
            assertEquals(step, ProcessStep.named(step.word()));
        }
        assertEquals(ProcessStep.DRAWING, ProcessStep.named("Drawing and annealing"));
        assertEquals(ProcessStep.TWISTING, ProcessStep.named("twinning"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> ProcessStep.named("baking"))
                .getMessage()
                .contains("known steps: rod-receipt"));
    }

    @Test
    void aRunEndsAfterItBeginsAndItsLotsAreMadeAfterThat() {
        assertThrows(IllegalArgumentException.class, () -> run(MORNING, MORNING.minusSeconds(1), Map.of()));
        StepRun run = run(MORNING, MORNING.plusHours(2), Map.of());
        assertEquals(MORNING, lot(run, MORNING).made());
        assertThrows(IllegalArgumentException.class, () -> lot(run, MORNING.minusSeconds(1)));
    }

    @Test
    void aLotAndItsRunHaveOneStepAndMachine() {
        StepRun other = new StepRun(new RunId("RUN-1"), "twisting", "TWN-2", null, null, null, null, null, Map.of());
        assertThrows(IllegalArgumentException.class, () -> lot(other, MORNING));
    }

    @Test
    void saysInWhatTwoReportsDiffer() {
        Setting lay = Setting.ofNumber(14.2, "mm");
        StepRun run = run(MORNING, null, Map.of("lay", lay));
        assertEquals(List.of(), run.differencesFrom(run(MORNING, null, Map.of("lay", lay))));
        assertEquals(
                List.of("finished", "settings"),
                run.differencesFrom(run(MORNING, MORNING.plusHours(1), Map.of("lay", Setting.ofText("short")))));
        Sample sample = new Sample("diameter", 0.9, "mm", MORNING, 5.0, "m");
        assertEquals(List.of("run", "samples"), lot(run, MORNING).differencesFrom(lot(null, MORNING, sample)));
        assertEquals(List.of(), lot(run, MORNING, sample).differencesFrom(lot(run, MORNING, sample)));
    }

    @Test
    void refusesWhatCannotBeASettingOrASample() {
        assertThrows(IllegalArgumentException.class, () -> Setting.ofNumber(Double.NaN, "mm"));
        assertThrows(IllegalArgumentException.class, () -> new Setting("blue", 1.0, null));
        assertThrows(IllegalArgumentException.class, () -> new Setting("blue", null, "mm"));
        assertThrows(IllegalArgumentException.class, () -> run(null, null, Map.of(" ", Setting.ofText("x"))));
        assertThrows(IllegalArgumentException.class, () -> new Sample("Diameter", 1, "mm", null, null, null));
        assertThrows(IllegalArgumentException.class, () -> new Sample("diameter", 1, "mm", null, -1.0, "m"));
        assertThrows(IllegalArgumentException.class, () -> new Sample("diameter", 1, "mm", null, 1.0, "ohm"));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Sample("diameter", Double.POSITIVE_INFINITY, "mm", null, null, null));
    }

    @Test
    void findsALotThatWouldDescendFromItself() {
        LotId a = new LotId("A");
        LotId b = new LotId("B");
        LotId c = new LotId("C");
        Map<LotId, Set<LotId>> circle = Map.of(a, Set.of(b), b, Set.of(c), c, Set.of(a));
        assertTrue(PedigreeCycle.isThrough(a, circle));
        assertTrue(PedigreeCycle.isThrough(c, circle));
        assertFalse(PedigreeCycle.isThrough(a, Map.of(a, Set.of(b, c), b, Set.of(c))));
        // a circle above that does not lead back
        assertFalse(PedigreeCycle.isThrough(a, Map.of(a, Set.of(b), b, Set.of(c), c, Set.of(b))));
    }

    @Test
    void knowsWhatEachKindIsMadeFrom() {
        assertEquals(
                List.of("insulation-compound"),
                ExpectedInputs.missing(
                        LotKind.INSULATED_CONDUCTOR, List.of(LotKind.ANNEALED_CONDUCTOR, LotKind.COLOUR_CONCENTRATE)));
        assertEquals(List.of(), ExpectedInputs.missing(LotKind.ROD, List.of()));
        assertEquals(List.of(), ExpectedInputs.missing(LotKind.REEL, List.of(LotKind.JACKETED_CABLE)));
        assertEquals(1, ExpectedInputs.missing(LotKind.REEL, List.of()).size());
    }

    @Test
    void joinsStretchesThatOverlapOrTouch() {
        assertEquals(
                List.of(new Stretch(0, 3), new Stretch(5, 5)),
                Stretch.union(List.of(new Stretch(5, 5), new Stretch(1, 3), new Stretch(0, 1), new Stretch(2, 2))));
        assertThrows(IllegalArgumentException.class, () -> new Stretch(2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Stretch(-1, 1));
        assertThrows(IllegalArgumentException.class, () -> new Stretch(0, Double.NaN));
    }
}
