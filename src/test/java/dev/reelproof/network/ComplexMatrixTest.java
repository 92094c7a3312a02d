package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ComplexMatrixTest {
    private static final long SEED = 20261125;

    private static ComplexMatrix random(Random random, int n) {
        return new ComplexMatrix(n, random.doubles(2L * n * n, -1, 1).toArray());
    }

    private static ComplexMatrix times(ComplexMatrix a, ComplexMatrix b) {
        int n = a.size();
        ComplexMatrix product = new ComplexMatrix(n);
        for (int row = 0; row < n; row++) {
            for (int column = 0; column < n; column++) {
                Complex sum = Complex.real(0);
                for (int k = 0; k < n; k++) {
                    sum = sum.plus(new Complex(a.re(row, k), a.im(row, k))
                            .times(new Complex(b.re(k, column), b.im(k, column))));
                }
                product.set(row, column, sum.re(), sum.im());
            }
        }
        return product;
    }

    private static void assertSame(ComplexMatrix expected, ComplexMatrix actual, double tolerance) {
        for (int row = 0; row < expected.size(); row++) {
            for (int column = 0; column < expected.size(); column++) {
                assertEquals(expected.re(row, column), actual.re(row, column), tolerance);
                assertEquals(expected.im(row, column), actual.im(row, column), tolerance);
            }
        }
    }

    @Test
    void whatWasMultipliedComesBackByDividing() {
        Random random = new Random(SEED);
        for (int i = 0; i < 200; i++) {
            int n = 1 + random.nextInt(8);
            ComplexMatrix x = random(random, n);
            ComplexMatrix divisor = random(random, n);
            // of 200 random matrices the worst loses some five of sixteen digits
            assertSame(x, times(x, divisor).over(divisor), 1e-9);
        }
    }

    @Test
    void aDivisorMayHaveNothingOnItsDiagonalOrNearlyNothing() {
        Random random = new Random(SEED);
        for (double diagonal : new double[] {0, 1e-14}) {
            ComplexMatrix x = random(random, 3);
            ComplexMatrix turned = new ComplexMatrix(3);
            for (int i = 0; i < 3; i++) {
                turned.set(i, i, diagonal, 0);
                turned.set(i, (i + 1) % 3, 0, 2);
            }
            // without the greatest pivot of each step 1e-14 would cost fourteen digits
            assertSame(x, times(x, turned).over(turned), 1e-13);
        }
    }

    @Test
    void nothingIsDividedByASingularMatrix() {
        ComplexMatrix twice = new ComplexMatrix(2, new double[] {1, 1, 2, 2, 2, 2, 4, 4});
        ComplexMatrix x = new ComplexMatrix(2);
        assertThrows(ArithmeticException.class, () -> x.over(twice));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 4, 7, 9})
    void theNumbersMustBeThoseOfTheSize(int length) {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> new ComplexMatrix(2, new double[length]));
        assertEquals(length + " numbers do not make a complex matrix of 2", refused.getMessage());
    }
}
