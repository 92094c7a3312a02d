package dev.reelproof.limit;

/**
 * An instrument's uncertainty on one grid of frequencies, for sweeps of many points: gives what
 * {@link InstrumentUncertainty#standard(double, double, LevelSide)} gives, to the last digit.
 *
 * <p>A level with a noise floor takes one exponential and one logarithm a point, and one exponential more where a part is proportional
 * to the reading.
 */
public final class UncertaintyOverGrid {
    private final InstrumentUncertainty uncertainty;
    private final LevelSide side;
    private final double[] towardsLower;
    private final double[] towardsHigher;

    UncertaintyOverGrid(InstrumentUncertainty uncertainty, double[] megahertz) {
        this.uncertainty = uncertainty;
        this.side = uncertainty.side().orElse(LevelSide.LOWER);
        this.towardsLower = squares(uncertainty, megahertz, LevelSide.LOWER);
        this.towardsHigher =
                uncertainty.side().isPresent() ? squares(uncertainty, megahertz, LevelSide.HIGHER) : towardsLower;
    }

    private static double[] squares(InstrumentUncertainty uncertainty, double[] megahertz, LevelSide towards) {
        double[] squares = new double[megahertz.length];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = uncertainty.squares(megahertz[i], towards);
        }
        return squares;
    }

    /**
     * The standard uncertainty of a reading that passes, in the canonical unit; NaN where the model says nothing.
     *
     * @param reading in the canonical unit
     * @param index of its frequency in the grid
     */
    public double standard(double reading, int index) {
        return standard(reading, index, side);
    }

    /**
     * What no standard uncertainty of a reading that passes exceeds, over some frequencies; NaN where the model says nothing of one.
     *
     * @param lowest least of the readings, in the canonical unit
     * @param highest greatest of the readings, in the canonical unit
     * @param from index of the first frequency
     * @param to behind the index of the last
     */
    public double atMost(double lowest, double highest, int from, int to) {
        double[] ofSide = side == LevelSide.LOWER ? towardsLower : towardsHigher;
        double squares = 0;
        for (int i = from; i < to; i++) {
            squares = Math.max(squares, ofSide[i]);
        }
        return Math.max(uncertainty.standard(lowest, side, squares), uncertainty.standard(highest, side, squares));
    }

    /**
     * The standard uncertainty of a reading to one side, in the canonical unit; NaN where the model says nothing.
     *
     * @param reading in the canonical unit
     * @param index of its frequency in the grid
     * @param towards the side on which the true level may lie
     */
    public double standard(double reading, int index, LevelSide towards) {
        return uncertainty.standard(
                reading, towards, towards == LevelSide.LOWER ? towardsLower[index] : towardsHigher[index]);
    }
}
