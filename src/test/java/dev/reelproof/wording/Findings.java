package dev.reelproof.wording;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Uncertainty;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.stream.Stream;

/** Invented findings of every kind, each with its requirement; the figures prove nothing about any limit. */
public final class Findings {
    private static final Domain NONE = new Domain.NoFrequency();
    private static final DecisionRule GUARD = new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1);

    private Findings() {}

    /** A finding and the requirement that it speaks of. */
    public record Case(String name, Requirement requirement, Finding finding) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Limit atMost(double value, int places) {
        return Limit.atMost(new Bound.Constant(value, places));
    }

    static Limit atLeast(double value, int places) {
        return Limit.atLeast(new Bound.Constant(value, places));
    }

    static Limit flatAtLeast(double value) {
        return Limit.atLeast(new Bound.Curve(List.of(new Segment.RootPolynomial(1, 500, value, 0, 0, 0))));
    }

    /** What can stand on a certificate: passes of every kind. */
    public static Stream<Case> passing() {
        return Stream.of(
                of(
                        "a scalar with the places of its limit",
                        RequirementBuilder.of(Property.CONDUCTOR_RESISTANCE, atMost(95.1, 1), NONE, "ohm/km")
                                .build(),
                        Subject.ofConductor(3, Conductor.B),
                        null,
                        93.126,
                        95.1,
                        null),
                of(
                        "a curve",
                        RequirementBuilder.of(Property.RETURN_LOSS, flatAtLeast(16.79), new Domain.Range(1, 500), "dB")
                                .build(),
                        Subject.ofPair(3).at(End.NEAR),
                        378.0,
                        18.0049,
                        16.79,
                        null),
                of(
                        "a count",
                        RequirementBuilder.of(Property.SPARK_FAULTS, atMost(0, 0), NONE, "count")
                                .build(),
                        Subject.ofReel(),
                        null,
                        0,
                        0,
                        null),
                of(
                        "a count per length",
                        RequirementBuilder.of(Property.INSULATION_FAULTS, atMost(1, 0), NONE, "count/3000 m")
                                .build(),
                        Subject.ofReel(),
                        null,
                        0.5,
                        1,
                        null),
                of(
                        "a statistic of a scope",
                        RequirementBuilder.of(
                                        Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, atMost(45.3, 1), NONE, "pF/km")
                                .id("capacitance-unbalance-pair-to-pair-rms")
                                .statistic(Statistic.RMS)
                                .scope(Scope.WITHIN_UNIT)
                                .build(),
                        Subject.ofReel(),
                        null,
                        31.2345,
                        45.3,
                        null),
                of(
                        "one frequency",
                        RequirementBuilder.of(Property.INSERTION_LOSS, atMost(18.0, 1), new Domain.Spot(0.772), "dB/km")
                                .id("insertion-loss-at-772-khz")
                                .build(),
                        Subject.ofPair(12),
                        0.772,
                        17.25,
                        18.0,
                        null),
                of(
                        "a sample",
                        RequirementBuilder.of(Property.INSULATION_ELONGATION, atLeast(300, 0), NONE, "%")
                                .build(),
                        Subject.ofConductor(2, Conductor.A).withSample(4),
                        null,
                        412.5,
                        300,
                        null),
                of(
                        "an ordered combination",
                        RequirementBuilder.of(Property.ACR_F, flatAtLeast(27.8), new Domain.Range(1, 500), "dB")
                                .build(),
                        Subject.ofCombination(2, 4).at(End.FAR),
                        100.25,
                        40.119,
                        27.8,
                        null),
                of(
                        "a combination",
                        RequirementBuilder.of(Property.NEXT, flatAtLeast(44.3), new Domain.Range(1, 500), "dB")
                                .build(),
                        Subject.ofCombination(1, 2).at(End.NEAR),
                        100.0,
                        47.1,
                        44.3,
                        new Uncertainty(0.996, 2, 0.9999)),
                of(
                        "the nearer of two bounds",
                        RequirementBuilder.of(
                                        Property.MUTUAL_CAPACITANCE,
                                        Limit.between(new Bound.Constant(48, 0), new Bound.Constant(56, 0)),
                                        NONE,
                                        "nF/km")
                                .id("mutual-capacitance-mean")
                                .statistic(Statistic.MEAN)
                                .build(),
                        Subject.ofReel(),
                        null,
                        55.26,
                        56,
                        null),
                of(
                        "a margin smaller than the decimals",
                        RequirementBuilder.of(Property.RESISTANCE_UNBALANCE, atMost(5.0, 1), NONE, "%")
                                .build(),
                        Subject.ofPair(1),
                        null,
                        4.99997,
                        5.0,
                        null),
                of(
                        "a margin of nothing",
                        RequirementBuilder.of(Property.LOOP_RESISTANCE, atMost(19, 0), NONE, "ohm/100 m")
                                .build(),
                        Subject.ofPair(1),
                        null,
                        19,
                        19,
                        null),
                of(
                        "a conditional pass",
                        RequirementBuilder.of(Property.DELAY_SKEW, atMost(45, 0), NONE, "ns/100 m")
                                .decisionRule(GUARD)
                                .build(),
                        Subject.ofReel(),
                        null,
                        44.7,
                        45,
                        new Uncertainty(0.3001, 2, 0.977)));
    }

    private static Case of(
            String name,
            Requirement requirement,
            Subject subject,
            Double megahertz,
            double value,
            double limit,
            Uncertainty uncertainty) {
        boolean upper = requirement.limit().upper().isPresent();
        Figure figure = figure(
                requirement, subject, megahertz, value, limit, upper ? limit - value : value - limit, uncertainty);
        boolean guarded = requirement.decisionRule().isPresent();
        return new Case(
                name, requirement, finding(requirement, guarded ? Outcome.CONDITIONAL_PASS : Outcome.PASS, figure));
    }

    static Figure figure(
            Requirement requirement,
            Subject subject,
            Double megahertz,
            double value,
            double limit,
            double margin,
            Uncertainty uncertainty) {
        return new Figure(
                subject,
                null,
                megahertz,
                value,
                requirement.property().canonicalUnit(),
                value,
                value,
                limit,
                margin,
                requirement.unit().text(),
                false,
                uncertainty,
                List.of());
    }

    static Finding finding(Requirement requirement, Outcome outcome, Figure figure) {
        return new Finding(
                requirement.id(),
                requirement.property(),
                outcome,
                null,
                Obstacles.NONE,
                figure,
                1,
                List.of(),
                requirement.decisionRule().orElse(DecisionRule.SIMPLE_ACCEPTANCE),
                null);
    }
}
