package dev.reelproof.judgement;

import dev.reelproof.correction.CorrectionLaw;
import dev.reelproof.correction.Laws;
import dev.reelproof.correction.MeasurementConditions;
import dev.reelproof.correction.Sensitivity;
import dev.reelproof.limit.Domain;
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
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Applies the laws that a requirement names to the values of one result. */
final class Corrector {
    private static final int THERE_AND_BACK = 2;

    /** Digits of a value in a sentence. */
    private static final MathContext DIGITS_TOLD = new MathContext(4);

    private final Evidence evidence;
    private final Temperature referenceTemperature;
    private final Length referenceLength;
    private final String unit;
    private final List<CorrectionLaw> laws;
    private final boolean perConductorLength;
    private final OptionalDouble leastRoundTripLoss;
    private final Domain domain;
    private final String source;
    private final Map<Integer, Optional<LossCurve>> lossCurves = new HashMap<>();

    Corrector(Evidence evidence, LimitSet limitSet, Requirement requirement) {
        this.evidence = evidence;
        this.referenceTemperature = limitSet.referenceTemperature();
        this.referenceLength = limitSet.referenceLengthOf(requirement);
        this.unit = requirement.valueUnit().text();
        this.laws = requirement.laws().stream()
                .map(law -> Laws.named(law.name(), law.parameters()))
                .toList();
        this.leastRoundTripLoss = requirement.particulars().leastRoundTripLoss();
        this.domain = requirement.domain();
        this.source = requirement.source().words();
        this.perConductorLength = requirement.property() == Property.INSULATION_FAULTS;
    }

    /** Refuses a temperature that a law is not stated to hold at. */
    void requireCovers(Temperature temperature) {
        laws.forEach(law -> law.requireCovers(temperature));
    }

    /** The unit of corrected values. */
    String unit() {
        return unit;
    }

    /** A single value at the reference. */
    double correct(double value, ReadingUnit sentUnit) {
        return applied(value, conditions(sentUnit));
    }

    /** A value of a sweep at the reference. */
    double correct(double value, ReadingUnit sentUnit, Subject subject, FrequencyGrid grid, int index) {
        return applied(value, conditions(sentUnit, subject, grid, index));
    }

    /** What a corrected single value depends on. */
    Influence influence(Reading reading) {
        return influence(
                reading.property(), reading.subject(), reading.value(), Double.NaN, conditions(reading.unit()));
    }

    /** What a corrected value of a sweep depends on. */
    Influence influence(Sweep sweep, int index) {
        return influence(
                sweep.property(),
                sweep.subject(),
                sweep.value(index),
                sweep.grid().megahertz(index),
                conditions(sweep.unit(), sweep.subject(), sweep.grid(), index));
    }

    /**
     * The derivatives of the laws in a row, by what was read of the reel itself.
     *
     * <p>A bay that sends a value per length has brought it there from the reel's own length. That step is undone by the
     * requirement's laws, which are linear in the value, so that the instrument's uncertainty and that of the length enter alike in
     * whatever unit the value was sent.
     */
    private Influence influence(
            Property property, Subject subject, double value, double megahertz, MeasurementConditions asSent) {
        double metres = evidence.result().length().metres();
        MeasurementConditions ofReel = new MeasurementConditions(
                asSent.temperature(),
                evidence.result().length(),
                asSent.referenceTemperature(),
                asSent.referenceLength(),
                asSent.lossPerMetre());
        double reading = value;
        if (asSent.length().metres() != metres) {
            double slope = sensitivity(value, ofReel).value();
            reading = value + (applied(value, asSent) - applied(value, ofReel)) / slope;
        }
        Sensitivity sensitivity = sensitivity(reading, ofReel);
        double perMetre = sensitivity.perMetre();
        TreeMap<Integer, Influence.Loss> losses = new TreeMap<>();
        if (sensitivity.perLossPerMetre() != 0) {
            double lossPerMetre = asSent.lossPerMetre().orElseThrow();
            // a = A/L: a longer reel means a lower loss per metre, and an error of A is spread over the length.
            perMetre -= sensitivity.perLossPerMetre() * lossPerMetre / metres;
            losses.put(
                    subject.pair(),
                    new Influence.Loss(megahertz, lossPerMetre * metres, sensitivity.perLossPerMetre() / metres));
        }
        return new Influence(
                List.of(new Influence.Instrument(property, subject.words(), reading, megahertz, sensitivity.value())),
                sensitivity.perDegree(),
                perMetre,
                losses);
    }

    private Sensitivity sensitivity(double value, MeasurementConditions conditions) {
        double corrected = value;
        Sensitivity all = Sensitivity.UNCHANGED;
        for (CorrectionLaw law : laws) {
            all = all.then(law.sensitivity(corrected, conditions));
            corrected = law.correct(corrected, conditions);
        }
        return all;
    }

    private double applied(double value, MeasurementConditions conditions) {
        double corrected = value;
        for (CorrectionLaw law : laws) {
            corrected = law.correct(corrected, conditions);
        }
        return corrected;
    }

