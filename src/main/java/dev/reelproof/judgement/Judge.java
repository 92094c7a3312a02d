package dev.reelproof.judgement;

import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Judges a result against a limit set: measured, corrected, judged. Pure: the same input gives the same judgement. */
public final class Judge {
    /** Digits of a value in a sentence; the figure itself keeps them all. */
    private static final MathContext DIGITS_TOLD = new MathContext(6);

    private final ReelResult result;
    private final LimitSet limitSet;
    private final Evidence evidence;
    private final Correctors correctors;
    private final CoreLayout core;
    private final Coverage coverage;
    private final BetweenPoints betweenPoints;
    private final Optional<UncertaintyModel> uncertaintyModel;

    private Judge(ReelResult result, Product product, LimitSet limitSet, Optional<UncertaintyModel> uncertaintyModel) {
        this.result = result;
        this.limitSet = limitSet;
        this.evidence = new Evidence(result, product.pairs());
        this.correctors = new Correctors(evidence, limitSet);
        this.core = new CoreLayout(product);
        this.coverage = new Coverage(evidence, core, limitSet);
        this.betweenPoints = new BetweenPoints(product, result.length());
        this.uncertaintyModel = uncertaintyModel;
    }

    /**
     * The judgement of a result.
     *
     * @param result what was measured
     * @param product what the reel is meant to be; the result names only pairs that it has
     * @param limitSet what it must meet
     * @param uncertaintyModel where uncertainties are taken from; empty for none, and then only simple acceptance decides
     * @param engine version of the program, kept with the judgement
     * @throws dev.reelproof.correction.OutsideLawException when the temperature lies outside what a law of the set covers
     */
    public static Judgement judge(
            ReelResult result,
            Product product,
            LimitSet limitSet,
            Optional<UncertaintyModel> uncertaintyModel,
            String engine) {
        return new Judge(result, product, limitSet, uncertaintyModel).judge(engine);
    }

    private Judgement judge(String engine) {
        SeriesGatherer gatherer = new SeriesGatherer(evidence, core);
        Propagation propagation = new Propagation(uncertaintyModel, result);
        List<VaryingPairs.Case> cases = new ArrayList<>();
        Map<Property, List<CorrectedSweep>> sweeps = new EnumMap<>(Property.class);
        for (Requirement requirement : limitSet.requirements()) {
            Corrector corrector = correctors.of(requirement);
            GatheredSeries gathered = gatherer.of(requirement, corrector);
            if (!requirement.particulars().required() && gathered.isEmpty()) {
                continue;
            }
            corrector.requireCovers(result.temperature());
            if (core.meets(requirement)) {
                cases.add(new VaryingPairs.Case(
                        requirement, gathered, new Evaluator(limitSet, requirement, core, propagation)));
                sweeps.computeIfAbsent(requirement.property(), property -> gathered.series().stream()
                        .filter(series -> series.grid() != null)
                        .map(series -> series.toSweep(corrector.unit()))
                        .toList());
            }
        }
        for (Property property : Property.values()) {
            sweeps.computeIfAbsent(property, this::asMeasured);
        }
        Optional<VaryingPairs> chooser =
                limitSet.allowance().map(allowance -> new VaryingPairs(allowance, core.pairs(), limitSet.rounding()));
        Set<Integer> varying = chooser.map(one -> one.choose(cases)).orElse(Set.of());
        int mayVary = chooser.map(VaryingPairs::allowed).orElse(0);
        List<Finding> findings =
                cases.stream().map(one -> finding(one, varying, mayVary)).toList();
        return new Judgement(
                limitSet.id(),
                limitSet.revision(),
                limitSet.sha256(),
                engine,
                Verdict.of(findings.stream().map(Finding::outcome).toList()),
                findings,
                sweeps.values().stream().flatMap(List::stream).toList(),
                uncertaintyModel
                        .map(model -> new Judgement.Model(model.id(), model.revision(), model.sha256()))
                        .orElse(null));
    }

