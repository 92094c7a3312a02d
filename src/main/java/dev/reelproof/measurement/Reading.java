package dev.reelproof.measurement;

import dev.reelproof.quantity.ReadingUnit;

/**
 * One value as measured.
 *
 * @param property what was measured
 * @param subject what it belongs to
 * @param value the value in the property's canonical unit; finite
 * @param sent the value as sent, in {@code unit}; finite
 * @param unit the unit as sent, with the length it refers to, if any
 * @param origin where it stood in the upload
 */
public record Reading(Property property, Subject subject, double value, double sent, ReadingUnit unit, Origin origin) {

    public Reading {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(property + " must be a finite number, not " + value);
        }
        if (!Double.isFinite(sent)) {
            throw new IllegalArgumentException(property + " as sent must be a finite number, not " + sent);
        }
        unit.numeratorFactorTo(property.canonicalUnit()); // refuses a unit of something else
        if (!property.isScalar()) {
            throw new IllegalArgumentException(property + " is measured against frequency: send it as a sweep");
        }
        Subjects.requireFits(property, subject);
    }

    /**
     * A reading as sent, converted once to the canonical unit.
     *
     * @throws IllegalArgumentException when the unit, the value or the subject does not fit the property
     */
    public static Reading of(Property property, Subject subject, double sent, ReadingUnit unit, Origin origin) {
        return new Reading(
                property, subject, sent * unit.numeratorFactorTo(property.canonicalUnit()), sent, unit, origin);
    }
}
