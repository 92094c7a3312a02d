package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.digest.Sha256;
import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Formulas;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.Interpolation;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Source;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiConsumer;

/**
 * Reads a limit set file, strictly: YAML, then the published JSON Schema, then the sense of what is written.
 *
 * <p>Every fault names the file, the line and the path. The faults of one stage are all reported; a later stage is reached only when
 * the one before found none.
 */
public final class LimitSetReader {
    private static final String PERCENT = "%";

    private final LimitSetSchema schema = new LimitSetSchema();
    private final BiConsumer<String, Map<String, Double>> lawCheck;

    /**
     * A reader.
     *
     * @param lawCheck is given each correction law's name and coefficients, and throws an {@link IllegalArgumentException} that says
     *     what is wrong with them when something is
     */
    public LimitSetReader(BiConsumer<String, Map<String, Double>> lawCheck) {
        this.lawCheck = lawCheck;
    }

    /**
     * The limit set of a file.
     *
     * @param fileName for messages, such as {@code limits/category-6-cable.yaml}
     * @param text the whole file
     * @throws LimitSetException with every fault found
     */
    public LimitSet read(String fileName, String text) {
        FaultList faults = new FaultList(fileName);
        JsonNode root = YamlDocument.parse(text, faults).root();
        if (faults.isEmpty()) {
            schema.check(root, faults);
        }
        faults.throwIfAny();
        LimitSet set = new Sense(faults).set(root, text);
        faults.throwIfAny();
        return set;
    }

    /** Reads what the schema has let pass; a value that makes no sense becomes a fault and null. */
    private final class Sense {
        private final FaultList faults;

        Sense(FaultList faults) {
            this.faults = faults;
        }

        LimitSet set(JsonNode root, String text) {
            JsonNode reference = root.path("reference");
            JsonNode grid = root.path("sweep-grid");
            LocalDate effective = date(root.path("effective").asText(), "/effective");
            PairCount pairs = pairs(root, "", "pairs").orElse(null);
            Temperature temperature = temperature(reference.path("temperature").asText(), "/reference/temperature");
            Length length = faults.attempt(
                    "/reference/length", () -> quantity(reference.path("length").asText(), Length::of));
            GridRule gridRule = faults.attempt(
                    "/sweep-grid",
                    () -> new GridRule(
                            grid.path("widest-step-decades").asDouble(),
                            quantity(grid.path("widest-step").asText(), FrequencyGrid::megahertz)));
            List<Requirement> requirements = requirements(root.path("requirements"), pairs);
            Optional<Allowance> allowance = root.has("allowance")
                    ? Optional.ofNullable(allowance(root.path("allowance"), requirements))
                    : Optional.empty();
            DecisionRule decisionRule = decisionRule(root, "").orElse(DecisionRule.SIMPLE_ACCEPTANCE);
            List<LimitSet.LeftOut> leftOut = new ArrayList<>();
            root.path("left-out")
                    .forEach(entry -> leftOut.add(new LimitSet.LeftOut(
                            entry.path("what").asText(), entry.path("why").asText())));
            NetworkTerms terms = networkTerms(root.path("network"));
            if (!faults.isEmpty()) {
                return null;
            }
            return new LimitSet(
                    root.path("id").asText(),
                    root.path("revision").asInt(),
                    effective,
                    root.path("title").asText(),
                    pairs,
                    temperature,
                    length,
                    word(RoundingRule.class, root.path("rounding").asText()),
                    gridRule,
                    requirements,
                    allowance,
                    leftOut,
                    terms,
                    Sha256.hex(text),
                    text,
                    decisionRule);
        }

        private Optional<DecisionRule> decisionRule(JsonNode entry, String place) {
            if (!entry.has("decision-rule")) {
                return Optional.empty();
            }
            JsonNode rule = entry.path("decision-rule");
            String where = place + "/decision-rule";
            if (rule.path("rule").asText().equals("simple-acceptance")) {
                refuse(rule, where, "multiple", "simple acceptance has no guard band, so no multiple of U");
                refuse(rule, where, "outcomes", "simple acceptance has no guard band; its outcomes are pass and fail");
                return Optional.of(DecisionRule.SIMPLE_ACCEPTANCE);
            }
            if (!rule.has("multiple") || !rule.has("outcomes")) {
                faults.add(
                        where,
                        "a guard band needs its width as a multiple of U, such as 'multiple: 1.0', and 'outcomes: two' or"
                                + " 'outcomes: four'");
                return Optional.empty();
            }
            DecisionRule.Form form = rule.path("outcomes").asText().equals("two")
                    ? DecisionRule.Form.GUARD_BAND_TWO
                    : DecisionRule.Form.GUARD_BAND_FOUR;
            return Optional.of(new DecisionRule(form, rule.path("multiple").asDouble()));
        }

