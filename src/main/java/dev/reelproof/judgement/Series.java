package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The values of one subject, ready to be judged: as measured, as corrected, and the chain between them.
 *
 * <p>A single value is a series of one without a grid. A point that could not be corrected holds NaN and a reason.
 */
final class Series {
    private static final Set<Property> OF_EITHER_SIGN =
            EnumSet.of(Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR, Property.CAPACITANCE_UNBALANCE_TO_GROUND);

    private final Property property;
    private final Subject subject;
    private final @Nullable FrequencyGrid grid;
    private final double[] measured;
    private final double[] sent;
    private final ReadingUnit sentUnit;
    private final double[] corrected;
    private final boolean derived;
    private final @Nullable Obstacle[] obstacles;
    private final IntFunction<List<Step>> steps;
    private final IntFunction<Influence> influences;

    private Series(
            Property property,
            Subject subject,
            @Nullable FrequencyGrid grid,
            double[] measured,
            double[] sent,
            ReadingUnit sentUnit,
            double[] corrected,
            boolean derived,
            @Nullable Obstacle[] obstacles,
            IntFunction<List<Step>> steps,
            IntFunction<Influence> influences) {
        this.property = property;
        this.subject = subject;
        this.grid = grid;
        this.measured = measured;
        this.sent = sent;
        this.sentUnit = sentUnit;
        this.corrected = corrected;
        this.derived = derived;
        this.obstacles = obstacles;
        this.steps = steps;
        this.influences = influences;
    }

    /** A single value, corrected. */
    static Series of(Reading reading, Corrector corrector) {
        @Nullable Obstacle[] obstacles = new @Nullable Obstacle[1];
        double[] corrected = {Double.NaN};
        double size = size(reading.property(), reading.value());
        try {
            corrected[0] = corrector.correct(size, reading.unit());
        } catch (OutsideLawException e) {
            obstacles[0] = notCorrected(e);
        }
        return new Series(
                reading.property(),
                reading.subject(),
                null,
                new double[] {reading.value()},
                new double[] {reading.sent()},
                reading.unit(),
                corrected,
                false,
                obstacles,
                index -> {
                    List<Step> steps = measuredSteps(
                            reading.property(),
                            reading.origin().of(0) + ": " + reading.property() + " of "
                                    + reading.subject().words(),
                            reading.sent(),
                            reading.unit().text(),
                            reading.unit().numerator(),
                            reading.value());
                    if (size != reading.value()) {
                        steps.add(new Step(
                                "size",
                                "the sign says which side is the greater; the limit is on the size",
                                size,
                                reading.property().canonicalUnit(),
                                null));
                    }
                    steps.addAll(corrector.steps(reading.property(), size, reading.unit()));
                    return steps;
                },
                index -> corrector.influence(reading));
    }

    /** The size of an unbalance, whose sign only says which side is the greater; every other value as it is. */
    private static double size(Property property, double value) {
        return OF_EITHER_SIGN.contains(property) ? Math.abs(value) : value;
    }

    /** A sweep, corrected point by point. */
    static Series of(Sweep sweep, Corrector corrector) {
        int size = sweep.size();
        @Nullable Obstacle[] obstacles = corrector.tooShort(sweep);
        double[] corrected = new double[size];
        for (int i = 0; i < size; i++) {
            try {
                corrected[i] = corrector.correct(sweep.value(i), sweep.unit(), sweep.subject(), sweep.grid(), i);
            } catch (OutsideLawException e) {
                corrected[i] = Double.NaN;
                obstacles[i] = notCorrected(e);
            }
        }
        return new Series(
                sweep.property(),
                sweep.subject(),
                sweep.grid(),
                sweep.values(),
                sweep.sent(),
                sweep.unit(),
                corrected,
                false,
                obstacles,
                index -> {
                    List<Step> steps = networkSteps(sweep, index);
                    steps.addAll(measuredSteps(
                            sweep.property(),
                            sweep.origin().of(index) + ": " + sweep.property() + " of "
                                    + sweep.subject().words() + " at "
                                    + sweep.grid().megahertz(index) + " MHz",
                            sweep.sent(index),
                            sweep.unit().text(),
                            sweep.unit().numerator(),
                            sweep.value(index)));
                    corrector.longEnough(sweep, index).ifPresent(steps::add);
                    steps.addAll(corrector.steps(
                            sweep.property(), sweep.value(index), sweep.unit(), sweep.subject(), sweep.grid(), index));
                    return steps;
                },
                index -> corrector.influence(sweep, index));
    }

    private static Obstacle notCorrected(OutsideLawException reason) {
        return new Obstacle(Obstacle.Kind.CORRECTION_NOT_POSSIBLE, Map.of("why", String.valueOf(reason.getMessage())));
    }

    /** How a network-analyser file became the value; none for other origins. */
    private static List<Step> networkSteps(Sweep sweep, int index) {
        List<Step> steps = new ArrayList<>();
        if (sweep.origin() instanceof Origin.Network network) {
            for (Origin.Network.Link link : network.chain()) {
                double value = link.value() == null ? sweep.sent(index) : link.value();
                steps.add(new Step(link.title(), link.detail(), value, link.unit(), link.source()));
            }
        }
        return steps;
    }

