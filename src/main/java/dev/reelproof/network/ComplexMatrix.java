package dev.reelproof.network;

/** A square complex matrix by rows, real and imaginary part in turn. Mutable, and never shared. */
final class ComplexMatrix {
    private final int n;
    private final double[] parts;

    ComplexMatrix(int n, double[] parts) {
        if (parts.length != 2 * n * n) {
            throw new IllegalArgumentException(parts.length + " numbers do not make a complex matrix of " + n);
        }
        this.n = n;
        this.parts = parts;
    }

    ComplexMatrix(int n) {
        this(n, new double[2 * n * n]);
    }

    int size() {
        return n;
    }

    double re(int row, int column) {
        return parts[2 * (row * n + column)];
    }

    double im(int row, int column) {
        return parts[2 * (row * n + column) + 1];
    }

    /** The size of an entry. */
    double abs(int row, int column) {
        return StrictMath.hypot(re(row, column), im(row, column));
    }

    void set(int row, int column, double re, double im) {
        parts[2 * (row * n + column)] = re;
        parts[2 * (row * n + column) + 1] = im;
    }

    /**
     * X with X · divisor = this, by Gaussian elimination with pivots. Both matrices are used up.
     *
     * @throws ArithmeticException when the divisor is singular
     */
    ComplexMatrix over(ComplexMatrix divisor) {
        // By columns, as the transposed system, which has X's rows for its unknowns.
        for (int k = 0; k < n; k++) {
            int pivot = k;
            for (int column = k + 1; column < n; column++) {
                if (divisor.abs(k, column) > divisor.abs(k, pivot)) {
                    pivot = column;
                }
            }
            if (!(divisor.abs(k, pivot) > 0)) {
                throw new ArithmeticException("the matrix is singular");
            }
            divisor.swapColumns(k, pivot);
            swapColumns(k, pivot);
            double re = divisor.re(k, k);
            double im = divisor.im(k, k);
            double square = re * re + im * im;
            divisor.scaleColumn(k, re / square, -im / square);
            scaleColumn(k, re / square, -im / square);
            for (int column = 0; column < n; column++) {
                if (column != k) {
                    double factorRe = divisor.re(k, column);
                    double factorIm = divisor.im(k, column);
                    divisor.subtractColumn(column, k, factorRe, factorIm);
                    subtractColumn(column, k, factorRe, factorIm);
                }
            }
        }
        return this;
    }

    private void swapColumns(int one, int other) {
        if (one == other) {
            return;
        }
        for (int row = 0; row < n; row++) {
            double re = re(row, one);
            double im = im(row, one);
            set(row, one, re(row, other), im(row, other));
            set(row, other, re, im);
        }
    }

    private void scaleColumn(int column, double re, double im) {
        for (int row = 0; row < n; row++) {
            double oldRe = re(row, column);
            double oldIm = im(row, column);
            set(row, column, oldRe * re - oldIm * im, oldRe * im + oldIm * re);
        }
    }

    private void subtractColumn(int from, int what, double re, double im) {
        for (int row = 0; row < n; row++) {
            double whatRe = re(row, what);
            double whatIm = im(row, what);
            set(row, from, re(row, from) - (whatRe * re - whatIm * im), im(row, from) - (whatRe * im + whatIm * re));
        }
    }
}