        private NetworkTerms networkTerms(JsonNode entry) {
            NetworkTerms usual = NetworkTerms.USUAL;
            return faults.attempt(
                    "/network",
                    () -> new NetworkTerms(
                            ohm(entry.path("differential"), usual.differentialOhm()),
                            ohm(entry.path("common"), usual.commonOhm()),
                            entry.path("acr-f-loss").asText().equals("disturbing")));
        }

        private static double ohm(JsonNode text, double usual) {
            return text.isMissingNode() ? usual : quantity(text.asText(), (value, unit) -> value);
        }

        private List<Requirement> requirements(JsonNode entries, PairCount setPairs) {
            List<Requirement> requirements = new ArrayList<>();
            for (int i = 0; i < entries.size(); i++) {
                String place = "/requirements/" + i;
                for (JsonNode entry : oneOrOneForEachPoint(entries.get(i), place)) {
                    Requirement requirement = requirement(entry, place);
                    if (requirement != null) {
                        checkPairs(requirement, place, setPairs, requirements);
                        requirements.add(requirement);
                    }
                }
            }
            return requirements;
        }

        /** The entry; a table without interpolation stands for one requirement at each of its frequencies. */
        private List<JsonNode> oneOrOneForEachPoint(JsonNode entry, String place) {
            JsonNode table = entry.path("table");
            if (Interpolation.NONE != interpolation(table)) {
                return List.of(entry);
            }
            if (!isSoundTable(entry, place)) {
                return List.of();
            }
            List<JsonNode> requirements = new ArrayList<>();
            for (JsonNode point : table.path("points")) {
                ObjectNode one = entry.deepCopy();
                one.remove("table");
                one.put("id", idOf(entry) + "-at-" + Formulas.number(frequency(point.path("at"))) + "-mhz");
                one.set("at", point.path("at"));
                one.set("value", point.path("value"));
                requirements.add(one);
            }
            return requirements;
        }

        private static Interpolation interpolation(JsonNode table) {
            return table.has("interpolation")
                    ? word(Interpolation.class, table.path("interpolation").asText())
                    : null;
        }

        /** Whether a table stands alone and its frequencies rise; what is wrong with it is noted. */
        private boolean isSoundTable(JsonNode entry, String place) {
            int faultsBefore = faults.size();
            for (String other : List.of("value", "segments", "at")) {
                refuse(entry, place, other, "the limit is given as a table already; leave out '" + other + "'");
            }
            if (entry.path("limit").asText().equals("between")) {
                faults.add(
                        place + "/limit",
                        "a table gives one figure a frequency; write a two-sided one as two requirements");
            }
            JsonNode points = entry.path("table").path("points");
            double before = 0;
            for (int i = 0; i < points.size(); i++) {
                double megahertz = frequency(points.get(i).path("at"));
                if (!(megahertz > before)) {
                    faults.add(
                            place + "/table/points/" + i + "/at",
                            "the frequency " + points.get(i).path("at").asText()
                                    + (i == 0
                                            ? " must be above 0"
                                            : " must be above that of the point before, "
                                                    + points.get(i - 1)
                                                            .path("at")
                                                            .asText()));
                }
                before = megahertz;
            }
            if (points.size() < 2 && interpolation(entry.path("table")) != Interpolation.NONE) {
                faults.add(place + "/table/points", "nothing lies between fewer than two points; give two or more");
            }
            return faults.size() == faultsBefore;
        }

        private static String idOf(JsonNode entry) {
            Property property = Property.named(entry.path("property").asText());
            Statistic statistic = word(Statistic.class, entry.path("statistic").asText(Statistic.INDIVIDUAL.word()));
            return entry.path("id")
                    .asText(property.id() + (statistic == Statistic.INDIVIDUAL ? "" : "-" + statistic.word()));
        }

