package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import org.junit.jupiter.api.Test;

class CorrectedSweepTest {
    private static final FrequencyGrid GRID = FrequencyGrid.ofMegahertz(1, 4);

    private static CorrectedSweep sweep(double[] measured, double[] corrected) {
        return new CorrectedSweep(
                Property.INSERTION_LOSS, Subject.ofPair(1), GRID, measured, corrected, "dB/100 m", false);
    }

    @Test
    void holdsOneValueAFrequency() {
        double[] one = {2};
        double[] two = {2, 4};

        assertThrows(IllegalArgumentException.class, () -> sweep(one, two));
        assertThrows(IllegalArgumentException.class, () -> sweep(two, one));
    }

    @Test
    void whatIsGivenInOrTakenOutCannotChangeIt() {
        double[] measured = {6, 12};
        double[] corrected = {2, 4};
        CorrectedSweep sweep = sweep(measured, corrected);
        measured[0] = 99;
        corrected[0] = 99;
        sweep.measured()[1] = 99;
        sweep.corrected()[1] = 99;

        assertArrayEquals(new double[] {6, 12}, sweep.measured());
        assertArrayEquals(new double[] {2, 4}, sweep.corrected());
        assertEquals(12, sweep.measured(1));
        assertEquals(4, sweep.corrected(1));
    }
}
