package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleBiFunction;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Values formed point by point from parts on one grid. */
final class DerivedSeries extends Series {
    private final List<Series> parts;
    private final Formula formula;
    private final String unit;

    private DerivedSeries(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            String unit,
            double[] measured,
            CorrectedColumn corrected) {
        super(property, subject, parts.get(0).grid(), measured, corrected);
        this.parts = List.copyOf(parts);
        this.formula = formula;
        this.unit = unit;
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
                formed(all, Series::corrected, formula));
    }

    /**
     * Values that are formed already, such as power sums whose parts are in more than one sum.
     *
     * @param measured formed of the parts as measured
     * @param corrected formed of the corrected parts; what stands where a part has an obstacle does not count
     */
    static DerivedSeries of(
            Property property,
            Subject subject,
            List<Series> parts,
            Formula formula,
            String unit,
            double[] measured,
            double[] corrected) {
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
                property, subject, parts, formula, unit, measured, new CorrectedColumn(values, obstacles));
    }

    private static double[] formed(List<Series> parts, ToDoubleBiFunction<Series, Integer> valueAt, Formula formula) {
        double[] formed = new double[parts.get(0).size()];
        for (int i = 0; i < formed.length; i++) {
            double[] values = valuesAt(parts, valueAt, i);
            formed[i] = Arrays.stream(values).allMatch(Double::isFinite)
                    ? formula.value().applyAsDouble(values)
                    : Double.NaN;
        }
        return formed;
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
        return ReadingUnit.parse(property().canonicalUnit());
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
    ErrorColumns errors(Propagation propagation, ErrorSide side) {
        if (formula.gradient().isEmpty()) {
            return ErrorColumns.counted(this, side, propagation);
        }
        double[][] gradient = new double[parts.size()][size()];
        for (int i = 0; i < size(); i++) {
            if (obstacle(i) == null) {
                double[] there = gradientAt(i);
                for (int part = 0; part < there.length; part++) {
                    gradient[part][i] = there[part];
                }
            }
        }
        return ErrorColumns.derived(
                parts.stream().map(part -> part.errors(propagation, side)).toList(), gradient);
    }
}
