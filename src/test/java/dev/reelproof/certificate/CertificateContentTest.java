package dev.reelproof.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.measurement.Property;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CertificateContentTest {
    private final CertificateSamples sample = CertificateSamples.of(4, 500);
    private final CertificateContent content = sample.content();

    private Row row(String requirement) {
        return content.rows().stream()
                .filter(row -> row.requirement().equals(requirement))
                .findFirst()
                .orElseThrow();
    }

    private static Plot plot(CertificateContent content, String property) {
        return content.plots().stream()
                .filter(plot -> plot.property().equals(property))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void hasOneRowForEachFindingInTheSetsOrder() {
        assertEquals(
                sample.limitSet().requirements().stream().map(r -> r.id()).toList(),
                content.rows().stream().map(Row::requirement).toList());
    }

    @Test
    void aConstantLimitIsPrintedWithItsPlacesAndTheValueWithOneMore() {
        Row row = row("conductor-resistance");
        assertEquals("≤ 9.38 ohm/100 m", row.limit());
        assertEquals("6.904", row.value());
        assertEquals("2.476", row.margin());
        assertEquals("pair 3, wire b", row.where());
        assertEquals(
                List.of("as measured 21.92 ohm", "corrected: copper temperature (coefficient 0.00393), linear length"),
                row.notes());
    }

    @Test
    void aCurveIsPrintedAsItsFormula() {
        assertEquals(
                "≤ 1.82·√f + 0.0091·f + 0.25/√f dB/100 m, 1 to 500 MHz",
                row("insertion-loss").limit());
        assertEquals("≥ 44.3 − 15·log10(f/100) dB, 1 to 500 MHz", row("next").limit());
    }

    /** The danger: the formula at the worst place was printed over the whole range. */
    @Test
    void aCurveOfSeveralFormulasIsPrintedWhole() {
        Row row = row("return-loss");
        assertEquals(
                List.of(
                        new CertificateContent.Part("≥ 20 + 5·log10(f) dB", "1 to 10 MHz"),
                        new CertificateContent.Part("≥ 25 dB", "10 to 20 MHz"),
                        new CertificateContent.Part("≥ 25 − 7·log10(f/20) dB", "20 to 500 MHz")),
                row.limitParts());
        assertEquals(
                "≥ 20 + 5·log10(f) dB, 1 to 10 MHz; ≥ 25 dB, 10 to 20 MHz; ≥ 25 − 7·log10(f/20) dB, 20 to 500 MHz",
                row.limit());
    }

    @Test
    void aCountHasNeitherUnitNorPlaces() {
        Row row = row("spark-faults");
        assertEquals("≤ 0", row.limit());
        assertEquals("0", row.value());
        assertEquals("", row.unit());
    }

    @Test
    void aComputedFigureSaysSo() {
        assertTrue(row("ps-next").notes().contains("computed from measured parts"));
        assertTrue(!row("next").notes().contains("computed from measured parts"));
    }

    @Test
    void lengthAndTemperatureStandAsSentAndInMetricUnits() {
        assertEquals(new CertificateContent.Quantity(1000, "ft"), content.length());
        assertEquals(304.8, content.lengthMetres(), 1e-9);
        assertEquals(
                new CertificateContent.Quantity(87.8, "°F"),
                content.conditions().temperature());
        assertEquals(31, content.conditions().celsius(), 1e-9);
    }

    @Test
    void eachSweptPropertyHasAPlotAndNoOtherHas() {
        assertEquals(
                List.of(
                        "insertion-loss",
                        "next",
                        "ps-next",
                        "acr-f",
                        "ps-acr-f",
                        "return-loss",
                        "propagation-delay",
                        "delay-skew"),
                content.plots().stream().map(Plot::property).toList());
    }

    @Test
    void thinningKeepsTheLowestAndHighestValueOfTheWorstSweep() {
        CertificateSamples fine = CertificateSamples.of(4, 20_000);
        Plot plot = plot(fine.content(), "return-loss");
        Line line = plot.lines().get(0);
        double[] all = fine.judgement(Verdict.ACCEPTED).sweeps().stream()
                .filter(sweep -> sweep.property() == Property.RETURN_LOSS)
                .filter(sweep ->
                        line.label().equals(String.valueOf(sweep.subject().pair()))
                                && line.end().equals(sweep.subject().end().word()))
                .findFirst()
                .orElseThrow()
                .corrected();
        assertTrue(line.values().size() < 400, "points kept: " + line.values().size());
        assertEquals(Arrays.stream(all).min().orElseThrow(), Collections.min(line.values()), 0.0005);
        assertEquals(Arrays.stream(all).max().orElseThrow(), Collections.max(line.values()), 0.0005);
        assertEquals(1, line.megahertz().get(0));
        assertEquals(500, line.megahertz().get(line.megahertz().size() - 1));
    }

    @ParameterizedTest
    @CsvSource({"acr-f, 24", "next, 12", "return-loss, 8"})
    void sweepsBecomeABandThatHoldsThemAllWithTheWorstInIt(String property, int count) {
        Plot plot = plot(content, property);
        assertEquals(count, plot.sweeps());
        assertEquals(1, plot.lines().size());
        assertNotNull(plot.band());
        List<double[]> sweeps = sample.judgement(Verdict.ACCEPTED).sweeps().stream()
                .filter(sweep -> sweep.property().id().equals(property))
                .map(CorrectedSweep::corrected)
                .toList();
        assertEquals(
                sweeps.stream().flatMapToDouble(Arrays::stream).min().orElseThrow(),
                Collections.min(plot.band().lowest()),
                0.0005);
        assertEquals(
                sweeps.stream().flatMapToDouble(Arrays::stream).max().orElseThrow(),
                Collections.max(plot.band().highest()),
                0.0005);
    }

    @Test
    void aSingleSweepIsALine() {
        assertNull(plot(content, "delay-skew").band());
        assertEquals(1, plot(content, "delay-skew").lines().size());
    }

    @Test
    void theStatementSaysWhatIsMet() {
        assertEquals(
                List.of(
                        "Reel R-2026-00417 was tested and meets each of the 14 requirements of the limit set “Four-pair horizontal"
                                + " cable, category 6A”, revision 1."),
                content.statement());
    }

    @Test
    void whyTheSetLeavesSomethingOutStaysInItsFile() {
        assertEquals(List.of("TCL and EL TCTL", "alien crosstalk"), content.leftOut());
    }

    @Test
    void isKeptAsJsonAndReadBackTheSame() throws Exception {
        ObjectMapper json = new ObjectMapper();
        assertEquals(content, json.readValue(json.writeValueAsBytes(content), CertificateContent.class));
    }

    private static final Finding FAILS = new Finding(
            "next",
            Property.NEXT,
            Outcome.FAIL,
            null,
            CertificateSamples.figure(Property.NEXT),
            1,
            List.of(),
            DecisionRule.SIMPLE_ACCEPTANCE);

    @Test
    void aRejectedReelHasNone() {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> CertificateContent.of(
                                CertificateSamples.issuing(),
                                CertificateSamples.item(),
                                CertificateSamples.conditions(),
                                CertificateSamples.product(4),
                                CertificateSamples.judgementOf(Verdict.REJECTED, FAILS),
                                sample.limitSet()))
                .getMessage();
        assertTrue(message.startsWith("reel R-2026-00417: only an accepted reel"), message);
    }

    @Test
    void anotherRevisionOfTheLimitSetIsRefused() {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> CertificateContent.of(
                                CertificateSamples.issuing(),
                                CertificateSamples.item(),
                                CertificateSamples.conditions(),
                                CertificateSamples.product(4),
                                sample.judgement(Verdict.ACCEPTED),
                                sample.limitSet(2)))
                .getMessage();
        assertTrue(message.contains("revision 1") && message.contains("revision 2"), message);
    }

    /** A count alone needs no unit in print; a count per length means nothing without. A place more, so that the margin shows. */
    @Test
    void aCountPerLengthKeepsItsUnitAndItsPlaces() {
        Row faults =
                CertificateSamples.meetingAll(LimitSamples.shipped("us-terminating-cable-24awg", 2), 100)
                        .rows()
                        .stream()
                        .filter(row -> row.property().equals("insulation-faults"))
                        .findFirst()
                        .orElseThrow();

        assertEquals("≤ 1 count/3000 m", faults.limit());
        assertEquals("0.99", faults.value());
        assertEquals("0.01", faults.margin());
        assertEquals("count/3000 m", faults.unit());
    }
}
