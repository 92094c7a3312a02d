package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.correction.Laws;
import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.Temperature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reels to the US regulation that no revision of the shipped sets could accept before, and the newest can. */
class UsAcceptanceTest {
    private static final Set<Property> MECHANICAL = Set.of(
            Property.INSULATION_TENSILE_STRENGTH,
            Property.INSULATION_ELONGATION,
            Property.INSULATION_COMPRESSION,
            Property.STRIP_FORCE,
            Property.JACKET_TENSILE_STRENGTH,
            Property.JACKET_ELONGATION,
            Property.JACKET_THICKNESS);

    private static LimitSet shipped(String name) throws IOException {
        Path file = Path.of("limits", name + ".yaml");
        return new LimitSetReader(Laws::named).read(file.toString(), Files.readString(file));
    }

    private static ReelResult at(ReelResult result, double celsius, List<Reading> readings, List<Sweep> sweeps) {
        return new ReelResult(
                result.product(),
                result.length(),
                Temperature.ofCelsius(celsius),
                null,
                null,
                null,
                result.finished(),
                result.equipment(),
                readings,
                sweeps);
    }

    private static Judgement judge(CompleteResult complete, ReelResult result, LimitSet set) {
        return Judge.judge(result, complete.product(), set, Optional.empty(), "test");
    }

    private static List<Property> inTheWay(Judgement judgement) {
        return judgement.findings().stream()
                .filter(finding -> finding.outcome() != Outcome.PASS)
                .map(Finding::property)
                .distinct()
                .toList();
    }

    /** 7 CFR 1755.870(m)(6)(i): a reel that was tested electrically alone. Units of 12 pairs; two of them touch, a third stands apart. */
    @ParameterizedTest
    @CsvSource({
        "us-terminating-cable-22awg, 12",
        "us-terminating-cable-24awg, 12",
        "us-terminating-cable-22awg, 36",
        "us-terminating-cable-24awg, 36"
    })
    void aTerminatingCableIsAcceptedByElectricalTest(String id, int pairs) throws IOException {
        LimitSet newest = shipped(id + "-revision-3");
        CompleteResult complete = new CompleteResult(newest, pairs);
        List<Reading> electrical = complete.result().readings().stream()
                .filter(reading -> !MECHANICAL.contains(reading.property()))
                .toList();
        ReelResult result =
                at(complete.result(), 20.5, electrical, complete.result().sweeps());

        Judgement before = judge(complete, result, shipped(id + "-revision-2"));
        Judgement now = judge(complete, result, newest);

        assertEquals(MECHANICAL, Set.copyOf(inTheWay(before)));
        assertEquals(List.of(), inTheWay(now));
        assertEquals(Verdict.ACCEPTED, now.verdict());
    }

    /** A mechanical result that was measured and fails rejects as before. */
    @ParameterizedTest
    @CsvSource({"us-terminating-cable-22awg", "us-terminating-cable-24awg"})
    void aFailingMechanicalResultStillRejects(String id) throws IOException {
        LimitSet newest = shipped(id + "-revision-3");
        CompleteResult complete = new CompleteResult(newest, 12);
        List<Reading> readings = new ArrayList<>();
        for (Reading reading : complete.result().readings()) {
            double value = reading.property() == Property.JACKET_ELONGATION ? 199 : reading.sent();
            readings.add(Reading.of(reading.property(), reading.subject(), value, reading.unit(), reading.origin()));
        }
        ReelResult result =
                at(complete.result(), 20.5, readings, complete.result().sweeps());

        Judgement judgement = judge(complete, result, newest);

        assertEquals(List.of(Property.JACKET_ELONGATION), inTheWay(judgement));
        assertEquals(Verdict.REJECTED, judgement.verdict());
    }

    /** 7 CFR 1755.860(m)(5), "measured at or corrected to": the temperatures at which capacitance may be measured, 23 ± 3 °C. */
    @ParameterizedTest
    @CsvSource({
        "us-buried-wire-22awg, 21.5",
        "us-buried-wire-22awg, 26",
        "us-buried-wire-24awg, 23",
        "us-buried-wire-24awg, 26"
    })
    void aBuriedWireIsAcceptedWhereCapacitanceMayBeMeasured(String id, double celsius) throws IOException {
        LimitSet newest = shipped(id + "-revision-3");
        CompleteResult complete = new CompleteResult(newest, 3);
        ReelResult result = at(
                complete.result(),
                celsius,
                complete.result().readings(),
                complete.result().sweeps());

        Judgement before = judge(complete, result, shipped(id + "-revision-2"));
        Judgement now = judge(complete, result, newest);

        assertEquals(List.of(Property.INSERTION_LOSS), inTheWay(before));
        assertEquals(List.of(), inTheWay(now));
        assertEquals(Verdict.ACCEPTED, now.verdict());
    }

    /**
     * Attenuation at either end of the range and between. The loss measured is 5.9 dB (22 AWG) or 7.65 dB (24 AWG) over 1 km, the middle of the
     * limits, times the 1 + 0.0001 n of pair n; corrected by hand it is a/(1 + 0.0022 (t − 20)).
     */
    @ParameterizedTest
    @CsvSource({
        "us-buried-wire-22awg, 15, 5.9",
        "us-buried-wire-22awg, 30, 5.9",
        "us-buried-wire-24awg, 0, 7.65",
        "us-buried-wire-24awg, 40, 7.65"
    })
    void attenuationIsCorrectedWithinItsRange(String id, double celsius, double sent) throws IOException {
        LimitSet newest = shipped(id + "-revision-3");
        CompleteResult complete = new CompleteResult(newest, 3);
        ReelResult result = at(
                complete.result(),
                celsius,
                complete.result().readings(),
                complete.result().sweeps());

        Finding loss = judge(complete, result, newest).findings().stream()
                .filter(finding -> finding.property() == Property.INSERTION_LOSS)
                .findFirst()
                .orElseThrow();

        assertEquals(Outcome.PASS, loss.outcome());
        double byHand = sent / (1 + 0.0022 * (celsius - 20));
        double value = loss.worst().value();
        assertTrue(value > byHand && value < byHand * (1 + 0.00045), value + " against " + byHand);
    }

    /** Beyond the range the law says nothing: the result is refused, as by every law. */
    @ParameterizedTest
    @CsvSource({"us-buried-wire-22awg, -0.1", "us-buried-wire-24awg, 40.1"})
    void aWireBeyondTheRangeOfTheLawIsMeasuredAgain(String id, double celsius) throws IOException {
        LimitSet newest = shipped(id + "-revision-3");
        CompleteResult complete = new CompleteResult(newest, 3);
        ReelResult result = at(
                complete.result(),
                celsius,
                complete.result().readings(),
                complete.result().sweeps());

        OutsideLawException refused = assertThrows(OutsideLawException.class, () -> judge(complete, result, newest));

        assertTrue(String.valueOf(refused.getMessage()).contains("cable-loss-temperature covers, 0 to 40 °C"));
    }
}
