package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;

/** A sweep beside its corrected values, as judged and as plotted. Immutable. */
public final class CorrectedSweep {
    private final Property property;
    private final Subject subject;
    private final FrequencyGrid grid;
    private final double[] measured;
    private final double[] corrected;
    private final String unit;
    private final boolean derived;

    /** Takes the columns as they are. */
    private CorrectedSweep(
            double[] measured,
            double[] corrected,
            Property property,
            Subject subject,
            FrequencyGrid grid,
            String unit,
            boolean derived) {
        if (measured.length != grid.size() || corrected.length != grid.size()) {
            throw new IllegalArgumentException("a sweep needs one measured and one corrected value a frequency");
        }
        this.property = property;
        this.subject = subject;
        this.grid = grid;
        this.measured = measured;
        this.corrected = corrected;
        this.unit = unit;
        this.derived = derived;
    }

    /**
     * @param measured values as measured, in the property's canonical unit, for the length they were sent for
     * @param corrected values at the reference, in {@code unit}; one a grid point
     * @param unit the unit of the corrected values
     * @param derived whether it was computed from measured parts
     */
    public CorrectedSweep(
            Property property,
            Subject subject,
            FrequencyGrid grid,
            double[] measured,
            double[] corrected,
            String unit,
            boolean derived) {
        this(measured.clone(), corrected.clone(), property, subject, grid, unit, derived);
    }

    /** The sweep of a series, whose columns nobody changes. */
    static CorrectedSweep of(Series series, FrequencyGrid grid, String unit) {
        return new CorrectedSweep(
                series.measured(),
                series.corrected(),
                series.property(),
                series.subject(),
                grid,
                unit,
                series.derived());
    }

    public Property property() {
        return property;
    }

    public Subject subject() {
        return subject;
    }

    public FrequencyGrid grid() {
        return grid;
    }

    public double measured(int index) {
        return measured[index];
    }

    public double corrected(int index) {
        return corrected[index];
    }

    public double[] measured() {
        return measured.clone();
    }

    public double[] corrected() {
        return corrected.clone();
    }

    public String unit() {
        return unit;
    }

    public boolean derived() {
        return derived;
    }
}