    /**
     * The findings on some requirements alone, for a question that no record answers.
     *
     * @param which the requirements asked about
     * @param varying the pairs that are left out under the set's allowance; chosen before, since all requirements share them
     */
    public static List<Finding> findings(
            ReelResult result,
            Product product,
            LimitSet limitSet,
            Optional<UncertaintyModel> uncertaintyModel,
            Predicate<Requirement> which,
            Set<Integer> varying) {
        Judge judge = new Judge(result, product, limitSet, uncertaintyModel);
        SeriesGatherer gatherer = new SeriesGatherer(judge.evidence, judge.core);
        Propagation propagation = new Propagation(uncertaintyModel, result);
        return limitSet.requirements().stream()
                .filter(which)
                .filter(judge.core::meets)
                .map(requirement -> new VaryingPairs.Case(
                        requirement,
                        gatherer.of(requirement, judge.correctors.of(requirement)),
                        new Evaluator(limitSet, requirement, judge.core, propagation)))
                .map(one -> judge.finding(one, varying, varying.size()))
                .toList();
    }

    /** What no requirement judges is kept as it was measured: there is no law to correct it by. */
    private List<CorrectedSweep> asMeasured(Property property) {
        return evidence.sweeps(property).stream()
                .map(sweep -> new CorrectedSweep(
                        property,
                        sweep.subject(),
                        sweep.grid(),
                        sweep.values(),
                        sweep.values(),
                        property.canonicalUnit(),
                        false))
                .toList();
    }

    private Finding finding(VaryingPairs.Case one, Set<Integer> varying, int mayVary) {
        Requirement requirement = one.requirement();
        Evaluation evaluation = one.whole();
        Optional<Obstacle> unfit = lapsedEquipment(requirement, one.gathered())
                .or(() -> outsideWindow(requirement, evaluation))
                .or(() -> tooLittleTested(requirement, evaluation));
        if (unfit.isPresent()) {
            return notTested(requirement, Obstacles.of(unfit.get()), evaluation, Set.of());
        }
        if (!evaluation.fails()) {
            return passUnlessObstructed(one, evaluation, warmerPass(requirement), Set.of());
        }
        if (!onePartDecides(requirement)) {
            List<Obstacle> obstacles = coverage.obstaclesToFail(requirement, one.gathered());
            obstacles.addAll(evaluation.obstacles());
            if (!obstacles.isEmpty()) {
                return notTested(requirement, Obstacles.of(obstacles), evaluation, Set.of());
            }
        }
        Evaluation without = one.evaluator().evaluate(one.gathered(), varying);
        boolean mayBeHelped = !varying.isEmpty()
                && limitSet.allowance()
                        .map(Allowance::ceilings)
                        .orElse(Map.of())
                        .containsKey(requirement.property());
        Figure worst = evaluation.figure();
        if (!mayBeHelped || worst == null || without.figure() == null || without.fails()) {
            return finding(requirement, evaluation.decided(), null, evaluation, Set.of());
        }
        String reason = "allowed variation: pair "
                + String.join(", ", varying.stream().map(String::valueOf).toList())
                + " left out of the arithmetic; of " + core.pairs() + " pairs " + mayVary
                + " may vary; with it the worst value is "
                + BigDecimal.valueOf(worst.value()).round(DIGITS_TOLD).toPlainString() + " "
                + worst.unit();
        return passUnlessObstructed(one, without, reason, varying);
    }

    /** Whether a part of the values can reject the reel: one bad value can, but a mean of some pairs says nothing of that of all. */
    private static boolean onePartDecides(Requirement requirement) {
        return requirement.statistic() == Statistic.INDIVIDUAL
                || (requirement.statistic() == Statistic.MAXIMUM
                        && requirement.limit().lower().isEmpty());
    }

    private Finding passUnlessObstructed(
            VaryingPairs.Case one, Evaluation evaluation, @Nullable String reason, Set<Integer> varying) {
        List<Obstacle> obstacles = new ArrayList<>(coverage.obstacles(one.requirement(), one.gathered()));
        obstacles.addAll(evaluation.obstacles());
        if (obstacles.isEmpty() && evaluation.figure() == null) {
            obstacles.add(new Obstacle(
                    Obstacle.Kind.NO_DATA_WITHIN_LIMIT,
                    Map.of("property", one.requirement().property().id())));
        }
        Optional<String> between = Optional.ofNullable(evaluation.figure())
                .flatMap(worst -> betweenPoints.remark(one.requirement().property(), one.gathered(), worst));
        String said = Stream.of(
                        Optional.ofNullable(reason),
                        between,
                        coverage.sample(one.requirement(), one.gathered()).map(SampleOfPairs::words))
                .flatMap(Optional::stream)
                .reduce((first, second) -> first + "; " + second)
                .orElse(null);
        return obstacles.isEmpty()
                ? finding(one.requirement(), evaluation.decided(), said, evaluation, varying)
                : notTested(one.requirement(), Obstacles.of(obstacles), evaluation, varying);
    }

