package dev.reelproof.wording;

import dev.reelproof.measurement.Property;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/** What keeps who tests a property safe. */
final class Precautions {
    private static final Set<Property> HIGH_VOLTAGE =
            EnumSet.of(Property.DIELECTRIC_WITHSTAND, Property.SPARK_FAULTS, Property.INSULATION_FAULTS);

    private Precautions() {}

    static boolean isOfHighVoltage(Property property) {
        return HIGH_VOLTAGE.contains(property);
    }

    /** The word of caution; empty when no more than usual care is needed. */
    static Optional<String> of(Property property, Catalogue words) {
        return isOfHighVoltage(property) ? Optional.of(words.text("caution.high-voltage")) : Optional.empty();
    }
}