        private void checkPairs(
                Requirement requirement, String place, PairCount setPairs, List<Requirement> requirementsBefore) {
            requirement.pairs().filter(pairs -> setPairs != null).ifPresent(pairs -> {
                if (!(setPairs.holds(pairs.from()) && setPairs.holds(pairs.to()))) {
                    faults.add(
                            place + "/pairs",
                            "the requirement is for " + pairs.from() + " to " + pairs.to()
                                    + " pairs, but the set is for " + setPairs.from() + " to " + setPairs.to());
                }
            });
            for (Requirement before : requirementsBefore) {
                if (before.id().equals(requirement.id()) && meet(before.pairs(), requirement.pairs())) {
                    faults.add(
                            place,
                            "there is another requirement '" + requirement.id()
                                    + "' for the same number of pairs; give one of them an id of its own, or both pairs"
                                    + " that do not overlap");
                    return;
                }
            }
        }

        private static boolean meet(Optional<PairCount> one, Optional<PairCount> other) {
            return one.isEmpty()
                    || other.isEmpty()
                    || (one.get().from() <= other.get().to()
                            && other.get().from() <= one.get().to());
        }

        private Requirement requirement(JsonNode entry, String place) {
            int faultsBefore = faults.size();
            Property property = Property.named(entry.path("property").asText());
            Statistic statistic = word(Statistic.class, entry.path("statistic").asText(Statistic.INDIVIDUAL.word()));
            Scope scope = word(Scope.class, entry.path("scope").asText(Scope.CORE.word()));
            if (entry.has("table") && !isSoundTable(entry, place)) {
                return null;
            }
            Domain domain = domain(entry, place, property);
            Limit limit = limit(entry, place);
            ReadingUnit unit = unit(entry, place, property, statistic);
            List<LawSpec> laws = laws(entry.path("corrections"), place);
            checkDenominator(entry, place, property);
            checkScope(entry, place, property, scope);
            Optional<PairCount> pairs = pairs(entry, place, "pairs");
            Optional<PairCount> unitPairs = pairs(entry, place, "unit-pairs");
            Optional<TemperatureWindow> window = temperatureWindow(entry, place, property);
            Particulars particulars = particulars(entry, place, property, statistic, unit);
            Optional<DecisionRule> decisionRule = decisionRule(entry, place);
            if (faults.size() > faultsBefore) {
                return null;
            }
            return new Requirement(
                    idOf(entry),
                    property,
                    statistic,
                    limit,
                    domain,
                    unit,
                    laws,
                    text(entry, "denominator"),
                    scope,
                    pairs,
                    unitPairs,
                    window,
                    source(entry),
                    text(entry, "condition"),
                    particulars,
                    decisionRule);
        }

        private Particulars particulars(
                JsonNode entry, String place, Property property, Statistic statistic, ReadingUnit unit) {
            boolean ofAPair = property.sites().contains(Site.PAIR);
            OptionalDouble roundTrip = OptionalDouble.empty();
            if (entry.has("least-round-trip-loss")) {
                if (!(ofAPair && property.hasEnds())) {
                    faults.add(
                            place + "/least-round-trip-loss",
                            property
                                    + " is not of a pair seen from an end; only such a value, as return loss, depends on"
                                    + " what comes back from the other end");
                }
                roundTrip = OptionalDouble.of(
                        quantity(entry.path("least-round-trip-loss").asText(), (value, dB) -> value));
            }
            return new Particulars(
                    entry.path("required").asBoolean(true),
                    roundTrip,
                    testedLength(entry, place, property, unit),
                    sampling(entry, place, property, statistic),
                    each(entry, place, property, statistic));
        }

        private Optional<Particulars.TestedLength> testedLength(
                JsonNode entry, String place, Property property, ReadingUnit unit) {
            if (!entry.has("tested-length")) {
                return Optional.empty();
            }
            if (property != Property.INSULATION_FAULTS
                    || (unit != null && unit.referredTo().isEmpty())) {
                faults.add(
                        place + "/tested-length",
                        "only insulation-faults per conductor length, in a unit such as count/3000 m, have a tested length");
            }
            JsonNode tested = entry.path("tested-length");
            return Optional.ofNullable(faults.attempt(
                    place + "/tested-length",
                    () -> new Particulars.TestedLength(
                            quantity(tested.path("least").asText(), Length::of),
                            quantity(tested.path("least-to-reject").asText(), Length::of))));
        }

