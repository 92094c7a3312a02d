package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a corrected value depends on, with its derivative by each: the readings of instruments, the temperature and length of the
 * reel, and the temperature coefficients of the laws.
 *
 * <p>What is the same quantity in several parts of a derived value (temperature, length, coefficients, a reading that enters twice) has
 * its derivatives summed with their signs before anything is squared.
 *
 * @param readings each reading once
 * @param perDegree derivative by the cable's temperature, canonical unit per °C
 * @param perMetre derivative by the reel's length, canonical unit per m
 * @param perCoefficient derivative by a relative change of the laws' temperature coefficients, canonical unit
 */
record Influence(List<Instrument> readings, double perDegree, double perMetre, double perCoefficient) {

    /**
     * A reading of an instrument.
     *
     * @param property what it reads
     * @param place whose it is, in words
     * @param reading what it showed for the whole reel, in the canonical unit
     * @param megahertz the frequency, MHz; NaN where there is none
     * @param derivative of the corrected value by the reading
     */
    record Instrument(Property property, String place, double reading, double megahertz, double derivative) {
        private record Key(Property property, String place, double megahertz) {}

        private Key key() {
            return new Key(property, place, megahertz);
        }

        private Instrument times(double factor) {
            return new Instrument(property, place, reading, megahertz, factor * derivative);
        }

        private Instrument plus(Instrument same) {
            return new Instrument(property, place, reading, megahertz, derivative + same.derivative);
        }
    }

    Influence {
        readings = List.copyOf(readings);
    }

    /** That of nothing. */
    static final Influence NONE = new Influence(List.of(), 0, 0, 0);

    /** The influence on a value that is the reading itself, without correction. */
    static Influence ofReading(Property property, String place, double reading) {
        return new Influence(List.of(new Instrument(property, place, reading, Double.NaN, 1)), 0, 0, 0);
    }

    /** The influence on a value derived from parts, by the chain rule. */
    static Influence combined(double[] gradient, List<Influence> parts) {
        Map<Instrument.Key, Instrument> readings = new LinkedHashMap<>();
        double perDegree = 0;
        double perMetre = 0;
        double perCoefficient = 0;
        for (int i = 0; i < gradient.length; i++) {
            double factor = gradient[i];
            Influence part = parts.get(i);
            for (Instrument one : part.readings) {
                readings.merge(one.key(), one.times(factor), Instrument::plus);
            }
            perDegree += factor * part.perDegree;
            perMetre += factor * part.perMetre;
            perCoefficient += factor * part.perCoefficient;
        }
        return new Influence(new ArrayList<>(readings.values()), perDegree, perMetre, perCoefficient);
    }
}
