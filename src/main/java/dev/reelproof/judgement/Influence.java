package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * What a corrected value depends on, with its derivative by each: the readings of instruments, the temperature and length of the
 * reel, and the measured loss that a law used.
 *
 * <p>Temperature, length and the loss of a pair are the same quantity in all parts of a derived value, so their derivatives are
 * summed with their signs before anything is squared. Readings are kept apart.
 *
 * @param readings the readings with their derivatives
 * @param perDegree derivative by the cable's temperature, canonical unit per °C
 * @param perMetre derivative by the reel's length, canonical unit per m
 * @param losses by pair
 */
record Influence(List<Instrument> readings, double perDegree, double perMetre, TreeMap<Integer, Loss> losses) {

    /**
     * A reading of an instrument.
     *
     * @param property what it reads
     * @param place whose it is, in words
     * @param reading what it showed for the whole reel, in the canonical unit
     * @param megahertz the frequency, MHz; NaN where there is none
     * @param derivative of the corrected value by the reading
     */
    record Instrument(Property property, String place, double reading, double megahertz, double derivative) {}

    /**
     * A measured insertion loss that a law used.
     *
     * @param megahertz the frequency, MHz
     * @param reading the loss of the whole reel, dB
     * @param derivative of the corrected value by that loss, dB per dB
     */
    record Loss(double megahertz, double reading, double derivative) {}

    /** The influence on a value that is the reading itself, without correction. */
    static Influence ofReading(Property property, String place, double reading) {
        return new Influence(List.of(new Instrument(property, place, reading, Double.NaN, 1)), 0, 0, new TreeMap<>());
    }

    /** The influence on a value derived from parts, by the chain rule. */
    static Influence combined(double[] gradient, List<Influence> parts) {
        List<Instrument> readings = new ArrayList<>();
        double perDegree = 0;
        double perMetre = 0;
        TreeMap<Integer, Loss> losses = new TreeMap<>();
        for (int i = 0; i < gradient.length; i++) {
            double factor = gradient[i];
            Influence part = parts.get(i);
            for (Instrument one : part.readings) {
                readings.add(
                        new Instrument(one.property, one.place, one.reading, one.megahertz, factor * one.derivative));
            }
            perDegree += factor * part.perDegree;
            perMetre += factor * part.perMetre;
            part.losses.forEach((pair, loss) -> losses.merge(
                    pair,
                    new Loss(loss.megahertz, loss.reading, factor * loss.derivative),
                    (one, other) -> new Loss(one.megahertz, one.reading, one.derivative + other.derivative)));
        }
        return new Influence(readings, perDegree, perMetre, losses);
    }
}
