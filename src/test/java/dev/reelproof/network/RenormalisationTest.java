package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Identities of renormalising, and what tells a passive network. */
class RenormalisationTest {
    private static final long SEED = 20260302;
    private static final int TRIES = 200;

    private static ComplexMatrix random(Random random, int n, double size) {
        double[] parts = new double[2 * n * n];
        for (int i = 0; i < parts.length; i++) {
            // each row of n complex entries of at most size/n: no more than size comes out
            parts[i] = size / n * (2 * random.nextDouble() - 1) / Math.sqrt(2);
        }
        return new ComplexMatrix(n, parts);
    }

    private static double[] references(Random random, int n) {
        return random.doubles(n, 20, 200).toArray();
    }

    private static ComplexMatrix copy(ComplexMatrix s) {
        ComplexMatrix copy = new ComplexMatrix(s.size());
        for (int i = 0; i < s.size(); i++) {
            for (int j = 0; j < s.size(); j++) {
                copy.set(i, j, s.re(i, j), s.im(i, j));
            }
        }
        return copy;
    }

    @Test
    void thereAndBackIsTheIdentityAndPassiveStaysPassive() {
        Random random = new Random(SEED);
        for (int i = 0; i < TRIES; i++) {
            int n = 1 + random.nextInt(8);
            ComplexMatrix s = random(random, n, 1);
            double[] from = references(random, n);
            double[] to = references(random, n);
            ComplexMatrix there = Renormalisation.apply(copy(s), from, to);
            assertTrue(NetworkChecks.isPassive(there), "try " + i + " of seed " + SEED);
            ComplexMatrix back = Renormalisation.apply(there, to, from);
            for (int row = 0; row < n; row++) {
                for (int column = 0; column < n; column++) {
                    // references a decade apart lose two digits of sixteen at most
                    assertEquals(s.re(row, column), back.re(row, column), 1e-12, "try " + i + " of seed " + SEED);
                    assertEquals(s.im(row, column), back.im(row, column), 1e-12, "try " + i + " of seed " + SEED);
                }
            }
        }
    }

    @Test
    void aThroughConnectionHasNoImpedanceMatrixAndRenormalisesAllTheSame() {
        ComplexMatrix through = new ComplexMatrix(2);
        through.set(0, 1, 1, 0);
        through.set(1, 0, 1, 0);
        ComplexMatrix uneven = Renormalisation.apply(through, new double[] {50, 50}, new double[] {50, 100});
        // seen from 50 ohm: 100 ohm, a reflection of 1/3
        assertEquals(1.0 / 3, uneven.re(0, 0), 1e-15);
        assertEquals(-1.0 / 3, uneven.re(1, 1), 1e-15);
        assertEquals(Math.sqrt(8) / 3, uneven.re(1, 0), 1e-15);
    }

    @Test
    void aNetworkThatGainsPowerMayHaveNone() {
        ComplexMatrix active = new ComplexMatrix(1);
        active.set(0, 0, 3, 0);
        assertThrows(
                ArithmeticException.class, () -> Renormalisation.apply(active, new double[] {50}, new double[] {100}));
    }

    @Test
    void gainInOneModeIsFoundThoughNoEntryShowsIt() {
        // two ports in even mode: 0.6 + 0.6 = 1.2 comes out of 1, and each entry is below 1
        ComplexMatrix even = new ComplexMatrix(2);
        for (int row = 0; row < 2; row++) {
            for (int column = 0; column < 2; column++) {
                even.set(row, column, 0, 0.6);
            }
        }
        assertFalse(NetworkChecks.isPassive(even));
        ComplexMatrix half = new ComplexMatrix(2);
        for (int row = 0; row < 2; row++) {
            for (int column = 0; column < 2; column++) {
                half.set(row, column, 0, 0.504);
            }
        }
        assertTrue(NetworkChecks.isPassive(half), "1.008 is within the tolerance of 0.01");
        assertEquals("", NetworkChecks.oneWayEntries(half));
        half.set(0, 1, 0, 0.504 * 0.94);
        assertEquals("S1,2 and S2,1", NetworkChecks.oneWayEntries(half));
    }
}
