package dev.reelproof.measurement;

import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;

/** Values against frequency as measured, one a grid point. Immutable. */
public final class Sweep {
    private final Property property;
    private final Subject subject;
    private final FrequencyGrid grid;
    private final double[] values;
    private final double[] sent;
    private final ReadingUnit unit;
    private final Origin origin;

    private Sweep(
            Property property, Subject subject, FrequencyGrid grid, double[] sent, ReadingUnit unit, Origin origin) {
        if (!property.isSweep()) {
            throw new IllegalArgumentException(property + " is not measured against frequency: send it as a reading");
        }
        Subjects.requireFits(property, subject);
        if (sent.length != grid.size()) {
            throw new IllegalArgumentException(
                    property + " has " + sent.length + " values for " + grid.size() + " frequencies");
        }
        this.property = property;
        this.subject = subject;
        this.grid = grid;
        this.sent = sent.clone();
        this.unit = unit;
        this.origin = origin;
        this.values = new double[sent.length];
        double factor = unit.numeratorFactorTo(property.canonicalUnit());
        for (int i = 0; i < sent.length; i++) {
            values[i] = sent[i] * factor;
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException(
                        property + " value " + (i + 1) + " is " + sent[i] + "; it must be a finite number");
            }
        }
    }

    /**
     * A sweep as sent, converted once to the canonical unit.
     *
     * @throws IllegalArgumentException when unit, values or subject do not fit the property, or the lengths differ
     */
    public static Sweep of(
            Property property, Subject subject, FrequencyGrid grid, double[] sent, ReadingUnit unit, Origin origin) {
        return new Sweep(property, subject, grid, sent, unit, origin);
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

    /** The unit as sent, with the length it refers to, if any. */
    public ReadingUnit unit() {
        return unit;
    }

    public Origin origin() {
        return origin;
    }

    public int size() {
        return values.length;
    }

    /** The value at an index, in the property's canonical unit. */
    public double value(int index) {
        return values[index];
    }

    /** The value at an index as sent, in {@link #unit()}. */
    public double sent(int index) {
        return sent[index];
    }

    /** A copy of the values, in the property's canonical unit. */
    public double[] values() {
        return values.clone();
    }

    /** A copy of the values as sent, in {@link #unit()}. */
    public double[] sent() {
        return sent.clone();
    }
}
