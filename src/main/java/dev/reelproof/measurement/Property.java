package dev.reelproof.measurement;

import static dev.reelproof.measurement.Site.COMBINATION;
import static dev.reelproof.measurement.Site.CONDUCTOR;
import static dev.reelproof.measurement.Site.ORDERED_COMBINATION;
import static dev.reelproof.measurement.Site.PAIR;
import static dev.reelproof.measurement.Site.REEL;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A measurable property of a cable, under the trade's name for it.
 *
 * <p>Each has one canonical unit, in which its values are held once they are past the intake, and the sites at which it is
 * measured.
 */
public enum Property {
    CONDUCTOR_RESISTANCE("ohm", Form.SCALAR, CONDUCTOR),
    RESISTANCE_UNBALANCE("%", Form.SCALAR, PAIR),
    RESISTANCE_UNBALANCE_BETWEEN_PAIRS("%", Form.SCALAR, COMBINATION),
    MUTUAL_CAPACITANCE("nF", Form.SCALAR, PAIR),
    CAPACITANCE_UNBALANCE_PAIR_TO_PAIR("pF", Form.SCALAR, COMBINATION),
    CAPACITANCE_UNBALANCE_TO_GROUND("pF", Form.SCALAR, PAIR),
    INSERTION_LOSS("dB", Form.SWEEP, PAIR),
    NEXT("dB", Form.SWEEP_AT_AN_END, COMBINATION),
    PS_NEXT("dB", Form.SWEEP_AT_AN_END, PAIR),
    ACR_F("dB", Form.SWEEP_AT_AN_END, ORDERED_COMBINATION),
    PS_ACR_F("dB", Form.SWEEP_AT_AN_END, PAIR),
    FEXT("dB", Form.SWEEP_AT_ANY_END, COMBINATION),
    RETURN_LOSS("dB", Form.SWEEP_AT_AN_END, PAIR),
    INPUT_IMPEDANCE("ohm", Form.SWEEP_AT_AN_END, PAIR),
    CHARACTERISTIC_IMPEDANCE("ohm", Form.SWEEP_AT_AN_END, PAIR),
    STRUCTURAL_RETURN_LOSS("dB", Form.SWEEP_AT_AN_END, PAIR),
    TCL("dB", Form.SWEEP_AT_AN_END, PAIR),
    TCTL("dB", Form.SWEEP_AT_AN_END, PAIR),
    EL_TCTL("dB", Form.SWEEP_AT_AN_END, PAIR),
    PROPAGATION_DELAY("ns", Form.SWEEP, PAIR),
    GROUP_DELAY("ns", Form.SWEEP, PAIR),
    DELAY_SKEW("ns", Form.SCALAR_OR_SWEEP, REEL),
    INSULATION_RESISTANCE("megohm", Form.SCALAR, REEL, PAIR, CONDUCTOR),
    DIELECTRIC_WITHSTAND("count", Form.SCALAR, REEL),
    SPARK_FAULTS("count", Form.SCALAR, REEL),
    CONDUCTOR_ELONGATION("%", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    INSULATION_TENSILE_STRENGTH("MPa", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    INSULATION_ELONGATION("%", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    INSULATION_COMPRESSION("N", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    STRIP_FORCE("N", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    JACKET_THICKNESS("mm", Form.SAMPLES, REEL),
    JACKET_TENSILE_STRENGTH("MPa", Form.SAMPLES, REEL),
    JACKET_ELONGATION("%", Form.SAMPLES, REEL),
    OVERALL_DIAMETER("mm", Form.SAMPLES, REEL),
    LOOP_RESISTANCE("ohm", Form.SCALAR, PAIR),
    RESISTANCE_UNBALANCE_DIRECTION("%", Form.SCALAR, REEL),
    MUTUAL_CONDUCTANCE("µS", Form.SCALAR, PAIR),
    INSULATION_FAULTS("count", Form.SCALAR, REEL),
    CONTINUITY_FAULTS("count", Form.SCALAR, REEL),
    INSULATED_CONDUCTOR_DIAMETER("mm", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    INSULATION_SHRINKBACK("mm", Form.SAMPLES, REEL, PAIR, CONDUCTOR),
    INSULATION_COLD_BEND_FAILURES("count", Form.SCALAR, REEL),
    INNER_JACKET_THICKNESS("mm", Form.SAMPLES, REEL),
    INNER_JACKET_ECCENTRICITY("%", Form.SAMPLES, REEL),
    JACKET_ECCENTRICITY("%", Form.SAMPLES, REEL),
    JACKET_SHRINKBACK("%", Form.SAMPLES, REEL),
    JACKET_IMPACT_FAILURES("count", Form.SCALAR, REEL),
    JACKET_TENSILE_RETENTION("%", Form.SAMPLES, REEL),
    JACKET_ELONGATION_RETENTION("%", Form.SAMPLES, REEL),
    SHIELD_BOND("N", Form.SAMPLES, REEL),
    BREAKING_STRENGTH("N", Form.SAMPLES, REEL),
    LENGTH_MARKING_ERROR("%", Form.SCALAR, REEL);

    private enum Form {
        SCALAR,
        SWEEP,
        SWEEP_AT_AN_END,
        SWEEP_AT_ANY_END,
        SCALAR_OR_SWEEP,
        SAMPLES
    }

    private static final Map<String, Property> BY_NAME =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Property::id, Function.identity()));

    private final String canonicalUnit;
    private final Form form;
    private final Set<Site> sites;

    Property(String canonicalUnit, Form form, Site... sites) {
        this.canonicalUnit = canonicalUnit;
        this.form = form;
        this.sites = EnumSet.copyOf(Arrays.asList(sites));
    }

    /**
     * The property of that name.
     *
     * @throws IllegalArgumentException when there is none
     */
    public static Property named(String id) {
        Property property = BY_NAME.get(id);
        if (property == null) {
            throw new IllegalArgumentException("unknown property '" + id + "'; known properties: "
                    + Arrays.stream(values()).map(Property::id).collect(Collectors.joining(", ")));
        }
        return property;
    }

    /** The trade's name in kebab case, as in the HTTP contract: {@code conductor-resistance}. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The unit in which values are held, without any length: ohm, nF, pF, dB, ns, megohm, %, count, MPa, N, mm or µS. */
    public String canonicalUnit() {
        return canonicalUnit;
    }

    /** The sites at which it may be measured. */
    public Set<Site> sites() {
        return sites;
    }

    /** Whether it is measured against frequency. */
    public boolean isSweep() {
        return form != Form.SCALAR && form != Form.SAMPLES;
    }

    /** Whether it is measured as a single value. */
    public boolean isScalar() {
        return form == Form.SCALAR || form == Form.SCALAR_OR_SWEEP || form == Form.SAMPLES;
    }

    /** Whether each sweep may belong to an end of the cable. */
    public boolean hasEnds() {
        return form == Form.SWEEP_AT_AN_END || form == Form.SWEEP_AT_ANY_END;
    }

    /** Whether each sweep must say its end; where it must, a requirement needs the near end. */
    public boolean needsEnd() {
        return form == Form.SWEEP_AT_AN_END;
    }

    /** The properties that it can be derived from; empty when it is measured as such alone. */
    public Set<Property> parts() {
        return switch (this) {
            case RESISTANCE_UNBALANCE,
                    RESISTANCE_UNBALANCE_BETWEEN_PAIRS,
                    RESISTANCE_UNBALANCE_DIRECTION,
                    LOOP_RESISTANCE -> EnumSet.of(CONDUCTOR_RESISTANCE);
            case PS_NEXT -> EnumSet.of(NEXT);
            case PS_ACR_F -> EnumSet.of(ACR_F);
            case DELAY_SKEW -> EnumSet.of(PROPAGATION_DELAY);
            default -> EnumSet.noneOf(Property.class);
        };
    }

    /** Whether several samples of one site may be given. */
    public boolean isSampled() {
        return form == Form.SAMPLES;
    }

    @Override
    public String toString() {
        return id();
    }
}
