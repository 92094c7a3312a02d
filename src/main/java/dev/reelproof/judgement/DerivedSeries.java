package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Values formed point by point from parts on one grid. */
final class DerivedSeries extends Series {
    private final List<Series> parts;
    private final Formula formula;
    private final String unit;
    private final ReadingUnit sentUnit;
    private final Function<Block, double[][]> gradients;
    private final boolean ofShares;

    private DerivedSeries(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            String unit,
            double[] measured,
            CorrectedColumn corrected,
            @Nullable Function<Block, double[][]> gradients) {
        super(property, subject, parts.get(0).grid(), measured, corrected);
        this.parts = List.copyOf(parts);
        this.formula = formula;
        this.unit = unit;
        this.sentUnit = ReadingUnit.parse(property.canonicalUnit());
        this.gradients = gradients == null ? this::gradientOfEach : gradients;
        this.ofShares = gradients != null;
    }

    /**
     * Forms values from their parts.
     *
     * @param parts at least one, on one grid
     * @param unit the unit of the corrected value
     */
    static DerivedSeries of(
            Property property, Subject subject, List<? extends Series> parts, Formula formula, String unit) {
        List<Series> all = List.copyOf(parts);
        return of(
                property,
                subject,
                all,
                formula,
                unit,
                formed(all, Series::measured, formula),
                formed(all, Series::corrected, formula),
                null);
    }

    /**
     * Values that are formed already, such as power sums whose parts are in more than one sum.
     *
     * @param measured formed of the parts as measured
     * @param corrected formed of the corrected parts; what stands where a part has an obstacle does not count
     * @param gradients derivatives by each part, one column a part: shares that add up to 1; absent for those of the formula, point by
     *     point
     */
    static DerivedSeries of(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            String unit,
            double[] measured,
            double[] corrected,
            @Nullable Function<Block, double[][]> gradients) {
        @Nullable Obstacle[] obstacles = CorrectedColumn.NO_OBSTACLES;
        double[] values = corrected;
        for (Series part : parts) {
            for (int i = 0; i < part.size(); i++) {
                Obstacle obstacle = part.obstacle(i);
                if (obstacle != null) {
                    if (obstacles.length == 0) {
                        obstacles = new @Nullable Obstacle[part.size()];
                        values = corrected.clone();
                    }
                    obstacles[i] = obstacle;
                    values[i] = Double.NaN;
                }
            }
        }
        return new DerivedSeries(
                property, subject, parts, formula, unit, measured, new CorrectedColumn(values, obstacles), gradients);
    }

    private static double[] formed(List<Series> parts, ToDoubleBiFunction<Series, Integer> valueAt, Formula formula) {
        double[] formed = new double[parts.get(0).size()];
        for (int i = 0; i < formed.length; i++) {
            double[] values = valuesAt(parts, valueAt, i);
            formed[i] = areFinite(values) ? formula.value().applyAsDouble(values) : Double.NaN;
        }
        return formed;
    }

    private static boolean areFinite(double[] values) {
        for (double value : values) {
            if (!Double.isFinite(value)) {
                return false;
            }
        }
        return true;
    }

    private static double[] valuesAt(List<Series> parts, ToDoubleBiFunction<Series, Integer> valueAt, int index) {
        double[] values = new double[parts.size()];
        for (int part = 0; part < values.length; part++) {
            values[part] = valueAt.applyAsDouble(parts.get(part), index);
        }
        return values;
    }

    private double[] gradientAt(int index) {
        return formula.gradient().orElseThrow().apply(valuesAt(parts, Series::corrected, index));
    }

    @Override
    double sent(int index) {
        return measured(index);
    }

    @Override
    ReadingUnit sentUnit() {
        return sentUnit;
    }

    @Override
    boolean derived() {
        return true;
    }

    @Override
    boolean takesLoss() {
        return parts.stream().anyMatch(Series::takesLoss);
    }

    @Override
    List<Step> steps(int index) {
        List<Step> steps = new ArrayList<>();
        parts.forEach(part -> steps.addAll(part.steps(index)));
        steps.add(new Step(
                "derived",
                property() + " of " + subject().words() + ": " + formula.words() + " of "
                        + parts.stream()
                                .map(part -> part.property() + " of "
                                        + part.subject().words())
                                .collect(Collectors.joining("; ")),
                corrected(index),
                unit,
                formula.source()));
        return steps;
    }

    @Override
    Influence influence(int index) {
        return formula.gradient().isEmpty()
                ? Influence.ofReading(property(), subject().words(), corrected(index))
                : Influence.combined(
                        gradientAt(index),
                        parts.stream().map(part -> part.influence(index)).toList());
    }

    @Override
    ErrorColumns errors(Propagation propagation, ErrorSide side, Block block) {
        return formula.gradient().isEmpty()
                ? ErrorColumns.counted(this, block, side, propagation)
                : ErrorColumns.derived(
                        parts.stream()
                                .map(part -> part.errors(propagation, side, block))
                                .toList(),
                        gradients.apply(block));
    }

    /** A mean with any weights errs no more than the part that errs most. */
    @Override
    double errorAtMost(Propagation propagation, Block block) {
        double greatest = ofShares ? 0 : Double.NaN;
        for (int part = 0; part < parts.size() && ofShares; part++) {
            greatest = Math.max(greatest, parts.get(part).errorAtMost(propagation, block));
        }
        return greatest;
    }

    private double[][] gradientOfEach(Block block) {
        double[][] gradients = new double[parts.size()][block.size()];
        for (int i = block.from(); i < block.to(); i++) {
            if (obstacle(i) == null) {
                double[] there = gradientAt(i);
                for (int part = 0; part < there.length; part++) {
                    gradients[part][i - block.from()] = there[part];
                }
            }
        }
        return gradients;
    }
}