        private Optional<Particulars.Sampling> sampling(
                JsonNode entry, String place, Property property, Statistic statistic) {
            if (!entry.has("sampling")) {
                return Optional.empty();
            }
            boolean onePerPair = property.sites().equals(Set.of(Site.PAIR)) && !property.isSweep();
            if (!(onePerPair && (statistic == Statistic.MEAN || statistic == Statistic.RMS_DEVIATION))) {
                faults.add(
                        place + "/sampling",
                        "a sample of pairs can stand for all in a mean or an rms-deviation only, and only of a property that has one"
                                + " value a pair");
            }
            JsonNode sampling = entry.path("sampling");
            return Optional.ofNullable(faults.attempt(
                    place + "/sampling",
                    () -> new Particulars.Sampling(
                            sampling.path("pairs").asInt(),
                            constant(sampling.path("lower")),
                            constant(sampling.path("upper")))));
        }

        private Optional<Particulars.Each> each(JsonNode entry, String place, Property property, Statistic statistic) {
            boolean counted = statistic == Statistic.PERCENT_OF_PAIRS;
            if (counted != entry.has("each")) {
                faults.add(
                        place + (counted ? "" : "/each"),
                        counted
                                ? "a percentage of pairs needs 'each': the limit that a pair must meet to be counted"
                                : "only a percentage of pairs counts pairs by what each meets");
                return Optional.empty();
            }
            if (!counted) {
                return Optional.empty();
            }
            if (property.sites().equals(Set.of(Site.REEL))) {
                faults.add(place + "/statistic", property + " is of the whole reel; there are no pairs to count");
            }
            JsonNode each = entry.path("each");
            Bound.Constant bound = constant(each.path("value"));
            ReadingUnit unit = unit(each, place + "/each", property, Statistic.INDIVIDUAL);
            return unit == null
                    ? Optional.empty()
                    : Optional.of(new Particulars.Each(
                            each.path("limit").asText().equals("at-most") ? Limit.atMost(bound) : Limit.atLeast(bound),
                            unit));
        }

        private Domain domain(JsonNode entry, String place, Property property) {
            boolean curve = entry.has("segments") || entry.has("table");
            boolean spot = entry.has("at");
            if (curve && spot) {
                faults.add(place, "either 'at' (one frequency) or 'segments' (a range), not both");
                return null;
            }
            if ((curve || spot) && !property.isSweep()) {
                faults.add(
                        place + (!curve ? "/at" : entry.has("table") ? "/table" : "/segments"),
                        property + " is not measured against frequency; give a value alone");
                return null;
            }
            if (!curve && !spot && !property.isScalar()) {
                faults.add(
                        place,
                        property + " is measured against frequency; give 'segments' (a range) or 'at' (one frequency)");
                return null;
            }
            if (spot) {
                Double megahertz = positiveFrequency(entry.path("at"), place + "/at");
                return megahertz == null ? null : new Domain.Spot(megahertz);
            }
            if (curve) {
                Bound.Curve bound = entry.has("table")
                        ? interpolated(entry.path("table"))
                        : curve(entry.path("segments"), place + "/segments", false);
                return bound == null ? null : new Domain.Range(bound.from(), bound.to());
            }
            return new Domain.NoFrequency();
        }

        private Limit limit(JsonNode entry, String place) {
            String sense = entry.path("limit").asText();
            if (sense.equals("between")) {
                return between(entry, place);
            }
            refuse(entry, place, "lower", "only a limit 'between' has lower and upper; '" + sense + "' has a value");
            refuse(entry, place, "upper", "only a limit 'between' has lower and upper; '" + sense + "' has a value");
            if (entry.has("table")) {
                Bound.Curve bound = interpolated(entry.path("table"));
                return sense.equals("at-most") ? Limit.atMost(bound) : Limit.atLeast(bound);
            }
            if (entry.has("value") == entry.has("segments")) {
                faults.add(
                        place,
                        "a limit '" + sense + "' needs a value or segments, "
                                + (entry.has("value") ? "not both" : "and has neither"));
                return null;
            }
            Bound bound = entry.has("value")
                    ? constant(entry.path("value"))
                    : curve(entry.path("segments"), place + "/segments", true);
            if (bound == null) {
                return null;
            }
            return sense.equals("at-most") ? Limit.atMost(bound) : Limit.atLeast(bound);
        }

