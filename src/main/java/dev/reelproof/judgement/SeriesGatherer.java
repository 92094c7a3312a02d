package dev.reelproof.judgement;

import dev.reelproof.correction.DelaySkew;
import dev.reelproof.correction.PairResistance;
import dev.reelproof.correction.PowerSum;
import dev.reelproof.correction.UnbalanceDenominator;
import dev.reelproof.correction.UnbalanceDirection;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.Subject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Gathers what a requirement is judged on: values measured as such, and values derived from measured parts.
 *
 * <p>Takes both where both are there, so that neither can hide the other. Corrects parts by the laws that the requirement names before
 * it combines them.
 */
final class SeriesGatherer {
    private static final Formula PARALLEL = Formula.of(
            values -> PairResistance.parallel(values[0], values[1]),
            values -> PairResistance.parallelGradient(values[0], values[1]),
            "both conductors in parallel",
            PairResistance.CITATION);
    private static final Formula LOOP = Formula.of(
            values -> PairResistance.loop(values[0], values[1]),
            values -> PairResistance.loopGradient(),
            "both conductors in a row",
            PairResistance.LOOP_CITATION);
    private static final Formula DIRECTION = Formula.counted(
            UnbalanceDirection::percent,
            "share of pairs in which a is above b, equal ones counted half",
            UnbalanceDirection.CITATION);
    private static final Formula POWER_SUM =
            Formula.of(PowerSum::of, PowerSum::gradient, "−10 log10 Σ 10^(−x/10)", PowerSum.CITATION);
    private static final Formula SKEW = Formula.of(
            DelaySkew::of, DelaySkew::gradient, "largest less smallest delay at one frequency", DelaySkew.CITATION);

    private final Evidence evidence;
    private final CoreLayout core;

    SeriesGatherer(Evidence evidence, CoreLayout core) {
        this.evidence = evidence;
        this.core = core;
    }

    GatheredSeries of(Requirement requirement, Corrector corrector) {
        List<Series> series = new ArrayList<>();
        List<Obstacle> obstacles = new ArrayList<>();
        Derivation derivation = new Derivation(requirement, corrector, obstacles);
        for (Reading reading : evidence.readings(requirement.property())) {
            if (counts(requirement, reading.subject())) {
                series.add(new MeasuredReading(reading, corrector));
            }
        }
        for (Series sweep : corrector.measured(requirement.property())) {
            if (counts(requirement, sweep.subject())) {
                series.add(sweep);
            }
        }
        switch (requirement.property()) {
            case RESISTANCE_UNBALANCE -> series.addAll(derivation.unbalanceWithinPairs());
            case RESISTANCE_UNBALANCE_BETWEEN_PAIRS -> series.addAll(derivation.unbalanceBetweenPairs());
            case PS_NEXT -> series.addAll(derivation.powerSums(Property.NEXT));
            case PS_ACR_F -> series.addAll(derivation.powerSums(Property.ACR_F));
            case DELAY_SKEW -> series.addAll(derivation.delaySkew());
            case LOOP_RESISTANCE -> series.addAll(derivation.loops());
            case RESISTANCE_UNBALANCE_DIRECTION -> series.addAll(derivation.unbalanceDirection());
            default -> {
                // every other property is measured as such
            }
        }
        series.removeIf(one -> one.derived() && !counts(requirement, one.subject()));
        return new GatheredSeries(series, obstacles);
    }

    private boolean counts(Requirement requirement, Subject subject) {
        Integer pair = subject.pair();
        Integer partner = subject.partner();
        return pair == null || partner == null || core.counts(requirement, pair, partner);
    }

    /** The conductors of a pair, and both in parallel. */
    private record InParallel(int pair, Series both, List<MeasuredReading> conductors) {}

    /** The powers behind the levels of a part, as measured and corrected: each part is in two power sums. */
    private record Powers(PowerSum.Part measured, PowerSum.Part corrected) {
        static Powers of(Series part) {
            PowerSum.Part measured = new PowerSum.Part(part.measured());
            return new Powers(
                    measured,
                    Arrays.equals(part.measured(), part.corrected()) ? measured : new PowerSum.Part(part.corrected()));
        }
    }

