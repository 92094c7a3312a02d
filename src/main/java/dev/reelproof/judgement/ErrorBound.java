package dev.reelproof.judgement;

import dev.reelproof.measurement.Property;
import java.util.function.IntFunction;

/**
 * What no standard uncertainty in a block of measured values exceeds.
 *
 * <p>The instrument's uncertainty, which takes an exponential and a logarithm a point, is looked up once a block, at the least and the
 * greatest reading; what follows from the laws' derivatives is taken as it is, point by point.
 */
final class ErrorBound {
    private double lowest = Double.POSITIVE_INFINITY;
    private double highest = Double.NEGATIVE_INFINITY;

    private ErrorBound() {}

    /**
     * The bound for the passing values of a block; NaN where an instrument's uncertainty is not known.
     *
     * @param dependence of a point
     */
    static double of(Series series, Block block, IntFunction<Dependence> dependence, Propagation propagation) {
        ErrorBound readings = new ErrorBound();
        ErrorBound losses = new ErrorBound();
        double byValue = 0;
        double byLoss = 0;
        double rest = 0;
        for (int i = block.from(); i < block.to(); i++) {
            if (series.obstacle(i) != null) {
                continue;
            }
            Dependence there = dependence.apply(i);
            double reading = there.reading(series.measured(i));
            readings.add(reading);
            byValue = Math.max(byValue, Math.abs(there.slopes().value()));
            double perLoss = Math.abs(there.perLoss(reading));
            if (perLoss > 0) {
                losses.add(there.loss());
                byLoss = Math.max(byLoss, perLoss);
            }
            rest = Math.max(rest, propagation.squaresOfCommon(there, reading));
        }
        double ofValue = byValue * readings.atMost(series, series.property(), block, propagation);
        double ofLoss = byLoss == 0 ? 0 : byLoss * losses.atMost(series, Property.INSERTION_LOSS, block, propagation);
        return Math.sqrt(ofValue * ofValue + ofLoss * ofLoss + rest);
    }

    private void add(double reading) {
        lowest = Math.min(lowest, reading);
        highest = Math.max(highest, reading);
    }

    private double atMost(Series series, Property property, Block block, Propagation propagation) {
        return lowest > highest
                ? 0
                : propagation
                        .instruments(property, series.grid())
                        .map(instruments -> instruments.atMost(lowest, highest, block))
                        .orElse(Double.NaN);
    }
}