        private Limit between(JsonNode entry, String place) {
            refuse(entry, place, "value", "a limit 'between' has lower and upper, not a value");
            refuse(
                    entry,
                    place,
                    "segments",
                    "a limit 'between' has lower and upper; write a two-sided curve as two requirements");
            if (!entry.has("lower") || !entry.has("upper")) {
                faults.add(place, "a limit 'between' needs lower and upper");
                return null;
            }
            Bound.Constant lower = constant(entry.path("lower"));
            Bound.Constant upper = constant(entry.path("upper"));
            if (!(lower.value() <= upper.value())) {
                faults.add(
                        place + "/lower",
                        "the lower figure " + entry.path("lower").asText() + " is above the upper figure "
                                + entry.path("upper").asText());
                return null;
            }
            return Limit.between(lower, upper);
        }

        private void refuse(JsonNode entry, String place, String key, String why) {
            if (entry.has(key)) {
                faults.add(place + "/" + key, why);
            }
        }

        /** The figure with the decimal places as written: they are what a value is rounded to. */
        private static Bound.Constant constant(JsonNode number) {
            return new Bound.Constant(
                    number.doubleValue(), Math.max(0, number.decimalValue().scale()));
        }

        /** The lines between the points of a table, which is known to be sound. */
        private static Bound.Curve interpolated(JsonNode table) {
            boolean logarithmic = interpolation(table) == Interpolation.LOG_FREQUENCY;
            List<Segment> lines = new ArrayList<>();
            JsonNode before = null;
            for (JsonNode point : table.path("points")) {
                if (before != null) {
                    lines.add(new Segment.Interpolated(
                            frequency(before.path("at")),
                            frequency(point.path("at")),
                            before.path("value").asDouble(),
                            point.path("value").asDouble(),
                            logarithmic));
                }
                before = point;
            }
            return new Bound.Curve(lines);
        }

        /** The curve, or null; its faults are noted once, though it is read for the domain and for the limit. */
        private Bound.Curve curve(JsonNode entries, String place, boolean noteFaults) {
            FaultList noted = noteFaults ? faults : new FaultList("");
            List<Segment> segments = new ArrayList<>();
            for (int i = 0; i < entries.size(); i++) {
                segments.add(segment(entries.get(i), place + "/" + i, noted));
            }
            if (segments.contains(null)) {
                return null;
            }
            for (int i = 1; i < segments.size(); i++) {
                double end = segments.get(i - 1).to();
                if (segments.get(i).from() != end) {
                    noted.add(
                            place + "/" + i + "/from",
                            "the segment begins at "
                                    + entries.get(i).path("from").asText()
                                    + ", but the one before ends at "
                                    + entries.get(i - 1).path("to").asText()
                                    + "; segments must join without gap or overlap");
                    return null;
                }
            }
            return new Bound.Curve(segments);
        }

        private Segment segment(JsonNode entry, String place, FaultList noted) {
            boolean polynomial =
                    entry.has("constant") || entry.has("sqrt") || entry.has("linear") || entry.has("inverse-sqrt");
            boolean slope = entry.has("at") || entry.has("value") || entry.has("slope-per-decade");
            boolean wholeSlope = entry.has("at") && entry.has("value") && entry.has("slope-per-decade");
            if (polynomial == slope || slope != wholeSlope) {
                noted.add(
                        place,
                        "a segment has either some of constant, sqrt, linear and inverse-sqrt, or all of at, value and"
                                + " slope-per-decade");
                return null;
            }
            double from = frequency(entry.path("from"));
            double to = frequency(entry.path("to"));
            if (polynomial) {
                return noted.attempt(
                        place,
                        () -> new Segment.RootPolynomial(
                                from,
                                to,
                                entry.path("constant").asDouble(),
                                entry.path("sqrt").asDouble(),
                                entry.path("linear").asDouble(),
                                entry.path("inverse-sqrt").asDouble()));
            }
            return noted.attempt(
                    place,
                    () -> new Segment.LogSlope(
                            from,
                            to,
                            frequency(entry.path("at")),
                            entry.path("value").asDouble(),
                            entry.path("slope-per-decade").asDouble()));
        }

