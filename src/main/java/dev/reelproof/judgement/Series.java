package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The values of one subject, ready to be judged: columns of what was measured and of what it comes to at the reference.
 *
 * <p>A single value is a series of one without a grid. What is told of a point (its chain, what it depends on) is made when it is asked.
 */
abstract sealed class Series permits MeasuredReading, MeasuredSweep, DerivedSeries {
    private static final Set<Property> OF_EITHER_SIGN =
            EnumSet.of(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Property.CAPACITANCE_UNBALANCE_TO_GROUND);

    private final Property property;
    private final Subject subject;
    private final @Nullable FrequencyGrid grid;
    private final double[] measured;
    private final CorrectedColumn corrected;

    /**
     * @param measured in the property's canonical unit, one a frequency; kept, not copied
     */
    Series(
            Property property,
            Subject subject,
            @Nullable FrequencyGrid grid,
            double[] measured,
            CorrectedColumn corrected) {
        this.property = property;
        this.subject = subject;
        this.grid = grid;
        this.measured = measured;
        this.corrected = corrected;
    }

    /** The size of an unbalance, whose sign only says which side is the greater; every other value as it is. */
    static double size(Property property, double value) {
        return OF_EITHER_SIGN.contains(property) ? Math.abs(value) : value;
    }

    Property property() {
        return property;
    }

    Subject subject() {
        return subject;
    }

    /** The frequencies; absent for a single value. */
    @Nullable
    FrequencyGrid grid() {
        return grid;
    }

    int size() {
        return measured.length;
    }

    /** The frequency of a point, MHz; absent for a single value. */
    @Nullable
    Double megahertz(int index) {
        return grid == null ? null : (Double) grid.megahertz(index);
    }

    /** The column of values as measured, in the canonical unit. Not to be changed. */
    double[] measured() {
        return measured;
    }

    double measured(int index) {
        return measured[index];
    }

    double corrected(int index) {
        return corrected.values()[index];
    }

    /** The column of values at the reference; NaN where there is an obstacle. Not to be changed. */
    double[] corrected() {
        return corrected.values();
    }

    /** Why a point cannot be judged; absent when it can. */
    @Nullable
    Obstacle obstacle(int index) {
        return corrected.obstacles().length == 0 ? null : corrected.obstacles()[index];
    }

    /** Whether two series have the same frequencies, or both none. */
    boolean sharesGridWith(Series other) {
        return Objects.equals(grid, other.grid);
    }

    /** The series as it is kept and plotted. */
    CorrectedSweep toSweep(String unit) {
        FrequencyGrid frequencies = Objects.requireNonNull(grid, "a single value is no sweep");
        return CorrectedSweep.of(this, frequencies, unit);
    }

    /** The value as sent; of a derived series, formed from the parts before correction, in the canonical unit. */
    abstract double sent(int index);

    /** The value as sent without the sign of an unbalance, for a statistic of values before correction. */
    final double sentMagnitude(int index) {
        return size(property, sent(index));
    }

    abstract ReadingUnit sentUnit();

    abstract boolean derived();

    /** Whether a law used the measured loss of a pair. */
    abstract boolean takesLoss();

    /** The chain from the raw value to the corrected one. */
    abstract List<Step> steps(int index);

    /**
     * What a corrected value depends on.
     *
     * @throws dev.reelproof.correction.OutsideLawException when the law has no derivative there
     */
    abstract Influence influence(int index);

    /**
     * The errors of some values in columns.
     *
     * @param side on which side of the value the errors are looked for
     */
    abstract ErrorColumns errors(Propagation propagation, ErrorSide side, Block block);

    /**
     * What no standard uncertainty of a passing value of a block exceeds: so far from the limit none needs to be worked out. NaN where
     * that is not known for less than working them all out.
     */
    abstract double errorAtMost(Propagation propagation, Block block);
}
