package dev.reelproof.judgement;

import dev.reelproof.correction.CorrectionLaw;
import dev.reelproof.correction.Laws;
import dev.reelproof.correction.Line;
import dev.reelproof.correction.MeasurementConditions;
import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/**
 * Applies the laws that a requirement names to the values of one result, a column at a time.
 *
 * <p>A law that needs the loss of a pair is asked once for each pair and grid. A combination of two pairs is corrected with the loss of
 * each, and the worse of both values counts: near-end crosstalk is one figure for both, whichever of them the bay names first.
 */
final class Corrector {
    private final Evidence evidence;
    private final Temperature referenceTemperature;
    private final Length referenceLength;
    private final String unit;
    private final List<CorrectionLaw> laws;
    private final boolean perConductorLength;
    private final boolean lowerIsWorse;
    private final Map<Integer, Map<FrequencyGrid, LossLines>> lossLines = new HashMap<>();
    private final ShortReel shortReel;
    private final Map<ReadingUnit, Sent> sent = new HashMap<>();
    private final Map<Property, List<MeasuredSweep>> corrected = new EnumMap<>(Property.class);

    Corrector(Evidence evidence, LimitSet limitSet, Requirement requirement) {
        this.evidence = evidence;
        this.referenceTemperature = limitSet.referenceTemperature();
        this.referenceLength = limitSet.referenceLengthOf(requirement);
        this.unit = requirement.valueUnit().text();
        this.laws = requirement.laws().stream()
                .map(law -> Laws.named(law.name(), law.parameters()))
                .toList();
        this.perConductorLength = requirement.property() == Property.INSULATION_FAULTS;
        this.lowerIsWorse = requirement.limit().lower().isPresent();
        this.shortReel = new ShortReel(evidence, requirement);
    }

    /** The sweeps of a property with their corrected values, in the order of their subjects; once for all requirements alike. */
    List<MeasuredSweep> measured(Property property) {
        return corrected.computeIfAbsent(property, key -> evidence.sweeps(key).stream()
                .map(sweep -> new MeasuredSweep(sweep, this, shortReel))
                .toList());
    }

    /** Refuses a temperature that a law is not stated to hold at. */
    void requireCovers(Temperature temperature) {
        laws.forEach(law -> law.requireCovers(temperature));
    }

    /** The unit of corrected values. */
    String unit() {
        return unit;
    }

    /**
     * A single value at the reference.
     *
     * @throws OutsideLawException when a law does not hold there
     */
    double correct(double value, ReadingUnit sentUnit) {
        double[] column = {value};
        applyTo(column, conditions(sentUnit));
        return column[0];
    }

    private void applyTo(double[] column, MeasurementConditions conditions) {
        for (CorrectionLaw law : laws) {
            Line line = law.at(conditions);
            for (int i = 0; i < column.length && !line.equals(Line.UNCHANGED); i++) {
                column[i] = line.of(column[i]);
            }
        }
    }

    /** A sweep at the reference; NaN where it cannot be corrected, with the reason. */
    CorrectedColumn correct(Sweep sweep) {
        double[] values = sweep.values();
        if (needsLoss(sweep)) {
            Integer partner = sweep.subject().partner();
            CorrectedColumn withOwn =
                    linesOf(sweep.subject().pairNumber(), sweep).applyTo(values);
            return partner == null
                    ? withOwn
                    : withOwn.orWorse(linesOf(partner, sweep).applyTo(values), lowerIsWorse);
        }
        try {
            applyTo(values, sent(sweep.unit()).asSent);
            return CorrectedColumn.of(values);
        } catch (OutsideLawException e) {
            return CorrectedColumn.notCorrected(values.length, e);
        }
    }

    /**
     * How values in one unit are corrected.
     *
     * @param asSent their conditions, but for a pair's loss
     * @param needsLoss whether a law needs that loss to correct them
     * @param dependsOnLoss whether they depend on it, so corrected or as the reel itself was read
     */
    private record Sent(MeasurementConditions asSent, boolean needsLoss, boolean dependsOnLoss) {}

    private Sent sent(ReadingUnit unit) {
        return sent.computeIfAbsent(unit, key -> {
            MeasurementConditions asSent = conditions(key);
            MeasurementConditions ofReel = conditions(evidence.result().length());
            boolean needs = laws.stream().anyMatch(law -> law.needsLoss(asSent));
            return new Sent(asSent, needs, needs || laws.stream().anyMatch(law -> law.needsLoss(ofReel)));
        });
    }

    /** Whether a law uses the measured loss of a pair to correct a sweep. */
    boolean needsLoss(Sweep sweep) {
        return sweep.subject().pair() != null && sent(sweep.unit()).needsLoss;
    }

    /** Whether a corrected value depends on the loss of a pair, in the unit that was sent or as the reel itself was read. */
    boolean dependsOnLoss(Sweep sweep) {
        return sweep.subject().pair() != null && sent(sweep.unit()).dependsOnLoss;
    }

