package dev.reelproof.correction;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The correction laws by the names that limit sets call them. */
public final class Laws {
    private static final String COEFFICIENT = "coefficient";
    private static final String TO_40 = "to-40";
    private static final String ABOVE_40 = "above-40";
    private static final String LONGER = "longer";
    private static final String FACTOR = "factor";
    private static final String LOWEST = "lowest";
    private static final String HIGHEST = "highest";

    /** What a law takes; a parameter without a default must be given. */
    private record Parameter(String name, OptionalDouble otherwise, String meaning) {}

    /** The parameters of one law, every one given or by its default. */
    private record Coefficients(Map<String, Double> byName) {
        double of(String name) {
            return Objects.requireNonNull(byName.get(name), name);
        }
    }

    private record Entry(List<Parameter> parameters, Function<Coefficients, CorrectionLaw> law) {}

    private static final Map<String, Entry> LAWS = new LinkedHashMap<>();

    static {
        add(
                CopperTemperature.NAME,
                given -> new CopperTemperature(given.of(COEFFICIENT)),
                required(COEFFICIENT, "per °C, such as 0.00393 for annealed copper"));
        add(
                UnscreenedLossTemperature.NAME,
                given -> new UnscreenedLossTemperature(given.of(TO_40), given.of(ABOVE_40)),
                required(TO_40, "increase per °C up to 40 °C, such as 0.004"),
                required(ABOVE_40, "increase per °C above 40 °C, such as 0.006"));
        add(LinearLength.NAME, given -> new LinearLength());
        add(SquareRootLength.NAME, given -> new SquareRootLength());
        add(
                NearEndCrosstalkLength.NAME,
                given -> new NearEndCrosstalkLength(isYes(given.of(LONGER))),
                new Parameter(LONGER, OptionalDouble.of(0), "0: only below the reference length, 1: above it too"));
        add(FarEndCrosstalkLength.NAME, given -> new FarEndCrosstalkLength());
        add(InsulationResistanceLength.NAME, given -> new InsulationResistanceLength());
        add(HalfLinearLength.NAME, given -> new HalfLinearLength());
        add(
                ScreenedLossTemperature.NAME,
                given -> new ScreenedLossTemperature(given.of(COEFFICIENT)),
                required(COEFFICIENT, "increase per °C, such as 0.002"));
        add(
                CableLossTemperature.NAME,
                given -> new CableLossTemperature(given.of(COEFFICIENT), given.of(LOWEST), given.of(HIGHEST)),
                required(COEFFICIENT, "increase per °C, such as 0.0035"),
                required(LOWEST, "lowest temperature that the coefficient holds at, °C"),
                required(HIGHEST, "highest temperature that the coefficient holds at, °C"));
        add(
                ResistanceLossTemperature.NAME,
                given -> new ResistanceLossTemperature(given.of(COEFFICIENT)),
                required(COEFFICIENT, "of the resistance, per °C, such as 0.00393 for annealed copper"));
        add(
                InsulationResistanceTemperature.NAME,
                given -> new InsulationResistanceTemperature(given.of(FACTOR), given.of(LOWEST), given.of(HIGHEST)),
                required(FACTOR, "how many times the resistance falls for 1 °C more, such as 1.05"),
                required(LOWEST, "lowest temperature that the factor holds at, °C"),
                required(HIGHEST, "highest temperature that the factor holds at, °C"));
    }

    private static final String OF_LENGTH = "-length";

    private Laws() {}

    private static void add(String name, Function<Coefficients, CorrectionLaw> law, Parameter... parameters) {
        LAWS.put(name, new Entry(List.of(parameters), law));
    }

    private static Parameter required(String name, String meaning) {
        return new Parameter(name, OptionalDouble.empty(), meaning);
    }

    private static boolean isYes(double value) {
        if (value == 1) {
            return true;
        }
        if (value == 0) {
            return false;
        }
        throw new IllegalArgumentException("the parameter '" + LONGER + "' of " + NearEndCrosstalkLength.NAME + " is "
                + PlainDecimal.of(value) + "; it must be 0 (only below the reference length) or 1 (above it too)");
    }

    /**
     * The law of that name with its coefficients.
     *
     * @param name as in a limit set, such as {@code copper-temperature}
     * @param parameters coefficients by name, in the units that the law's class states
     * @throws IllegalArgumentException when the law or a parameter is unknown, a parameter is missing, or a value is impossible
     */
    public static CorrectionLaw named(String name, Map<String, Double> parameters) {
        Entry entry = entry(name);
        List<String> known = parameters(name);
        Map<String, Double> given = new TreeMap<>(parameters);
        for (String parameter : given.keySet()) {
            if (!known.contains(parameter)) {
                throw new IllegalArgumentException("the correction law " + name + " has no parameter '" + parameter
                        + "'; " + (known.isEmpty() ? "it takes none" : "it takes " + String.join(", ", known)));
            }
        }
        for (Parameter parameter : entry.parameters()) {
            if (given.get(parameter.name()) == null) {
                given.put(
                        parameter.name(),
                        parameter
                                .otherwise()
                                .orElseThrow(() -> new IllegalArgumentException("the correction law " + name
                                        + " needs the parameter '" + parameter.name() + "' (" + parameter.meaning()
                                        + ")")));
            }
        }
        return entry.law().apply(new Coefficients(given));
    }

    /** Whether a law refers values to a length: such laws, and no others, have names that end in {@code -length}. */
    public static boolean isOfLength(String name) {
        return name.endsWith(OF_LENGTH);
    }

    /** The names of all laws, in a fixed order. */
    public static List<String> names() {
        return List.copyOf(LAWS.keySet());
    }

    /**
     * The names of the parameters that a law takes, in a fixed order.
     *
     * @throws IllegalArgumentException when the law is unknown
     */
    public static List<String> parameters(String name) {
        return entry(name).parameters().stream().map(Parameter::name).toList();
    }

    private static Entry entry(String name) {
        Entry entry = LAWS.get(name);
        if (entry == null) {
            throw new IllegalArgumentException("unknown correction law '" + name + "'; known laws: "
                    + LAWS.keySet().stream().collect(Collectors.joining(", ")));
        }
        return entry;
    }
}
