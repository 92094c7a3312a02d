package dev.reelproof.quantity;

import static javax.measure.MetricPrefix.GIGA;
import static javax.measure.MetricPrefix.KILO;
import static javax.measure.MetricPrefix.MEGA;
import static javax.measure.MetricPrefix.MICRO;
import static javax.measure.MetricPrefix.MILLI;
import static javax.measure.MetricPrefix.NANO;
import static javax.measure.MetricPrefix.PICO;
import static tech.units.indriya.unit.Units.FARAD;
import static tech.units.indriya.unit.Units.HERTZ;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.NEWTON;
import static tech.units.indriya.unit.Units.OHM;
import static tech.units.indriya.unit.Units.PASCAL;
import static tech.units.indriya.unit.Units.SECOND;
import static tech.units.indriya.unit.Units.SIEMENS;
import static tech.units.indriya.unit.Units.VOLT;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import javax.measure.IncommensurableException;
import javax.measure.Unit;

/**
 * The closed list of unit symbols that the boundary accepts, each with its factor to the base unit of its kind.
 *
 * <p>Base units: ohm, pF, dB, ns, MHz, percent, count, mm, MPa, N, kg, kV, µS. The factors are exact by definition (foot 0.3048 m,
 * pound 0.45359237 kg, standard gravity 9.80665 m/s²: the international yard and pound agreement of 1959 and the SI
 * Brochure, from memory).
 */
final class Units {
    static final double MILLIMETRES_PER_METRE = 1000;

    private static final double METRES_PER_FOOT = 0.3048;
    private static final double METRES_PER_MILE = 1609.344;
    private static final double METRES_PER_INCH = 0.0254;
    private static final double KILOGRAMS_PER_POUND = 0.45359237;
    private static final double STANDARD_GRAVITY = 9.80665;
    private static final double NEWTONS_PER_POUND_FORCE = KILOGRAMS_PER_POUND * STANDARD_GRAVITY;
    private static final double PASCALS_PER_PSI = NEWTONS_PER_POUND_FORCE / (METRES_PER_INCH * METRES_PER_INCH);

    /** A symbol's kind and its factor to the base unit of that kind. */
    record Symbol(Kind kind, double toBase) {}

    private static final Map<Kind, Unit<?>> BASE = new EnumMap<>(Map.of(
            Kind.RESISTANCE, OHM,
            Kind.CONDUCTANCE, MICRO(SIEMENS),
            Kind.CAPACITANCE, PICO(FARAD),
            Kind.TIME, NANO(SECOND),
            Kind.FREQUENCY, MEGA(HERTZ),
            Kind.LENGTH, MILLI(METRE),
            Kind.STRESS, MEGA(PASCAL),
            Kind.FORCE, NEWTON,
            Kind.MASS, KILOGRAM,
            Kind.VOLTAGE, KILO(VOLT)));

    private static final Map<String, Symbol> SYMBOLS = new LinkedHashMap<>();

