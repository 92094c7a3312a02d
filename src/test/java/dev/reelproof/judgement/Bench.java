package dev.reelproof.judgement;

import dev.reelproof.judgement.advice.Alternatives;
import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Source;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.limit.file.UncertaintyModelReader;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;

/** A test bay for tests: builds limit sets of one or a few requirements and results to judge by them. */
public final class Bench {
    private static final Source SOURCE = new Source("a figure of this test's own", true);
    private static final LocalDate DUE = LocalDate.of(2026, 12, 31);

    private String id = "set";
    private PairCount cores = new PairCount(1, Product.MOST_PAIRS);
    private int pairs = 4;
    private List<CoreUnit> units = List.of();
    private Double velocity;
    private double metres = 100;
    private double celsius = 20;
    private RoundingRule rounding = RoundingRule.ABSOLUTE;
    private Optional<Allowance> allowance = Optional.empty();
    private LocalDate due = DUE;
    private DecisionRule rule = DecisionRule.SIMPLE_ACCEPTANCE;
    private Optional<UncertaintyModel> model = Optional.empty();
    private List<Equipment> equipment;
    private final List<Requirement> requirements = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();
    private final List<Sweep> sweeps = new ArrayList<>();

    public static Limit atMost(double value, int places) {
        return Limit.atMost(new Bound.Constant(value, places));
    }

    public static Limit atLeast(double value, int places) {
        return Limit.atLeast(new Bound.Constant(value, places));
    }

    public static Bound flat(double value, double from, double to) {
        return new Bound.Curve(List.of(new Segment.RootPolynomial(from, to, value, 0, 0, 0)));
    }

    public static Requirement requirement(
            Property property, Statistic statistic, Limit limit, Domain domain, String unit) {
        return RequirementBuilder.of(property, limit, domain, unit)
                .id(statistic == Statistic.INDIVIDUAL ? property.id() : property.id() + "-" + statistic.word())
                .statistic(statistic)
                .denominator("minimum")
                .build();
    }

    public static Requirement with(Requirement base, LawSpec... laws) {
        return RequirementBuilder.like(base).laws(laws).build();
    }

    public static Requirement saying(Requirement base, Particulars particulars) {
        return RequirementBuilder.like(base).particulars(particulars).build();
    }

    public static LawSpec law(String name) {
        return new LawSpec(name, Map.of());
    }

    /** Another name for the limit set. */
    public Bench named(String newId) {
        this.id = newId;
        return this;
    }

    /** The cores that the limit set is for. */
    public Bench cores(int from, int to) {
        this.cores = new PairCount(from, to);
        return this;
    }

    public Bench pairs(int newPairs) {
        this.pairs = newPairs;
        return this;
    }

    /** Velocity of propagation over that of light. */
    Bench velocity(double newVelocity) {
        this.velocity = newVelocity;
        return this;
    }

    Bench units(CoreUnit... newUnits) {
        this.units = List.of(newUnits);
        return this;
    }

    public Bench reel(double newMetres, double newCelsius) {
        this.metres = newMetres;
        this.celsius = newCelsius;
        return this;
    }

    Bench calibrationDue(LocalDate newDue) {
        this.due = newDue;
        return this;
    }

    Bench rounding(RoundingRule rule) {
        this.rounding = rule;
        return this;
    }

    Bench rule(DecisionRule newRule) {
        this.rule = newRule;
        return this;
    }

    Bench model(UncertaintyModel newModel) {
        this.model = Optional.of(newModel);
        return this;
    }

    Bench equipment(Equipment... instruments) {
        this.equipment = List.of(instruments);
        return this;
    }

    /** A model from a file's text; temperature, length and the classes follow its head. */
    public static UncertaintyModel model(String rest) {
        return new UncertaintyModelReader()
                .read(
                        "own.yaml",
                        "id: own\nrevision: 1\neffective: 2026-01-01\ntitle: own\ncoverage-factor: 2\n"
                                + "level-of-confidence: 95 %\n" + rest);
    }

    public Bench mayVary(int count, Map<Property, Bound.Constant> ceilings) {
        this.allowance = Optional.of(new Allowance(
                List.of(new Allowance.Step(new PairCount(1, Product.MOST_PAIRS), count)), ceilings, SOURCE));
        return this;
    }

    public Bench require(Requirement requirement) {
        requirements.add(requirement);
        return this;
    }

    public Bench read(Property property, Subject subject, double value, String unit) {
        readings.add(Reading.of(
                property,
                subject,
                value,
                ReadingUnit.parse(unit),
                new Origin.JsonValue("/readings/" + readings.size() + "/value")));
        return this;
    }

    public Bench sweep(Property property, Subject subject, FrequencyGrid grid, DoubleUnaryOperator value) {
        return sweep(property, subject, grid, value, property.canonicalUnit());
    }

    public Bench sweep(Property property, Subject subject, FrequencyGrid grid, DoubleUnaryOperator value, String unit) {
        double[] values = new double[grid.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value.applyAsDouble(grid.megahertz(i));
        }
        sweeps.add(Sweep.of(
                property,
                subject,
                grid,
                values,
                ReadingUnit.parse(unit),
                new Origin.JsonArray("/sweeps/" + sweeps.size() + "/values")));
        return this;
    }

    public Bench sweep(Sweep sweep) {
        sweeps.add(sweep);
        return this;
    }

    /** Steps of 1 MHz from 1 MHz to a frequency. */
    public static FrequencyGrid everyMegahertzTo(int last) {
        double[] megahertz = new double[last];
        for (int i = 0; i < last; i++) {
            megahertz[i] = i + 1;
        }
        return FrequencyGrid.ofMegahertz(megahertz);
    }

    Product product() {
        return new Product("P", "", "set", pairs, "24 AWG", velocity, Map.of(), units);
    }

    ReelResult result() {
        return new ReelResult(
                "P",
                Length.ofMetres(metres),
                Temperature.ofCelsius(celsius),
                "bay-1",
                null,
                null,
                OffsetDateTime.parse("2026-03-02T14:09:30Z"),
                equipment == null ? List.of(new Equipment("na-07", due, java.util.Set.of())) : equipment,
                readings,
                sweeps);
    }

    LimitSet set() {
        return new LimitSet(
                id,
                1,
                LocalDate.of(2026, 1, 1),
                "a set of this test's own",
                cores,
                Temperature.ofCelsius(20),
                Length.ofMetres(100),
                rounding,
                new GridRule(0.025, 2),
                requirements,
                allowance,
                List.of(),
                NetworkTerms.USUAL,
                "0",
                "",
                rule);
    }

    public Judgement judge() {
        return Judge.judge(result(), product(), set(), model, "test");
    }

    /** What the reel could be; the other sets are those of other benches. */
    public Alternatives alternatives(Bench... others) {
        ReelResult result = result();
        return Alternatives.of(
                set -> result,
                product(),
                judge(),
                set(),
                Stream.of(others).map(Bench::set).toList(),
                model,
                "test");
    }

    /** The finding of the only requirement. */
    Finding only() {
        Judgement judgement = judge();
        if (judgement.findings().size() != 1) {
            throw new AssertionError("one finding expected, not " + judgement.findings());
        }
        return judgement.findings().get(0);
    }
}
