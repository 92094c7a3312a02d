package dev.reelproof.judgement;

import dev.reelproof.correction.Line;
import dev.reelproof.measurement.Property;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.function.IntUnaryOperator;

/**
 * Source: JCGM 100:2008 (GUM), 5.2.2, correlated input quantities (from memory).
 *
 * <p>What each source of error shifts the values of a series by, in columns: one standard uncertainty at a time, with its sign.
 *
 * <ul>
 *   <li>Equation: u² = Σ over the properties read [(Σ √r g u)² + Σ (1 − r)(g u)²] + (∂c/∂t u(t))² + (∂c/∂L)² u²(L) + (∂c/∂ln α u(α))²
 *   <li>Symbols: c corrected value, g its derivative by a reading, u the reading's standard uncertainty and r the correlation of the
 *       readings of that property; t temperature of the cable, L length of the reel, α temperature coefficients of the laws
 *   <li>Range: values derived from parts of which no two hold the same reading, but for the loss of a pair, which is kept by pair
 *   <li>Edge cases: NaN where an instrument's uncertainty is not known
 *   <li>Known error: of first order
 * </ul>
 */
final class ErrorColumns {
    /** The readings of one property: what they do in common, and the sum of the squares of what each does for itself. */
    private record Readings(double[] common, double[] squares) {
        Readings(int size) {
            this(new double[size], new double[size]);
        }
    }

    /** The loss of one pair, which may enter several parts: what it does in common with the others' and for itself, with its sign. */
    private record Loss(double[] common, double[] own) {
        Loss(int size) {
            this(new double[size], new double[size]);
        }
    }

    private final Block block;
    private final int size;
    private final Map<Property, Readings> readings = new EnumMap<>(Property.class);
    private final TreeMap<Integer, Loss> losses = new TreeMap<>();
    private final double[] byTemperature;
    private final double[] byLength;
    private final double[] byCoefficient;

    private ErrorColumns(Block block) {
        this.block = block;
        this.size = block.size();
        this.byTemperature = new double[size];
        this.byLength = new double[size];
        this.byCoefficient = new double[size];
    }

    /**
     * The errors of values that were measured.
     *
     * @param series whose values they are; a point with an obstacle is passed over
     * @param block which of them
     * @param dependence of a point
     * @param lossPair the pair whose loss corrected a point; asked only where one did
     */
    static ErrorColumns measured(
            Series series,
            Block block,
            ErrorSide side,
            Propagation propagation,
            IntFunction<Dependence> dependence,
            IntUnaryOperator lossPair) {
        ErrorColumns errors = new ErrorColumns(block);
        Readings own = errors.readings.computeIfAbsent(series.property(), key -> new Readings(errors.size));
        Instruments instruments =
                propagation.instruments(series.property(), series.grid()).orElse(null);
        if (instruments == null) {
            Arrays.fill(own.common, Double.NaN);
            return errors;
        }
        for (int i = block.from(); i < block.to(); i++) {
            if (series.obstacle(i) != null) {
                continue;
            }
            int at = i - block.from();
            Dependence there = dependence.apply(i);
            double reading = there.reading(series.measured(i));
            int which = instruments.which(reading, i, side);
            double amount = there.slopes().value() * instruments.standard(which, reading, i, side);
            double common = instruments.rootOfCorrelation(which) * amount;
            own.common[at] = common;
            own.squares[at] = amount * amount - common * common;
            errors.byTemperature[at] = propagation.byTemperature(there, reading);
            errors.byLength[at] = propagation.byLength(there, reading);
            errors.byCoefficient[at] = propagation.byCoefficients(there, reading);
            if (there.perLoss(reading) != 0) {
                errors.addLoss(
                        lossPair.applyAsInt(i), there.perLoss(reading), there.loss(), i, side, propagation, series);
            }
        }
        return errors;
    }

    private void addLoss(
            int pair,
            double derivative,
            double loss,
            int index,
            ErrorSide side,
            Propagation propagation,
            Series series) {
        Loss ofPair = losses.computeIfAbsent(pair, key -> new Loss(size));
        Instruments instruments =
                propagation.instruments(Property.INSERTION_LOSS, series.grid()).orElse(null);
        if (instruments == null) {
            ofPair.common[index - block.from()] = Double.NaN;
            return;
        }
        int which = instruments.which(loss, index, side);
        double amount = derivative * instruments.standard(which, loss, index, side);
        double root = instruments.rootOfCorrelation(which);
        ofPair.common[index - block.from()] = root * amount;
        ofPair.own[index - block.from()] = Math.sqrt(1 - root * root) * amount;
    }

    /** The errors of values that were counted: as those of one reading of the property. */
    static ErrorColumns counted(Series series, Block block, ErrorSide side, Propagation propagation) {
        Dependence itself = new Dependence(Line.UNCHANGED, Slopes.NONE, Double.NaN, 1);
        return measured(series, block, side, propagation, index -> itself, index -> 0);
    }

    /**
     * The errors of values derived from parts.
     *
     * @param parts at least one, of one block
     * @param gradient derivative of each value of the block by each part: one column a part
     */
    static ErrorColumns derived(List<ErrorColumns> parts, double[][] gradient) {
        ErrorColumns errors = new ErrorColumns(parts.get(0).block);
        for (int part = 0; part < gradient.length; part++) {
            errors.add(parts.get(part), gradient[part]);
        }
        return errors;
    }

    private void add(ErrorColumns part, double[] gradient) {
        part.readings.forEach((property, theirs) -> {
            Readings own = readings.computeIfAbsent(property, key -> new Readings(size));
            for (int i = 0; i < size; i++) {
                own.common[i] += gradient[i] * theirs.common[i];
                own.squares[i] += gradient[i] * gradient[i] * theirs.squares[i];
            }
        });
        part.losses.forEach((pair, theirs) -> {
            Loss own = losses.computeIfAbsent(pair, key -> new Loss(size));
            addTo(own.common, gradient, theirs.common);
            addTo(own.own, gradient, theirs.own);
        });
        addTo(byTemperature, gradient, part.byTemperature);
        addTo(byLength, gradient, part.byLength);
        addTo(byCoefficient, gradient, part.byCoefficient);
    }

    private static void addTo(double[] own, double[] gradient, double[] theirs) {
        for (int i = 0; i < own.length; i++) {
            own[i] += gradient[i] * theirs[i];
        }
    }

    /** The combined standard uncertainties of the values; NaN where one is not known. */
    double[] standards() {
        double[] variances = new double[size];
        for (Readings one : readings.values()) {
            addSquares(variances, one.common);
            for (int i = 0; i < size; i++) {
                variances[i] += one.squares[i];
            }
        }
        double[] commonOfLosses = new double[size];
        for (Loss one : losses.values()) {
            addSquares(variances, one.own);
            for (int i = 0; i < size; i++) {
                commonOfLosses[i] += one.common[i];
            }
        }
        for (double[] column : new double[][] {commonOfLosses, byTemperature, byLength, byCoefficient}) {
            addSquares(variances, column);
        }
        for (int i = 0; i < size; i++) {
            variances[i] = Math.sqrt(variances[i]);
        }
        return variances;
    }

    private static void addSquares(double[] sums, double[] column) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += column[i] * column[i];
        }
    }
}