    private Finding notTested(
            Requirement requirement, Obstacles obstacles, Evaluation evaluation, Set<Integer> varying) {
        return finding(requirement, Outcome.NOT_TESTED, obstacles.sentence(), obstacles, evaluation, varying);
    }

    private Finding finding(
            Requirement requirement,
            Outcome outcome,
            @Nullable String reason,
            Evaluation evaluation,
            Set<Integer> varying) {
        return finding(requirement, outcome, reason, Obstacles.NONE, evaluation, varying);
    }

    private Finding finding(
            Requirement requirement,
            Outcome outcome,
            @Nullable String reason,
            Obstacles obstacles,
            Evaluation evaluation,
            Set<Integer> varying) {
        return new Finding(
                requirement.id(),
                requirement.property(),
                outcome,
                reason,
                obstacles,
                evaluation.figure(),
                evaluation.points(),
                List.copyOf(varying),
                limitSet.decisionRuleOf(requirement),
                evaluation.doubt());
    }

    private Optional<Obstacle> lapsedEquipment(Requirement requirement, GatheredSeries gathered) {
        LocalDate day = result.finished().toLocalDate();
        return result.equipment().stream()
                .filter(equipment -> Stream.concat(
                                        Stream.of(requirement.property()), requirement.property().parts().stream())
                                .anyMatch(property -> equipment.lapsedFor(property, day))
                        || (equipment.lapsedFor(Property.INSERTION_LOSS, day) && restsOnLoss(requirement, gathered)))
                .min(Comparator.comparing(Equipment::id))
                .map(equipment -> new Obstacle(
                        Obstacle.Kind.EQUIPMENT_OUT_OF_CALIBRATION,
                        Map.of(
                                "equipment", equipment.id(),
                                "due", String.valueOf(equipment.calibrationDue()),
                                "finished", String.valueOf(day))));
    }

    /** Whether the measured loss of a pair decides on a value or enters it. */
    private static boolean restsOnLoss(Requirement requirement, GatheredSeries gathered) {
        return requirement.particulars().leastRoundTripLoss().isPresent()
                || gathered.series().stream().anyMatch(Series::takesLoss);
    }

    private Optional<Obstacle> outsideWindow(Requirement requirement, Evaluation evaluation) {
        boolean standsWarmer = warmerPass(requirement) != null && evaluation.figure() != null && !evaluation.fails();
        return requirement
                .temperatureWindow()
                .filter(window -> !window.holds(result.temperature()) && !standsWarmer)
                .map(window -> new Obstacle(
                        Obstacle.Kind.TEMPERATURE_OUTSIDE_WINDOW,
                        Map.of(
                                "temperature",
                                        String.valueOf(result.temperature().celsius()),
                                "at", String.valueOf(window.at().celsius()),
                                "within", String.valueOf(window.within()))));
    }

    /** Why a pass above the window stands; absent where there is no such thing to say. */
    private @Nullable String warmerPass(Requirement requirement) {
        return requirement
                .temperatureWindow()
                .filter(window -> window.warmerPassStands() && window.isBelow(result.temperature()))
                .map(window -> "measured at " + result.temperature().words() + ", above the window of "
                        + window.at().celsius() + " ± " + window.within() + " °C: " + requirement.property()
                        + " falls as it gets warmer, so that a pass stands")
                .orElse(null);
    }

    private Optional<Obstacle> tooLittleTested(Requirement requirement, Evaluation evaluation) {
        return requirement.particulars().testedLength().flatMap(tested -> evidence.reading(
                        requirement.property(), Subject.ofReel())
                .map(reading -> evidence.conductorLengthOf(reading.unit()))
                .filter(length ->
                        !(length.metres() >= (evaluation.fails() ? tested.leastToReject() : tested.least()).metres()))
                .map(length -> new Obstacle(
                        Obstacle.Kind.TOO_LITTLE_TESTED,
                        Map.of(
                                "tested", String.valueOf(length.metres()),
                                "least", String.valueOf(tested.least().metres()),
                                "leastToReject",
                                        String.valueOf(tested.leastToReject().metres())))));
    }
}