    private static List<Step> measuredSteps(
            Property property, String place, double sent, String sentUnit, String numerator, double value) {
        List<Step> steps = new ArrayList<>();
        steps.add(new Step("measured", place, sent, sentUnit, null));
        if (!numerator.equals(property.canonicalUnit())) {
            steps.add(new Step(
                    "converted", numerator + " to " + property.canonicalUnit(), value, property.canonicalUnit(), null));
        }
        return steps;
    }

    /** How a derived value is formed from its parts' values; the same at every frequency. */
    @FunctionalInterface
    interface Formula {
        double of(double[] parts);
    }

    /** The derivatives of a formula by its parts' values, in their order. */
    @FunctionalInterface
    interface Gradient {
        double[] of(double[] parts);
    }

    /**
     * A series derived point by point from parts on one grid.
     *
     * @param formula how the parts make the value
     * @param gradient the derivatives of the formula by its parts
     * @param words the formula for people
     * @param source where the formula comes from
     * @param unit the unit of the corrected value
     */
    static Series derived(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            Gradient gradient,
            String words,
            String source,
            String unit) {
        return formed(property, subject, parts, formula, Optional.of(gradient), words, source, unit);
    }

    /** A figure counted from corrected parts. It has no derivative by them, so the uncertainty model must have an entry for itself. */
    static Series counted(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            String words,
            String source,
            String unit) {
        return formed(property, subject, parts, formula, Optional.empty(), words, source, unit);
    }

    private static Series formed(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            Optional<Gradient> gradient,
            String words,
            String source,
            String unit) {
        FrequencyGrid grid = parts.get(0).grid;
        int size = parts.get(0).size();
        double[] measured = new double[size];
        double[] corrected = new double[size];
        @Nullable Obstacle[] obstacles = new @Nullable Obstacle[size];
        double[] values = new double[parts.size()];
        for (int i = 0; i < size; i++) {
            for (int part = 0; part < values.length; part++) {
                values[part] = parts.get(part).measured[i];
            }
            measured[i] = formula.of(values);
            for (int part = 0; part < values.length; part++) {
                values[part] = parts.get(part).corrected[i];
                if (parts.get(part).obstacles[i] != null) {
                    obstacles[i] = parts.get(part).obstacles[i];
                }
            }
            corrected[i] = obstacles[i] == null ? formula.of(values) : Double.NaN;
        }
        return new Series(
                property,
                subject,
                grid,
                measured,
                measured,
                ReadingUnit.parse(property.canonicalUnit()),
                corrected,
                true,
                obstacles,
                index -> {
                    List<Step> steps = new ArrayList<>();
                    parts.forEach(part -> steps.addAll(part.steps(index)));
                    steps.add(new Step(
                            "derived",
                            property + " of " + subject.words() + ": " + words + " of "
                                    + parts.stream()
                                            .map(part -> part.property + " of " + part.subject.words())
                                            .collect(Collectors.joining("; ")),
                            corrected[index],
                            unit,
                            source));
                    return steps;
                },
                index -> gradient.map(derivatives -> Influence.combined(
                                derivatives.of(parts.stream()
                                        .mapToDouble(part -> part.corrected[index])
                                        .toArray()),
                                parts.stream()
                                        .map(part -> part.influence(index))
                                        .toList()))
                        .orElseGet(() -> Influence.ofReading(property, subject.words(), corrected[index])));
    }

    /** Whether two series have the same frequencies, or both none. */
    boolean sharesGridWith(Series other) {
        return Objects.equals(grid, other.grid);
    }

    Subject subject() {
        return subject;
    }

    /** The frequencies; absent for a single value. */
    @Nullable
    FrequencyGrid grid() {
        return grid;
    }

    int size() {
        return corrected.length;
    }

    /** The value as sent; of a derived series, formed from the parts before correction, in the canonical unit. */
    double sent(int index) {
        return sent[index];
    }

    /** The value as sent without the sign of an unbalance, for a statistic of values before correction. */
    double sentMagnitude(int index) {
        return size(property, sent[index]);
    }

    ReadingUnit sentUnit() {
        return sentUnit;
    }

    double corrected(int index) {
        return corrected[index];
    }

    /** Why a point cannot be judged; empty when it can. */
    Optional<Obstacle> obstacle(int index) {
        return Optional.ofNullable(obstacles[index]);
    }

    boolean derived() {
        return derived;
    }

    /** The chain from the raw value to the corrected one. */
    List<Step> steps(int index) {
        return steps.apply(index);
    }

    /**
     * What a corrected value depends on.
     *
     * @throws OutsideLawException when the law has no derivative there
     */
    Influence influence(int index) {
        return influences.apply(index);
    }

    /** Whether a law used the measured loss of a pair. */
    boolean takesLoss() {
        return IntStream.range(0, size())
                .filter(index -> obstacles[index] == null)
                .anyMatch(index -> !influence(index).losses().isEmpty());
    }

    /** The series as it is kept and plotted. */
    CorrectedSweep toSweep(String unit) {
        FrequencyGrid frequencies = Objects.requireNonNull(grid, "a single value is no sweep");
        return new CorrectedSweep(property, subject, frequencies, measured, corrected, unit, derived);
    }
}
