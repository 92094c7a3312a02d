package dev.reelproof.store.result;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SweepBlockTest {
    private static final FrequencyGrid COARSE = FrequencyGrid.ofMegahertz(1, 1.5, 10);
    private static final FrequencyGrid FINE = FrequencyGrid.ofMegahertz(
            IntStream.rangeClosed(1, 1000).mapToDouble(i -> i * 0.5).toArray());

    @Test
    void givesBackEveryBit() {
        double[] awkward = {0.1 + 0.2, -Double.MIN_VALUE, Double.MAX_VALUE};
        double[] corrected = {-0.0, 47.1, 1e-300};
        List<CorrectedSweep> read = SweepBlock.read(SweepBlock.write(List.of(
                new CorrectedSweep(
                        Property.NEXT,
                        Subject.ofCombination(3, 12).at(End.FAR),
                        COARSE,
                        awkward,
                        corrected,
                        "dB",
                        false),
                new CorrectedSweep(Property.DELAY_SKEW, Subject.ofReel(), FINE, loss(), loss(), "ns/100 m", true))));

        assertEquals(2, read.size());
        assertEquals(Property.NEXT, read.get(0).property());
        assertEquals(Subject.ofCombination(3, 12).at(End.FAR), read.get(0).subject());
        assertEquals(COARSE, read.get(0).grid());
        assertArrayEquals(awkward, read.get(0).measured(), 0);
        assertArrayEquals(corrected, read.get(0).corrected(), 0);
        assertEquals(Subject.ofReel(), read.get(1).subject());
        assertEquals(FINE, read.get(1).grid());
        assertEquals("ns/100 m", read.get(1).unit());
        assertTrue(read.get(1).derived());
        assertArrayEquals(loss(), read.get(1).corrected(), 0);
    }

    @Test
    void isSmallerThanItsNumbers() {
        byte[] block = SweepBlock.write(List.of(new CorrectedSweep(
                Property.INSERTION_LOSS, Subject.ofPair(1), FINE, loss(), loss(), "dB/100 m", false)));
        assertTrue(block.length < 3 * FINE.size() * Double.BYTES, "block of " + block.length + " bytes");
    }

    @Test
    void holdsNothingWhenNothingWasSwept() {
        assertEquals(List.of(), SweepBlock.read(SweepBlock.write(List.of())));
    }

    @Test
    void refusesAVersionThatItDoesNotKnow() {
        byte[] block = SweepBlock.write(List.of());
        block[0] = 9;
        assertTrue(assertThrows(IllegalStateException.class, () -> SweepBlock.read(block))
                .getMessage()
                .contains("version 9"));
    }

    private static double[] loss() {
        return DoubleStream.of(FINE.toArray()).map(f -> 1.8 * Math.sqrt(f)).toArray();
    }
}