    /**
     * For each point of a sweep why the reel is too short for it to be representative; absent where it is long enough.
     *
     * <p>What comes back from the far end is weakened there and back, by twice the insertion loss. Where that is little, the value is
     * that of the far end's termination as much as the cable's.
     */
    @Nullable
    Obstacle[] tooShort(Sweep sweep) {
        @Nullable Obstacle[] reasons = new @Nullable Obstacle[sweep.size()];
        if (leastRoundTripLoss.isEmpty()) {
            return reasons;
        }
        double least = leastRoundTripLoss.getAsDouble();
        List<Integer> unknown = new ArrayList<>();
        List<Integer> small = new ArrayList<>();
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < reasons.length; i++) {
            if (!domain.holds(sweep.grid().megahertz(i))) {
                continue;
            }
            OptionalDouble loss = roundTripLoss(sweep, i);
            if (loss.isEmpty()) {
                unknown.add(i);
            } else if (!(loss.getAsDouble() >= least)) {
                small.add(i);
                smallest = Math.min(smallest, loss.getAsDouble());
            }
        }
        Obstacle notKnown = obstacle(Obstacle.Kind.LENGTH_NOT_KNOWN_ENOUGH, sweep, unknown, Map.of());
        Obstacle tooSmall = obstacle(
                Obstacle.Kind.LENGTH_TOO_SHORT,
                sweep,
                small,
                Map.of(
                        "least",
                        String.valueOf(least),
                        "smallest",
                        BigDecimal.valueOf(smallest == Double.POSITIVE_INFINITY ? least : smallest)
                                .round(DIGITS_TOLD)
                                .toPlainString()));
        unknown.forEach(i -> reasons[i] = notKnown);
        small.forEach(i -> reasons[i] = tooSmall);
        return reasons;
    }

    /** That some points of a sweep cannot be judged for the reel's length; with the frequencies that they span. */
    private static Obstacle obstacle(
            Obstacle.Kind kind, Sweep sweep, List<Integer> points, Map<String, String> figures) {
        Map<String, String> parts = new HashMap<>(figures);
        parts.put("property", sweep.property().id());
        parts.put("where", sweep.subject().words());
        if (!points.isEmpty()) {
            parts.put("from", String.valueOf(sweep.grid().megahertz(points.get(0))));
            parts.put("to", String.valueOf(sweep.grid().megahertz(points.get(points.size() - 1))));
        }
        return new Obstacle(kind, parts);
    }

    /** That the reel is long enough at a point, with its figures; empty when the requirement does not ask. */
    Optional<Step> longEnough(Sweep sweep, int index) {
        OptionalDouble loss = leastRoundTripLoss.isEmpty() ? leastRoundTripLoss : roundTripLoss(sweep, index);
        return loss.isEmpty()
                ? Optional.empty()
                : Optional.of(new Step(
                        "representative",
                        "loss there and back, twice the measured insertion loss of the pair over the reel; at least "
                                + leastRoundTripLoss.getAsDouble() + " dB is asked for",
                        loss.getAsDouble(),
                        Property.INSERTION_LOSS.canonicalUnit(),
                        source));
    }

    private OptionalDouble roundTripLoss(Sweep sweep, int index) {
        int pair = Objects.requireNonNull(sweep.subject().pair(), "what is lost there and back is lost in a pair");
        OptionalDouble perMetre =
                lossCurve(pair).map(curve -> curve.at(sweep.grid(), index)).orElse(OptionalDouble.empty());
        return perMetre.isEmpty()
                ? perMetre
                : OptionalDouble.of(THERE_AND_BACK
                        * perMetre.getAsDouble()
                        * evidence.result().length().metres());
    }

    /** The chain of a single value. */
    List<Step> steps(Property property, double value, ReadingUnit sentUnit) {
        return steps(property, value, conditions(sentUnit));
    }

    /** The chain of a value of a sweep. */
    List<Step> steps(
            Property property, double value, ReadingUnit sentUnit, Subject subject, FrequencyGrid grid, int index) {
        return steps(property, value, conditions(sentUnit, subject, grid, index));
    }

    private List<Step> steps(Property property, double value, MeasurementConditions conditions) {
        List<Step> steps = new ArrayList<>();
        double corrected = value;
        for (int i = 0; i < laws.size(); i++) {
            CorrectionLaw law = laws.get(i);
            corrected = law.correct(corrected, conditions);
            steps.add(new Step(
                    "corrected",
                    law.name() + ": " + law.formula() + "; " + figures(conditions),
                    corrected,
                    i + 1 == laws.size() ? unit : property.canonicalUnit(),
                    law.citation()));
        }
        return steps;
    }

    private static String figures(MeasurementConditions conditions) {
        String figures = "t = " + conditions.temperature().words() + ", reference "
                + conditions.referenceTemperature().words() + "; L = "
                + conditions.length().metres() + " m, reference "
                + conditions.referenceLength().metres() + " m";
        OptionalDouble loss = conditions.lossPerMetre();
        return loss.isPresent() ? figures + "; a = " + loss.getAsDouble() + " dB/m measured" : figures;
    }

    private MeasurementConditions conditions(ReadingUnit sentUnit) {
        return new MeasurementConditions(
                evidence.result().temperature(),
                perConductorLength ? evidence.conductorLengthOf(sentUnit) : evidence.lengthOf(sentUnit),
                referenceTemperature,
                referenceLength,
                OptionalDouble.empty());
    }

    private MeasurementConditions conditions(ReadingUnit sentUnit, Subject subject, FrequencyGrid grid, int index) {
        MeasurementConditions conditions = conditions(sentUnit);
        OptionalDouble loss = subject.pair() == null
                ? OptionalDouble.empty()
                : lossCurve(subject.pair()).map(curve -> curve.at(grid, index)).orElse(OptionalDouble.empty());
        return loss.isPresent() ? conditions.withLossPerMetre(loss.getAsDouble()) : conditions;
    }

    private Optional<LossCurve> lossCurve(int pair) {
        return lossCurves.computeIfAbsent(pair, key -> evidence.sweep(Property.INSERTION_LOSS, Subject.ofPair(key))
                .map(sweep -> new LossCurve(sweep, evidence.lengthOf(sweep.unit()))));
    }
}
