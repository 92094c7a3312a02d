package dev.reelproof.intake.result;

import dev.reelproof.intake.Words;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.ReadingUnit;
import java.util.EnumSet;
import java.util.Set;

/** What units and values a property can have at all; whether a value is good is the limit set's business. */
final class ValueRules {
    /** Those that grow with length in a way that some law states, so that a value may be per length. */
    private static final Set<Property> PER_LENGTH = EnumSet.of(
            Property.CONDUCTOR_RESISTANCE,
            Property.MUTUAL_CAPACITANCE,
            Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR,
            Property.CAPACITANCE_UNBALANCE_TO_GROUND,
            Property.INSERTION_LOSS,
            Property.ACR_F,
            Property.PS_ACR_F,
            Property.FEXT,
            Property.PROPAGATION_DELAY,
            Property.GROUP_DELAY,
            Property.DELAY_SKEW,
            Property.LOOP_RESISTANCE,
            Property.MUTUAL_CONDUCTANCE,
            Property.INSULATION_FAULTS);

    /**
     * Those that are signed: levels in dB, unbalances whose sign says which side is the greater, and the group delay, which
     * echoes can turn negative at single frequencies.
     */
    private static final Set<Property> SIGNED = EnumSet.of(
            Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR,
            Property.CAPACITANCE_UNBALANCE_TO_GROUND,
            Property.INSERTION_LOSS,
            Property.NEXT,
            Property.PS_NEXT,
            Property.ACR_F,
            Property.PS_ACR_F,
            Property.FEXT,
            Property.RETURN_LOSS,
            Property.STRUCTURAL_RETURN_LOSS,
            Property.TCL,
            Property.TCTL,
            Property.EL_TCTL,
            Property.GROUP_DELAY,
            Property.LENGTH_MARKING_ERROR);

    /** Those that no cable has at zero; a zero is a lead off, and would pass a limit from above. */
    private static final Set<Property> NEVER_ZERO = EnumSet.of(
            Property.CONDUCTOR_RESISTANCE,
            Property.MUTUAL_CAPACITANCE,
            Property.PROPAGATION_DELAY,
            Property.INPUT_IMPEDANCE,
            Property.CHARACTERISTIC_IMPEDANCE,
            Property.OVERALL_DIAMETER,
            Property.LOOP_RESISTANCE,
            Property.INSULATED_CONDUCTOR_DIAMETER);

    private static final Set<Property> COUNTS = EnumSet.of(
            Property.DIELECTRIC_WITHSTAND,
            Property.SPARK_FAULTS,
            Property.INSULATION_FAULTS,
            Property.CONTINUITY_FAULTS,
            Property.INSULATION_COLD_BEND_FAILURES,
            Property.JACKET_IMPACT_FAILURES);

    private ValueRules() {}

    /**
     * Requires that a unit can be one of the property.
     *
     * @throws IllegalArgumentException when it measures something else, or carries a length in a way that the property cannot
     */
    static void requireUnit(Property property, ReadingUnit unit) {
        try {
            unit.numeratorFactorTo(property.canonicalUnit());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(property + ": " + e.getMessage(), e);
        }
        if (unit.referredTo().isEmpty()) {
            return;
        }
        boolean quotient = unit.text().indexOf('/') >= 0;
        if (property == Property.INSULATION_RESISTANCE) {
            if (quotient) {
                throw new IllegalArgumentException(
                        "insulation-resistance falls with length, so that its unit is a product"
                                + " such as megohm·km, not " + Words.quoted(unit.text()));
            }
        } else if (!PER_LENGTH.contains(property)) {
            throw new IllegalArgumentException(property + " has no value per length; use a unit such as "
                    + property.canonicalUnit() + ", not " + Words.quoted(unit.text()));
        } else if (!quotient) {
            throw new IllegalArgumentException(property + " is given per length, such as " + property.canonicalUnit()
                    + "/km, not as the product " + Words.quoted(unit.text()));
        }
    }

    /**
     * Requires that a finite value can be one of the property; the sign and zero are the same in every unit.
     *
     * @throws IllegalArgumentException when it is negative, zero or broken where it cannot be
     */
    static void requireValue(Property property, double sent, ReadingUnit unit) {
        if (!Double.isFinite(sent)) {
            throw new IllegalArgumentException(property + " must be a finite number, not " + sent);
        }
        if (SIGNED.contains(property)) {
            return;
        }
        if (NEVER_ZERO.contains(property) ? !(sent > 0) : !(sent >= 0)) {
            throw new IllegalArgumentException(property + " must be "
                    + (NEVER_ZERO.contains(property) ? "above 0" : "0 or more") + ", not " + sent + " " + unit.text());
        }
        if (COUNTS.contains(property) && sent != Math.rint(sent)) {
            throw new IllegalArgumentException(property + " is a count and must be a whole number, not " + sent);
        }
    }
}