    /** Derives the values of one requirement from their parts; adds to the obstacles what cannot be derived. */
    private final class Derivation {
        private final Requirement requirement;
        private final Corrector corrector;
        private final List<Obstacle> obstacles;
        private final Map<Series, Powers> powers = new HashMap<>();

        Derivation(Requirement requirement, Corrector corrector, List<Obstacle> obstacles) {
            this.requirement = requirement;
            this.corrector = corrector;
            this.obstacles = obstacles;
        }

        List<Series> unbalanceWithinPairs() {
            List<Series> derived = new ArrayList<>();
            for (int pair = 1; pair <= core.pairs(); pair++) {
                Subject subject = Subject.ofPair(pair);
                resistances(pair)
                        .filter(parts -> samePerLength(subject, parts))
                        .ifPresent(parts -> derived.add(unbalance(subject, parts, "")));
            }
            return derived;
        }

        List<Series> unbalanceBetweenPairs() {
            List<InParallel> inParallel = new ArrayList<>();
            for (int pair = 1; pair <= core.pairs(); pair++) {
                int number = pair;
                Subject subject = Subject.ofPair(pair);
                resistances(pair).ifPresent(parts -> {
                    Series both = DerivedSeries.of(
                            Property.CONDUCTOR_RESISTANCE,
                            subject,
                            parts,
                            PARALLEL,
                            Property.CONDUCTOR_RESISTANCE.canonicalUnit());
                    inParallel.add(new InParallel(number, both, parts));
                });
            }
            List<Series> derived = new ArrayList<>();
            for (int i = 0; i < inParallel.size(); i++) {
                for (int j = i + 1; j < inParallel.size(); j++) {
                    InParallel one = inParallel.get(i);
                    InParallel other = inParallel.get(j);
                    Subject subject = Subject.ofCombination(one.pair(), other.pair());
                    List<MeasuredReading> conductors = Stream.of(one, other)
                            .flatMap(both -> both.conductors().stream())
                            .toList();
                    if (samePerLength(subject, conductors)) {
                        derived.add(unbalance(
                                subject, List.of(one.both(), other.both()), " of the pairs' parallel resistances"));
                    }
                }
            }
            return derived;
        }

        List<Series> loops() {
            List<Series> derived = new ArrayList<>();
            for (int pair = 1; pair <= core.pairs(); pair++) {
                Subject subject = Subject.ofPair(pair);
                resistances(pair)
                        .filter(parts -> samePerLength(subject, parts))
                        .ifPresent(parts -> derived.add(derived(subject, parts, LOOP)));
            }
            return derived;
        }

        List<Series> unbalanceDirection() {
            List<Series> parts = new ArrayList<>();
            for (int pair = 1; pair <= core.pairs(); pair++) {
                Subject subject = Subject.ofPair(pair);
                resistances(pair).filter(both -> samePerLength(subject, both)).ifPresent(parts::addAll);
            }
            if (parts.isEmpty()) {
                return List.of();
            }
            if (parts.size() != core.pairs() * Conductor.values().length) {
                obstacles.add(new Obstacle(
                        Obstacle.Kind.CONDUCTOR_MISSING,
                        Map.of("property", requirement.property().id())));
                return List.of();
            }
            return List.of(derived(Subject.ofReel(), parts, DIRECTION));
        }

        private Optional<List<MeasuredReading>> resistances(int pair) {
            List<MeasuredReading> parts = Stream.of(Conductor.values())
                    .flatMap(conductor ->
                            evidence
                                    .reading(Property.CONDUCTOR_RESISTANCE, Subject.ofConductor(pair, conductor))
                                    .stream())
                    .map(reading -> new MeasuredReading(reading, corrector))
                    .toList();
            return parts.size() == Conductor.values().length ? Optional.of(parts) : Optional.empty();
        }

        private Series unbalance(Subject subject, List<? extends Series> parts, String ofWhat) {
            UnbalanceDenominator denominator =
                    UnbalanceDenominator.named(requirement.denominator().orElseThrow());
            return derived(
                    subject,
                    parts,
                    Formula.of(
                            values -> denominator.percent(values[0], values[1]),
                            values -> denominator.gradient(values[0], values[1]),
                            "100 (Rmax − Rmin) / " + denominator.word() + ofWhat,
                            denominator.citation()));
        }

