package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import org.junit.jupiter.api.Test;

class LossCurveTest {
    /** Loss of 200 m that grows as the root of the frequency: 4, 12 and 16 dB at 1, 9 and 16 MHz. */
    private static final LossCurve ROOT_LAW = new LossCurve(
            Sweep.of(
                    Property.INSERTION_LOSS,
                    Subject.ofPair(1),
                    FrequencyGrid.ofMegahertz(1, 9, 16),
                    new double[] {4, 12, 16},
                    ReadingUnit.parse("dB"),
                    new Origin.JsonArray("/sweeps/0/values")),
            Length.ofMetres(200));

    private static double at(double megahertz) {
        return ROOT_LAW.on(FrequencyGrid.ofMegahertz(megahertz))[0];
    }

    @Test
    void atAPointOfTheSweepItIsTheMeasuredLossPerMetre() {
        assertEquals(0.02, at(1));
        assertEquals(0.06, at(9));
        assertEquals(0.08, at(16));
        assertArrayEquals(new double[] {0.02, 0.06, 0.08}, ROOT_LAW.on(FrequencyGrid.ofMegahertz(1, 9, 16)));
    }

    // Worked by hand: the root law gives 2 √f dB/100 m at every frequency, 0.03 dB/m at 2.25 MHz and 0.07 at 12.25 MHz.
    @Test
    void betweenTwoPointsItFollowsTheRootOfTheFrequency() {
        assertEquals(0.03, at(2.25), 1e-15);
        assertEquals(0.07, at(12.25), 1e-15);
    }

    @Test
    void outsideTheSweepThereIsNone() {
        assertTrue(Double.isNaN(at(0.999)));
        assertTrue(Double.isNaN(at(16.001)));
    }
}
