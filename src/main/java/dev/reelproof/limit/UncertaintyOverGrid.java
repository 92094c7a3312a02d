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