        private ReadingUnit unit(JsonNode entry, String place, Property property, Statistic statistic) {
            ReadingUnit unit = faults.attempt(
                    place + "/unit", () -> ReadingUnit.parse(entry.path("unit").asText()));
            boolean ofDeviation = statistic == Statistic.RMS_DEVIATION;
            boolean ofPairs = statistic == Statistic.PERCENT_OF_PAIRS;
            String expected = ofDeviation || ofPairs ? PERCENT : property.canonicalUnit();
            if (unit != null && !unit.numerator().equals(expected)) {
                faults.add(
                        place + "/unit",
                        "the unit '" + unit + "' does not fit "
                                + (ofDeviation
                                        ? "a deviation from the mean"
                                        : ofPairs ? "a percentage of pairs" : property)
                                + "; it must be " + expected
                                + (expected.equals(PERCENT)
                                        ? ""
                                        : ", alone or with a length such as " + expected + "/km"));
            }
            return unit;
        }

        private List<LawSpec> laws(JsonNode entries, String place) {
            List<LawSpec> laws = new ArrayList<>();
            for (int i = 0; i < entries.size(); i++) {
                Map<String, Double> parameters = new LinkedHashMap<>();
                entries.get(i).properties().forEach(field -> {
                    if (!field.getKey().equals("law")) {
                        parameters.put(field.getKey(), field.getValue().doubleValue());
                    }
                });
                LawSpec law = new LawSpec(entries.get(i).path("law").asText(), parameters);
                faults.attempt(place + "/corrections/" + i, () -> {
                    lawCheck.accept(law.name(), law.parameters());
                    return law;
                });
                laws.add(law);
            }
            return laws;
        }

        private void checkDenominator(JsonNode entry, String place, Property property) {
            boolean unbalance = property == Property.RESISTANCE_UNBALANCE
                    || property == Property.RESISTANCE_UNBALANCE_BETWEEN_PAIRS;
            if (unbalance && !entry.has("denominator")) {
                faults.add(
                        place,
                        property + " needs a denominator (minimum, sum or mean): its limit means nothing without");
            }
            if (!unbalance) {
                refuse(entry, place, "denominator", property + " has no denominator; only a resistance unbalance has");
            }
        }

        private void checkScope(JsonNode entry, String place, Property property, Scope scope) {
            boolean combinations = property.sites().contains(Site.COMBINATION)
                    || property.sites().contains(Site.ORDERED_COMBINATION);
            if (scope != Scope.CORE && !combinations) {
                faults.add(
                        place + "/scope",
                        property + " is not of a combination of pairs; only combinations have a scope");
            }
            if (scope == Scope.CORE) {
                refuse(
                        entry,
                        place,
                        "unit-pairs",
                        "the scope is the core; give the scope within-unit, adjacent-units or nonadjacent-units");
            }
        }

        private Optional<TemperatureWindow> temperatureWindow(JsonNode entry, String place, Property property) {
            if (!entry.has("temperature-window")) {
                return Optional.empty();
            }
            JsonNode window = entry.path("temperature-window");
            boolean warmer = window.path("warmer-pass-stands").asBoolean(false);
            if (warmer
                    && !(property == Property.INSULATION_RESISTANCE
                            && entry.path("limit").asText().equals("at-least"))) {
                faults.add(
                        place + "/temperature-window/warmer-pass-stands",
                        "only insulation-resistance is known to fall as it gets warmer, so that a pass above the window stands"
                                + " against a limit at-least");
            }
            Temperature at = temperature(window.path("at").asText(), place + "/temperature-window/at");
            return at == null
                    ? Optional.empty()
                    : Optional.of(new TemperatureWindow(
                            at, quantity(window.path("within").asText(), (value, unit) -> value), warmer));
        }