        private Series derived(Subject subject, List<? extends Series> parts, Formula formula) {
            return DerivedSeries.of(
                    requirement.property(),
                    subject,
                    parts,
                    formula,
                    requirement.valueUnit().text());
        }

        private boolean samePerLength(Subject subject, List<? extends Series> parts) {
            boolean same = parts.stream()
                            .map(part -> part.sentUnit().referredTo())
                            .distinct()
                            .count()
                    == 1;
            if (!same) {
                obstacles.add(underivable(Obstacle.Kind.PARTS_PER_DIFFERENT_LENGTHS, subject));
            }
            return same;
        }

        private Obstacle underivable(Obstacle.Kind why, Subject subject) {
            return new Obstacle(why, Map.of("property", requirement.property().id(), "where", subject.words()));
        }

        List<Series> powerSums(Property partsProperty) {
            List<Series> derived = new ArrayList<>();
            for (End end : End.values()) {
                for (int pair = 1; pair <= core.pairs(); pair++) {
                    List<Series> parts = disturbances(partsProperty, pair, end);
                    Subject subject = Subject.ofPair(pair).at(end);
                    boolean complete = !parts.isEmpty() && parts.size() == core.pairs() - 1;
                    if (complete && onOneGrid(subject, parts) && samePerLength(subject, parts)) {
                        derived.add(powerSum(subject, parts));
                    }
                }
            }
            return derived;
        }

        private Series powerSum(Subject subject, List<Series> parts) {
            List<Powers> ofParts = parts.stream()
                    .map(part -> powers.computeIfAbsent(part, Powers::of))
                    .toList();
            List<PowerSum.Part> levels = ofParts.stream().map(Powers::measured).toList();
            List<PowerSum.Part> correctedLevels =
                    ofParts.stream().map(Powers::corrected).toList();
            double[] measured = PowerSum.of(levels);
            boolean unchanged = ofParts.stream().allMatch(part -> part.measured() == part.corrected());
            double[] sums = unchanged ? measured : PowerSum.of(correctedLevels);
            return DerivedSeries.of(
                    requirement.property(),
                    subject,
                    parts,
                    POWER_SUM,
                    requirement.valueUnit().text(),
                    measured,
                    sums,
                    block -> PowerSum.gradients(correctedLevels, sums, block.from(), block.to()));
        }

        private List<Series> disturbances(Property partsProperty, int pair, End end) {
            List<MeasuredSweep> measured = corrector.measured(partsProperty);
            List<Series> parts = new ArrayList<>();
            for (int partner = 1; partner <= core.pairs(); partner++) {
                if (partner != pair) {
                    Subject subject = Subject.ofCombination(pair, partner).at(end);
                    Optional<MeasuredSweep> found = Evidence.find(measured, Series::subject, subject);
                    // Near-end crosstalk of two pairs at one end is one sweep, in whichever order it was sent.
                    (found.isEmpty() && partsProperty == Property.NEXT
                                    ? Evidence.find(measured, Series::subject, subject.reversed())
                                    : found)
                            .ifPresent(parts::add);
                }
            }
            return parts;
        }

        List<Series> delaySkew() {
            List<MeasuredSweep> parts = corrector.measured(Property.PROPAGATION_DELAY);
            Subject subject = Subject.ofReel();
            boolean complete = parts.size() >= 2 && parts.size() == core.pairs();
            if (!(complete && onOneGrid(subject, parts) && samePerLength(subject, parts))) {
                return List.of();
            }
            return List.of(derived(subject, parts, SKEW));
        }

        private boolean onOneGrid(Subject subject, List<? extends Series> parts) {
            boolean one = parts.stream().allMatch(parts.get(0)::sharesGridWith);
            if (!one) {
                obstacles.add(underivable(Obstacle.Kind.PARTS_ON_DIFFERENT_FREQUENCIES, subject));
            }
            return one;
        }
    }
}
