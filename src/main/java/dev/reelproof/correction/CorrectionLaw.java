package dev.reelproof.correction;

import dev.reelproof.quantity.Temperature;

/** A law that brings a measured value to the reference conditions of a limit set. */
public interface CorrectionLaw {

    /** The law's name in limit set files. */
    String name();

    /** The source of the formula, and whether it was read or is from memory. */
    String citation();

    /** The formula with its coefficients, for people. */
    String formula();

    /**
     * Refuses a temperature that the law is not stated to hold at.
     *
     * @throws OutsideLawException when the temperature lies outside the law's range
     */
    void requireCovers(Temperature temperature);

    /** Whether the law needs the measured loss under the conditions, so that it differs from frequency to frequency. */
    default boolean needsLoss(MeasurementConditions conditions) {
        return false;
    }

    /**
     * The law under some conditions. Every law is a straight line in the value, so that a column of values is corrected by one line.
     *
     * @param conditions where and how long was measured, and what to refer it to
     * @throws OutsideLawException when the law does not hold there or needs a figure that is not given
     */
    Line at(MeasurementConditions conditions);

    /**
     * The value at reference conditions.
     *
     * @param value the value under the conditions, in the property's canonical unit
     * @param conditions where and how long it was measured, and what to refer it to
     * @return the corrected value in the same unit
     * @throws OutsideLawException when the law does not hold there or needs a figure that is not given
     */
    default double correct(double value, MeasurementConditions conditions) {
        return at(conditions).of(value);
    }

    /**
     * The derivatives of {@link #correct} there, for the propagation of uncertainty.
     *
     * @param value as for {@link #correct}
     * @param conditions as for {@link #correct}
     * @throws OutsideLawException when the law does not hold there or needs a figure that is not given
     */
    Sensitivity sensitivity(double value, MeasurementConditions conditions);
}