    static {
        add(Kind.RESISTANCE, OHM, "ohm", "Ω", "Ω", "ohms");
        add(Kind.RESISTANCE, MILLI(OHM), "mohm", "milliohm", "mΩ", "mΩ");
        add(Kind.RESISTANCE, KILO(OHM), "kohm", "kilohm", "kΩ", "kΩ");
        add(Kind.RESISTANCE, MEGA(OHM), "megohm", "Mohm", "MΩ", "MΩ");
        add(Kind.RESISTANCE, GIGA(OHM), "gigohm", "Gohm", "GΩ", "GΩ");
        add(Kind.CAPACITANCE, FARAD, "F");
        add(Kind.CAPACITANCE, MICRO(FARAD), "µF", "μF", "uF");
        add(Kind.CAPACITANCE, NANO(FARAD), "nF");
        add(Kind.CAPACITANCE, PICO(FARAD), "pF");
        add(Kind.LEVEL, 1, "dB");
        add(Kind.TIME, SECOND, "s");
        add(Kind.TIME, MILLI(SECOND), "ms");
        add(Kind.TIME, MICRO(SECOND), "µs", "μs", "us");
        add(Kind.TIME, NANO(SECOND), "ns");
        add(Kind.TIME, PICO(SECOND), "ps");
        add(Kind.FREQUENCY, HERTZ, "Hz");
        add(Kind.FREQUENCY, KILO(HERTZ), "kHz");
        add(Kind.FREQUENCY, MEGA(HERTZ), "MHz");
        add(Kind.FREQUENCY, GIGA(HERTZ), "GHz");
        add(Kind.RATIO, 1, "%", "percent");
        add(Kind.COUNT, 1, "count");
        add(Kind.LENGTH, METRE, "m");
        add(Kind.LENGTH, KILO(METRE), "km");
        add(Kind.LENGTH, MILLI(METRE), "mm");
        add(Kind.LENGTH, METRE.multiply(METRES_PER_FOOT), "ft");
        add(Kind.LENGTH, METRE.multiply(METRES_PER_FOOT * 1000), "kft");
        add(Kind.LENGTH, METRE.multiply(METRES_PER_MILE), "mile", "mi");
        add(Kind.LENGTH, METRE.multiply(METRES_PER_INCH), "in");
        add(Kind.LENGTH, METRE.multiply(METRES_PER_INCH / 1000), "mil");
        add(Kind.STRESS, PASCAL, "Pa");
        add(Kind.STRESS, KILO(PASCAL), "kPa");
        add(Kind.STRESS, MEGA(PASCAL), "MPa", "N/mm²");
        add(Kind.STRESS, PASCAL.multiply(PASCALS_PER_PSI), "psi");
        add(Kind.FORCE, NEWTON, "N");
        add(Kind.FORCE, KILO(NEWTON), "kN");
        add(Kind.FORCE, NEWTON.multiply(NEWTONS_PER_POUND_FORCE), "lbf");
        add(Kind.MASS, KILOGRAM, "kg");
        add(Kind.MASS, KILOGRAM.multiply(0.001), "g");
        add(Kind.MASS, KILOGRAM.multiply(1000), "t");
        add(Kind.MASS, KILOGRAM.multiply(KILOGRAMS_PER_POUND), "lb");
        add(Kind.VOLTAGE, VOLT, "V");
        add(Kind.VOLTAGE, KILO(VOLT), "kV");
        add(Kind.CONDUCTANCE, SIEMENS, "S", "mho");
        add(Kind.CONDUCTANCE, MILLI(SIEMENS), "mS");
        add(Kind.CONDUCTANCE, MICRO(SIEMENS), "µS", "μS", "uS", "micromho", "µmho", "μmho");
        add(Kind.CONDUCTANCE, NANO(SIEMENS), "nS");
    }

    private Units() {}

    private static void add(Kind kind, Unit<?> unit, String... symbols) {
        try {
            add(kind, unit.getConverterToAny(BASE.get(kind)).convert(1.0), symbols);
        } catch (IncommensurableException e) {
            throw new IllegalStateException("unit table: " + symbols[0] + " is not a unit of " + kind.words(), e);
        }
    }

    private static void add(Kind kind, double toBase, String... symbols) {
        for (String symbol : symbols) {
            SYMBOLS.put(symbol, new Symbol(kind, toBase));
        }
    }

    /**
     * Looks a symbol up; symbols are case-sensitive, as the SI's are.
     *
     * @throws IllegalArgumentException when it is not in the list
     */
    static Symbol symbol(String text) {
        Symbol symbol = SYMBOLS.get(text.trim());
        if (symbol == null) {
            throw new IllegalArgumentException(
                    "unknown unit '" + text + "'; known units: " + String.join(", ", SYMBOLS.keySet()));
        }
        return symbol;
    }

    /** The value in the base unit of the kind. */
    static double toBase(double value, String unit, Kind kind) {
        Symbol symbol = SYMBOLS.get(unit.trim());
        if (symbol == null || symbol.kind() != kind) {
            throw new IllegalArgumentException("unknown unit of " + kind.words() + " '" + unit + "'; use one of "
                    + SYMBOLS.entrySet().stream()
                            .filter(entry -> entry.getValue().kind() == kind)
                            .map(Map.Entry::getKey)
                            .collect(Collectors.joining(", ")));
        }
        return value * symbol.toBase();
    }
}
