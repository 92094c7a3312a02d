package dev.reelproof.limit;

import dev.reelproof.measurement.Property;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * One revision of an uncertainty model: what the instruments of each class, the thermometer and the measuring of length contribute.
 *
 * <p>Temperature, length, length marks and temperature coefficients are each one error for a whole result: their correlation is 1. The
 * two of length are independent of each other and enter by the same derivative.
 *
 * @param id its name, such as {@code test-bay}
 * @param revision from 1
 * @param effective the first day on which it is used
 * @param title in words
 * @param coverageFactor k of the expanded uncertainties that are stated by it, U = k u
 * @param confidencePercent the level of confidence that k is meant to give, in percent, for a normal distribution
 * @param temperature of the cable's temperature, in °C
 * @param length of the reel's length, in m
 * @param lengthMarks of the marks that the length is read from, in m; empty when {@code length} has all
 * @param temperatureCoefficients of the laws' temperature coefficients; empty when they are taken as exact
 * @param classes the entries by class of equipment and property; {@value #DEFAULT_CLASS} is there
 * @param sha256 digest of the file, hexadecimal
 * @param text the file as it was read
 */
public record UncertaintyModel(
        String id,
        int revision,
        LocalDate effective,
        String title,
        double coverageFactor,
        double confidencePercent,
        InstrumentUncertainty temperature,
        InstrumentUncertainty length,
        Optional<InstrumentUncertainty> lengthMarks,
        Optional<RelativeUncertainty> temperatureCoefficients,
        Map<String, Map<Property, InstrumentUncertainty>> classes,
        String sha256,
        String text) {
    /** The class of equipment that states no class. */
    public static final String DEFAULT_CLASS = "default";

    public UncertaintyModel {
        classes = Map.copyOf(classes.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> Map.copyOf(entry.getValue()))));
        if (!classes.containsKey(DEFAULT_CLASS)) {
            throw new IllegalArgumentException("an uncertainty model needs the class '" + DEFAULT_CLASS + "'");
        }
    }

    /** The entry of a property in a class; empty when there is none. */
    public Optional<InstrumentUncertainty> entry(String equipmentClass, Property property) {
        return Optional.ofNullable(
                classes.getOrDefault(equipmentClass, Map.of()).get(property));
    }

    /** Why there is no entry, in words. */
    public String without(String equipmentClass, Property property) {
        return classes.containsKey(equipmentClass)
                ? "uncertainty model " + words() + " has no entry for " + property + " in class '" + equipmentClass
                        + "'"
                : "uncertainty model " + words() + " has no class '" + equipmentClass + "'; it has "
                        + String.join(", ", new TreeMap<>(classes).keySet());
    }

    /** Its name for people. */
    public String words() {
        return id + " revision " + revision;
    }
}
