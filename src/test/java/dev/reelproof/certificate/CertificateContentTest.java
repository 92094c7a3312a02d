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
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

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
        assertEquals(List.of("corrected: copper temperature (coefficient: 0.00393), linear length"), row.notes());
    }

    @Test
    void aCurveIsPrintedAsTheFormulaAtTheWorstPlace() {
        assertEquals(
                "≤ 1.82·√f + 0.0091·f + 0.25/√f dB/100 m, 1 to 500 MHz",
                row("insertion-loss").limit());
        assertEquals("≥ 44.3 − 15·log10(f/100) dB, 1 to 500 MHz", row("next").limit());
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
    void thinningKeepsTheLowestAndHighestValueOfEachSweep() {
        CertificateSamples fine = CertificateSamples.of(4, 20_000);
        Plot plot = plot(fine.content(), "return-loss");
        List<CorrectedSweep> sweeps = fine.judgement(Verdict.ACCEPTED).sweeps().stream()
                .filter(sweep -> sweep.property() == Property.RETURN_LOSS)
                .toList();
        assertEquals(sweeps.size(), plot.lines().size());
        for (int i = 0; i < sweeps.size(); i++) {
            Line line = plot.lines().get(i);
            assertTrue(
                    line.values().size() < 400, "points kept: " + line.values().size());
            double[] all = sweeps.get(i).corrected();
            assertEquals(java.util.Arrays.stream(all).min().orElseThrow(), Collections.min(line.values()), 0.0005);
            assertEquals(java.util.Arrays.stream(all).max().orElseThrow(), Collections.max(line.values()), 0.0005);
            assertEquals(1, line.megahertz().get(0));
            assertEquals(500, line.megahertz().get(line.megahertz().size() - 1));
        }
    }

    @Test
    void manySweepsBecomeABandThatHoldsThemAllWithTheWorstInIt() {
        Plot plot = plot(content, "acr-f");
        assertEquals(24, plot.sweeps());
        assertEquals(1, plot.lines().size());
        assertNotNull(plot.band());
        List<CorrectedSweep> sweeps = sample.judgement(Verdict.ACCEPTED).sweeps().stream()
                .filter(sweep -> sweep.property() == Property.ACR_F)
                .toList();
        double lowest = sweeps.stream()
                .flatMapToDouble(sweep -> java.util.Arrays.stream(sweep.corrected()))
                .min()
                .orElseThrow();
        assertEquals(lowest, Collections.min(plot.band().lowest()), 0.0005);
        assertNull(plot(content, "next").band());
        assertEquals(12, plot(content, "next").lines().size());
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
