package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.UniqueElements;
import org.junit.jupiter.api.Test;

/** The derivatives of derived figures and statistics against central differences. */
class GradientTest {
    private static final double STEP = 1e-4;
    // The differences err by STEP² of the third derivative, and by 1e-14/STEP of rounding; the values lie far enough
    // apart.
    private static final double TOLERANCE = 2e-6;

    private static void agrees(
            ToDoubleFunction<double[]> figure, Function<double[], double[]> gradient, double[] values) {
        double[] found = gradient.apply(values);
        for (int i = 0; i < values.length; i++) {
            double[] more = values.clone();
            double[] less = values.clone();
            more[i] += STEP;
            less[i] -= STEP;
            double difference = (figure.applyAsDouble(more) - figure.applyAsDouble(less)) / (2 * STEP);
            assertEquals(difference, found[i], TOLERANCE * Math.max(1, Math.abs(difference)), "by value " + i);
        }
    }

    @Property
    void ofFiguresOfValues(
            @ForAll @Size(min = 2, max = 25) @UniqueElements
                    List<@DoubleRange(min = 5, max = 80) @Scale(0) Double> values) {
        double[] x = values.stream().mapToDouble(Double::doubleValue).toArray();
        agrees(PowerSum::of, PowerSum::gradient, x);
        agrees(DelaySkew::of, DelaySkew::gradient, x);
        agrees(SummaryStatistics::mean, SummaryStatistics::meanGradient, x);
        agrees(SummaryStatistics::rms, SummaryStatistics::rmsGradient, x);
        agrees(SummaryStatistics::rmsOfLevels, SummaryStatistics::rmsOfLevelsGradient, x);
        agrees(SummaryStatistics::rmsDeviationPercent, SummaryStatistics::rmsDeviationPercentGradient, x);
        agrees(SummaryStatistics::meanMinusSigma, SummaryStatistics::meanMinusSigmaGradient, x);
        agrees(SummaryStatistics::maximum, SummaryStatistics::maximumGradient, x);
    }

    @Property
    void ofTheTwoResistancesOfAPair(
            @ForAll @DoubleRange(min = 5, max = 50) @Scale(3) double ra,
            @ForAll @DoubleRange(min = 5, max = 50) @Scale(3) double rb) {
        double[] apart = {ra, Math.abs(ra - rb) < 0.01 ? ra + 0.1 : rb};
        agrees(x -> PairResistance.parallel(x[0], x[1]), x -> PairResistance.parallelGradient(x[0], x[1]), apart);
        agrees(x -> PairResistance.loop(x[0], x[1]), x -> PairResistance.loopGradient(), apart);
        for (UnbalanceDenominator denominator : UnbalanceDenominator.values()) {
            agrees(x -> denominator.percent(x[0], x[1]), x -> denominator.gradient(x[0], x[1]), apart);
        }
    }

    @Property
    void theSharesOfAPowerSumAddUpToOne(
            @ForAll @Size(min = 1, max = 60) List<@DoubleRange(min = -20, max = 120) @Scale(9) Double> levels) {
        double[] shares = PowerSum.gradient(
                levels.stream().mapToDouble(Double::doubleValue).toArray());
        assertEquals(1, Arrays.stream(shares).sum(), 1e-12);
    }

    @Test
    void equalValuesHideNoUncertainty() {
        double[] equal = {20, 20, 20, 20};
        assertArrayEquals(new double[] {1, 0, 0, -1}, DelaySkew.gradient(equal), 0);
        assertArrayEquals(
                new double[] {1.25, 1.25, 1.25, 1.25}, SummaryStatistics.rmsDeviationPercentGradient(equal), 1e-15);
        for (double one : SummaryStatistics.meanMinusSigmaGradient(equal)) {
            assertEquals(0.25 + 1 / Math.sqrt(12), one, 1e-15);
        }
        assertArrayEquals(new double[] {0.5, 0.5}, SummaryStatistics.rmsGradient(0, 0), 0);
        double[] unbalance = UnbalanceDenominator.MINIMUM.gradient(10, 10);
        assertTrue(unbalance[0] == 10 && unbalance[1] == -10);
    }
}