        private Allowance allowance(JsonNode entry, List<Requirement> requirements) {
            List<Allowance.Step> steps = new ArrayList<>();
            JsonNode stepEntries = entry.path("steps");
            for (int i = 0; i < stepEntries.size(); i++) {
                String place = "/allowance/steps/" + i;
                int mayVary = stepEntries.get(i).path("may-vary").asInt();
                pairs(stepEntries.get(i), place, "pairs").ifPresent(range -> {
                    if (steps.stream().anyMatch(step -> meet(Optional.of(step.pairs()), Optional.of(range)))) {
                        faults.add(place + "/pairs", "the pair counts overlap those of a step before");
                    }
                    steps.add(new Allowance.Step(range, mayVary));
                });
            }
            Map<Property, Bound.Constant> ceilings = new EnumMap<>(Property.class);
            JsonNode ceilingEntries = entry.path("ceilings");
            // A requirement that was refused would make its ceiling seem to be of none.
            for (int i = 0; faults.isEmpty() && i < ceilingEntries.size(); i++) {
                ceiling(ceilingEntries.get(i), "/allowance/ceilings/" + i, requirements, ceilings);
            }
            return new Allowance(steps, ceilings, source(entry));
        }

        private void ceiling(
                JsonNode entry, String place, List<Requirement> requirements, Map<Property, Bound.Constant> ceilings) {
            Property property = Property.named(entry.path("property").asText());
            List<Requirement> limited = requirements.stream()
                    .filter(requirement -> requirement.property() == property)
                    .toList();
            if (limited.isEmpty()) {
                faults.add(place + "/property", "no requirement of the set limits " + property);
                return;
            }
            for (Requirement requirement : limited) {
                if (!requirement
                        .unit()
                        .text()
                        .equals(entry.path("unit").asText().trim())) {
                    faults.add(
                            place + "/unit",
                            "the unit must be that of the requirement '" + requirement.id() + "', "
                                    + requirement.unit());
                    return;
                }
                if (!requirement.limit().sense().equals(entry.path("limit").asText())) {
                    faults.add(
                            place + "/limit",
                            "the limit must be that of the requirement '" + requirement.id() + "', "
                                    + requirement.limit().sense());
                    return;
                }
            }
            if (ceilings.putIfAbsent(property, constant(entry.path("value"))) != null) {
                faults.add(place + "/property", "a ceiling for " + property + " was given before");
            }
        }

        private LocalDate date(String text, String place) {
            try {
                return LocalDate.parse(text);
            } catch (DateTimeException e) {
                faults.add(place, "'" + text + "' is not a day of the calendar");
                return null;
            }
        }

        private Temperature temperature(String text, String place) {
            return faults.attempt(place, () -> quantity(text, Temperature::of));
        }

        private Optional<PairCount> pairs(JsonNode entry, String place, String key) {
            if (!entry.has(key)) {
                return Optional.empty();
            }
            JsonNode range = entry.path(key);
            return Optional.ofNullable(faults.attempt(
                    place + "/" + key,
                    () -> new PairCount(
                            range.path("from").asInt(), range.path("to").asInt())));
        }

        private Double positiveFrequency(JsonNode text, String place) {
            double megahertz = frequency(text);
            if (!(megahertz > 0)) {
                faults.add(place, "a frequency must be positive, not " + text.asText());
                return null;
            }
            return megahertz;
        }

        private static double frequency(JsonNode text) {
            return quantity(text.asText(), FrequencyGrid::megahertz);
        }
    }

    static Source source(JsonNode entry) {
        return new Source(entry.path("source").asText(), entry.path("read").asBoolean());
    }

    interface OfValueAndUnit<T> {
        T of(double value, String unit);
    }

    /** What a text such as {@code 100 m} says; the schema has seen to its form. */
    static <T> T quantity(String text, OfValueAndUnit<T> of) {
        int space = text.indexOf(' ');
        return of.of(Double.parseDouble(text.substring(0, space)), text.substring(space + 1));
    }

    private static Optional<String> text(JsonNode entry, String key) {
        return Optional.ofNullable(entry.get(key)).map(JsonNode::asText);
    }

    private static <E extends Enum<E>> E word(Class<E> type, String word) {
        return Enum.valueOf(type, word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