    private LossLines linesOf(int pair, Sweep sweep) {
        MeasurementConditions conditions = sent(sweep.unit()).asSent;
        Map<FrequencyGrid, LossLines> ofPair = lossLines.computeIfAbsent(pair, key -> new HashMap<>());
        LossLines known = ofPair.get(sweep.grid());
        if (known == null || !known.areUnder(conditions)) {
            known = new LossLines(laws, conditions, evidence.lossPerMetre(pair, sweep.grid()));
            ofPair.put(sweep.grid(), known);
        }
        return known;
    }

    /** The pair whose loss corrected a point: of a combination the one that gives the worse value. */
    int lossPair(Sweep sweep, int index) {
        int own = sweep.subject().pairNumber();
        Integer partner = sweep.subject().partner();
        if (partner == null || !needsLoss(sweep)) {
            return own;
        }
        double value = sweep.value(index);
        return CorrectedColumn.isWorse(
                        linesOf(partner, sweep).of(index, value),
                        linesOf(own, sweep).of(index, value),
                        lowerIsWorse)
                ? partner
                : own;
    }

    private MeasurementConditions conditions(Sweep sweep, int index) {
        MeasurementConditions conditions = conditions(sweep.unit());
        double loss =
                dependsOnLoss(sweep) ? evidence.lossPerMetre(lossPair(sweep, index), sweep.grid())[index] : Double.NaN;
        return Double.isNaN(loss) ? conditions : conditions.withLossPerMetre(loss);
    }

    private MeasurementConditions conditions(ReadingUnit sentUnit) {
        return conditions(perConductorLength ? evidence.conductorLengthOf(sentUnit) : evidence.lengthOf(sentUnit));
    }

    private MeasurementConditions conditions(Length length) {
        return new MeasurementConditions(
                evidence.result().temperature(), length, referenceTemperature, referenceLength, OptionalDouble.empty());
    }

    /**
     * How a corrected single value depends on what was read of the reel.
     *
     * @throws OutsideLawException when the law has no derivative there
     */
    Dependence dependence(ReadingUnit sentUnit) {
        return dependence(conditions(sentUnit));
    }

    /**
     * The same of the points of a sweep: a function of their place. What a pair's loss enters is worked out once for all sweeps that it
     * corrects.
     */
    IntFunction<Dependence> dependences(Sweep sweep) {
        if (!dependsOnLoss(sweep)) {
            Dependence alike = dependence(conditions(sweep.unit()));
            return index -> alike;
        }
        if (!needsLoss(sweep)) {
            return index -> dependence(conditions(sweep, index));
        }
        LossLines own = linesOf(sweep.subject().pairNumber(), sweep);
        Integer partner = sweep.subject().partner();
        LossLines other = partner == null ? own : linesOf(partner, sweep);
        return index -> {
            double value = sweep.value(index);
            boolean byOther = CorrectedColumn.isWorse(other.of(index, value), own.of(index, value), lowerIsWorse);
            return (byOther ? other : own).dependence(index, () -> dependence(conditions(sweep, index)));
        };
    }

    private Dependence dependence(MeasurementConditions asSent) {
        return Dependence.of(laws, asSent, evidence.result().length());
    }

    /** What a corrected single value depends on. */
    Influence influence(Reading reading) {
        return dependence(reading.unit())
                .influence(reading.property(), reading.subject().words(), reading.value(), Double.NaN, 0);
    }

    /** What a corrected value of a sweep depends on. */
    Influence influence(Sweep sweep, int index) {
        return dependence(conditions(sweep, index))
                .influence(
                        sweep.property(),
                        sweep.subject().words(),
                        sweep.value(index),
                        sweep.grid().megahertz(index),
                        dependsOnLoss(sweep) ? lossPair(sweep, index) : 0);
    }

    /** The chain of a single value. */
    List<Step> steps(Property property, double value, ReadingUnit sentUnit) {
        return steps(property, value, conditions(sentUnit), null);
    }

    /** The chain of a value of a sweep. */
    List<Step> steps(Sweep sweep, int index) {
        return steps(
                sweep.property(),
                sweep.value(index),
                conditions(sweep, index),
                needsLoss(sweep) ? Subject.ofPair(lossPair(sweep, index)) : null);
    }

    private List<Step> steps(
            Property property, double value, MeasurementConditions conditions, @Nullable Subject lossOf) {
        List<Step> steps = new ArrayList<>();
        double corrected = value;
        for (int i = 0; i < laws.size(); i++) {
            CorrectionLaw law = laws.get(i);
            corrected = law.correct(corrected, conditions);
            steps.add(new Step(
                    "corrected",
                    law.name() + ": " + law.formula() + "; " + figures(conditions, lossOf),
                    corrected,
                    i + 1 == laws.size() ? unit : property.canonicalUnit(),
                    law.citation()));
        }
        return steps;
    }

    private static String figures(MeasurementConditions conditions, @Nullable Subject lossOf) {
        String figures = "t = " + conditions.temperature().words() + ", reference "
                + conditions.referenceTemperature().words() + "; L = "
                + conditions.length().metres() + " m, reference "
                + conditions.referenceLength().metres() + " m";
        return lossOf == null
                ? figures
                : figures + "; a = " + conditions.lossPerMetre().orElseThrow() + " dB/m measured of " + lossOf.words();
    }
}
