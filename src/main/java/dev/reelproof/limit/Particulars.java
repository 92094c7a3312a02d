package dev.reelproof.limit;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a requirement may say beyond its limit. All of it is optional; {@link #NONE} says none of it.
 *
 * @param required whether a reel without any value of the property fails to be complete; false for tests that the source demands
 *     of samples, of a design or of one of two methods only
 * @param leastRoundTripLoss least loss there and back along the measured length, dB, for a value to be representative; empty
 *     where any length will do
 * @param testedLength how much conductor must have been tested, for a count per length; empty where any will do
 * @param sampling when a part of the pairs may stand for all; empty when never
 * @param each what a pair must meet to be counted; only for the percentage of pairs
 * @param per whether a statistic is one of the whole reel, or one for each unit
 */
public record Particulars(
        boolean required,
        OptionalDouble leastRoundTripLoss,
        Optional<TestedLength> testedLength,
        Optional<Sampling> sampling,
        Optional<Each> each,
        Per per) {

    /** @throws IllegalArgumentException when the least loss is below 0 or not finite, or when a sample would stand for each unit */
    public Particulars {
        leastRoundTripLoss.ifPresent(least -> {
            if (!(least >= 0 && Double.isFinite(least))) {
                throw new IllegalArgumentException(
                        "the least loss there and back must be 0 or more and finite, not " + least + " dB");
            }
        });
        if (per == Per.UNIT && sampling.isPresent()) {
            throw new IllegalArgumentException(
                    "a sample of pairs stands for the whole reel; a statistic per unit takes no sample");
        }
    }

    /** Nothing said: required, at any length, of every pair, over the whole reel. */
    public static final Particulars NONE = new Particulars(
            true, OptionalDouble.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Per.REEL);

    /**
     * The conductor length that must have been tested.
     *
     * @param least for any judgement
     * @param leastToReject for a judgement against the reel
     */
    public record TestedLength(Length least, Length leastToReject) {

        public TestedLength {
            if (!(leastToReject.metres() >= least.metres())) {
                throw new IllegalArgumentException("the least length to reject by, " + leastToReject.metres()
                        + " m, is below the least length to judge by, " + least.metres() + " m");
            }
        }
    }

    /**
     * When a part of the pairs may stand for all: enough of them were measured, and their average lies between two figures.
     *
     * @param pairs fewest pairs measured
     * @param lower least average, in the requirement's reference
     * @param upper greatest average, in the requirement's reference
     */
    public record Sampling(int pairs, Bound.Constant lower, Bound.Constant upper) {

        public Sampling {
            if (!(pairs >= 1)) {
                throw new IllegalArgumentException("a sample has 1 pair or more, not " + pairs);
            }
            if (!(lower.value() <= upper.value())) {
                throw new IllegalArgumentException("the lower figure " + lower.formula(Double.NaN)
                        + " is above the upper figure " + upper.formula(Double.NaN));
            }
        }
    }

    /**
     * What every value of a pair must meet for the pair to be counted.
     *
     * @param limit the limit, constant
     * @param unit its unit, which the values are corrected to
     */
    public record Each(Limit limit, ReadingUnit unit) {

        public Each {
            if (limit.lower().or(limit::upper).orElseThrow() instanceof Bound.Curve) {
                throw new IllegalArgumentException("what each pair must meet is one figure, not a curve");
            }
        }
    }
}
