package dev.reelproof.limit;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.ReadingUnit;
import java.util.List;
import java.util.Optional;

/** Builds requirements for tests: what is not said stays as in the requirement that it began with, or is absent. */
public final class RequirementBuilder {
    private static final Source SOURCE = new Source("a figure of this test's own", true);

    private final Property property;
    private final Limit limit;
    private final Domain domain;
    private final ReadingUnit unit;
    private String id;
    private Statistic statistic = Statistic.INDIVIDUAL;
    private List<LawSpec> laws = List.of();
    private Optional<String> denominator = Optional.empty();
    private Scope scope = Scope.CORE;
    private Optional<PairCount> pairs = Optional.empty();
    private Optional<PairCount> unitPairs = Optional.empty();
    private Optional<TemperatureWindow> temperatureWindow = Optional.empty();
    private Source source = SOURCE;
    private Optional<String> condition = Optional.empty();
    private Particulars particulars = Particulars.NONE;
    private Optional<DecisionRule> decisionRule = Optional.empty();

    private RequirementBuilder(Property property, Limit limit, Domain domain, ReadingUnit unit) {
        this.property = property;
        this.limit = limit;
        this.domain = domain;
        this.unit = unit;
        this.id = property.id();
    }

    /** A requirement that says nothing beyond its limit, named after its property. */
    public static RequirementBuilder of(Property property, Limit limit, Domain domain, String unit) {
        return new RequirementBuilder(property, limit, domain, ReadingUnit.parse(unit));
    }

    /** One like another but for what is said next. */
    public static RequirementBuilder like(Requirement base) {
        RequirementBuilder builder = new RequirementBuilder(base.property(), base.limit(), base.domain(), base.unit());
        builder.id = base.id();
        builder.statistic = base.statistic();
        builder.laws = base.laws();
        builder.denominator = base.denominator();
        builder.scope = base.scope();
        builder.pairs = base.pairs();
        builder.unitPairs = base.unitPairs();
        builder.temperatureWindow = base.temperatureWindow();
        builder.source = base.source();
        builder.condition = base.condition();
        builder.particulars = base.particulars();
        builder.decisionRule = base.decisionRule();
        return builder;
    }

    public RequirementBuilder id(String newId) {
        this.id = newId;
        return this;
    }

    public RequirementBuilder statistic(Statistic newStatistic) {
        this.statistic = newStatistic;
        return this;
    }

    public RequirementBuilder laws(LawSpec... newLaws) {
        this.laws = List.of(newLaws);
        return this;
    }

    public RequirementBuilder denominator(String newDenominator) {
        this.denominator = Optional.of(newDenominator);
        return this;
    }

    public RequirementBuilder scope(Scope newScope) {
        this.scope = newScope;
        return this;
    }

    public RequirementBuilder pairs(PairCount newPairs) {
        this.pairs = Optional.of(newPairs);
        return this;
    }

    public RequirementBuilder unitPairs(PairCount newUnitPairs) {
        this.unitPairs = Optional.of(newUnitPairs);
        return this;
    }

    public RequirementBuilder temperatureWindow(TemperatureWindow newWindow) {
        this.temperatureWindow = Optional.of(newWindow);
        return this;
    }

    public RequirementBuilder source(Source newSource) {
        this.source = newSource;
        return this;
    }

    public RequirementBuilder condition(String newCondition) {
        this.condition = Optional.of(newCondition);
        return this;
    }

    public RequirementBuilder particulars(Particulars newParticulars) {
        this.particulars = newParticulars;
        return this;
    }

    public RequirementBuilder decisionRule(DecisionRule newRule) {
        this.decisionRule = Optional.of(newRule);
        return this;
    }

    public Requirement build() {
        return new Requirement(
                id,
                property,
                statistic,
                limit,
                domain,
                unit,
                laws,
                denominator,
                scope,
                pairs,
                unitPairs,
                temperatureWindow,
                source,
                condition,
                particulars,
                decisionRule);
    }
}
