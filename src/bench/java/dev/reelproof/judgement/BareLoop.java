package dev.reelproof.judgement;

import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import java.util.List;

/**
 * The arithmetic of judging the sweeps of a category 6A reel, and nothing else: corrections, power sums, skew, limits and the worst
 * margin of each requirement, over plain arrays. It is what a judgement is measured against: no requirement is read, nothing is
 * explained, no place is kept, no uncertainty known, and the figures of the set are typed in.
 *
 * <p>Formulas are written as they are printed, in the processor's own mathematics. The program needs {@code StrictMath}, which gives the
 * same digits on every machine; with its exponential in place of the power, the loop takes about as long.
 */
final class BareLoop {
    private static final List<String> REQUIREMENTS = List.of(
            "insertion-loss",
            "next",
            "ps-next",
            "acr-f",
            "ps-acr-f",
            "return-loss",
            "propagation-delay",
            "delay-skew");
    private static final double SAME = 1e-9;
    private static final double REFERENCE_METRES = 100;
    private static final int PAIRS = 4;
    private static final int ENDS = 2;
    private static final double PER_DECIBEL = Math.log(10) / 10;

    private final double[] megahertz;
    private final double celsius;
    private final double metres;
    private final double[][] loss = new double[PAIRS][];
    private final double[][] delay = new double[PAIRS][];
    private final double[][][] returnLoss = new double[ENDS][PAIRS][];
    /** By end, and the two pairs in either order, which share one array. */
    private final double[][][][] next = new double[ENDS][PAIRS][PAIRS][];
    /** By end, disturbed and disturbing pair. */
    private final double[][][][] acrF = new double[ENDS][PAIRS][PAIRS][];

    private BareLoop(double[] megahertz, double celsius, double metres) {
        this.megahertz = megahertz;
        this.celsius = celsius;
        this.metres = metres;
    }

    static BareLoop of(ReelResult result) {
        BareLoop loop = new BareLoop(
                result.sweeps().get(0).grid().toArray(),
                result.temperature().celsius(),
                result.length().metres());
        result.sweeps().forEach(sweep -> {
            Subject subject = sweep.subject();
            int pair = subject.pair() - 1;
            int end = subject.end() == End.FAR ? 1 : 0;
            double[] values = sweep.values();
            Property property = sweep.property();
            switch (property) {
                case INSERTION_LOSS -> loop.loss[pair] = values;
                case PROPAGATION_DELAY -> loop.delay[pair] = values;
                case RETURN_LOSS -> loop.returnLoss[end][pair] = values;
                case ACR_F -> loop.acrF[end][pair][subject.partner() - 1] = values;
                case NEXT -> {
                    loop.next[end][pair][subject.partner() - 1] = values;
                    loop.next[end][subject.partner() - 1][pair] = values;
                }
                default -> throw new IllegalArgumentException("the bare loop does not judge " + property);
            }
        });
        return loop;
    }

    /** The worst margins, in the order of the requirements. */
    double[] worstMargins() {
        double[] worst = new double[REQUIREMENTS.size()];
        worst[0] = insertionLoss();
        worst[5] = returnLoss();
        double[] ofNext = nextAndPowerSum();
        worst[1] = ofNext[0];
        worst[2] = ofNext[1];
        double[] ofAcrF = acrFAndPowerSum();
        worst[3] = ofAcrF[0];
        worst[4] = ofAcrF[1];
        double[] ofDelay = delayAndSkew();
        worst[6] = ofDelay[0];
        worst[7] = ofDelay[1];
        return worst;
    }

    private double insertionLoss() {
        double grown = 0.004 * (Math.min(celsius, 40) - 20) + 0.006 * Math.max(celsius - 40, 0);
        double factor = 1 / (1 + grown) * (REFERENCE_METRES / metres);
        double worst = Double.POSITIVE_INFINITY;
        double[] limit = new double[megahertz.length];
        for (int i = 0; i < limit.length; i++) {
            double root = Math.sqrt(megahertz[i]);
            limit[i] = 1.82 * root + 0.0091 * megahertz[i] + 0.25 / root;
        }
        for (double[] ofPair : loss) {
            for (int i = 0; i < limit.length; i++) {
                worst = Math.min(worst, limit[i] - ofPair[i] * factor);
            }
        }
        return worst;
    }

    private double returnLoss() {
        double worst = Double.POSITIVE_INFINITY;
        double[] limit = new double[megahertz.length];
        for (int i = 0; i < limit.length; i++) {
            double f = megahertz[i];
            limit[i] = f <= 10 ? 20 + 5 * Math.log10(f) : f <= 20 ? 25 : 25 - 7 * Math.log10(f / 20);
        }
        for (double[][] ofEnd : returnLoss) {
            for (double[] ofPair : ofEnd) {
                for (int i = 0; i < limit.length; i++) {
                    worst = Math.min(worst, ofPair[i] - limit[i]);
                }
            }
        }
        return worst;
    }

    private double[] nextAndPowerSum() {
        int points = megahertz.length;
        double[] limit = new double[points];
        double[] ofSum = new double[points];
        for (int i = 0; i < points; i++) {
            double slope = -15 * Math.log10(megahertz[i] / 100);
            limit[i] = 44.3 + slope;
            ofSum[i] = 42.3 + slope;
        }
        double[] worst = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        for (double[][][] ofEnd : next) {
            double[][][] corrected = new double[PAIRS][PAIRS][];
            for (int pair = 0; pair < PAIRS; pair++) {
                for (int partner = pair + 1; partner < PAIRS; partner++) {
                    double[] values = corrected(ofEnd[pair][partner], loss[pair], loss[partner]);
                    corrected[pair][partner] = values;
                    corrected[partner][pair] = values;
                    for (int i = 0; i < points; i++) {
                        worst[0] = Math.min(worst[0], values[i] - limit[i]);
                    }
                }
            }
            worst[1] = Math.min(worst[1], worstSum(corrected, ofSum));
        }
        return worst;
    }

    /** Near-end crosstalk at the reference length, by the lower loss of its two pairs, which leaves the lower level. */
    private double[] corrected(double[] levels, double[] one, double[] other) {
        if (metres >= REFERENCE_METRES) {
            return levels;
        }
        double longer = REFERENCE_METRES / metres;
        double[] corrected = new double[levels.length];
        for (int i = 0; i < levels.length; i++) {
            double thereAndBack = -2 * PER_DECIBEL * Math.min(one[i], other[i]);
            corrected[i] =
                    levels[i] - 10 * Math.log10(Math.expm1(thereAndBack * longer) / Math.expm1(thereAndBack));
        }
        return corrected;
    }

    private double[] acrFAndPowerSum() {
        int points = megahertz.length;
        double[] limit = new double[points];
        double[] ofSum = new double[points];
        for (int i = 0; i < points; i++) {
            double slope = -20 * Math.log10(megahertz[i] / 100);
            limit[i] = 27.8 + slope;
            ofSum[i] = 24.8 + slope;
        }
        double longer = 10 * Math.log10(metres / REFERENCE_METRES);
        double[] worst = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        for (double[][][] ofEnd : acrF) {
            double[][][] corrected = new double[PAIRS][PAIRS][];
            for (int pair = 0; pair < PAIRS; pair++) {
                for (int partner = 0; partner < PAIRS; partner++) {
                    if (partner != pair) {
                        double[] values = new double[points];
                        for (int i = 0; i < points; i++) {
                            values[i] = ofEnd[pair][partner][i] + longer;
                            worst[0] = Math.min(worst[0], values[i] - limit[i]);
                        }
                        corrected[pair][partner] = values;
                    }
                }
            }
            worst[1] = Math.min(worst[1], worstSum(corrected, ofSum));
        }
        return worst;
    }

    /** The worst margin of the power sums, each pair's from all others. */
    private static double worstSum(double[][][] levels, double[] limit) {
        double worst = Double.POSITIVE_INFINITY;
        for (int pair = 0; pair < PAIRS; pair++) {
            double[] powers = new double[limit.length];
            for (int partner = 0; partner < PAIRS; partner++) {
                if (partner != pair) {
                    double[] values = levels[pair][partner];
                    for (int i = 0; i < powers.length; i++) {
                        powers[i] += Math.pow(10, -values[i] / 10);
                    }
                }
            }
            for (int i = 0; i < powers.length; i++) {
                worst = Math.min(worst, -10 * Math.log10(powers[i]) - limit[i]);
            }
        }
        return worst;
    }

    private double[] delayAndSkew() {
        double factor = REFERENCE_METRES / metres;
        double[] worst = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        for (int i = 0; i < megahertz.length; i++) {
            double limit = 534 + 36 / Math.sqrt(megahertz[i]);
            double greatest = Double.NEGATIVE_INFINITY;
            double smallest = Double.POSITIVE_INFINITY;
            for (double[] ofPair : delay) {
                double corrected = ofPair[i] * factor;
                greatest = Math.max(greatest, corrected);
                smallest = Math.min(smallest, corrected);
            }
            worst[0] = Math.min(worst[0], limit - greatest);
            worst[1] = Math.min(worst[1], 45 - (greatest - smallest));
        }
        return worst;
    }

    /** @throws IllegalStateException when a worst margin is not that of the judgement: then the two do not do the same work */
    void requireSameAs(Judgement judgement) {
        double[] margins = worstMargins();
        for (int i = 0; i < margins.length; i++) {
            String requirement = REQUIREMENTS.get(i);
            Finding finding = judgement.findings().stream()
                    .filter(one -> one.requirement().equals(requirement))
                    .findFirst()
                    .orElseThrow();
            double judged = finding.figure().margin();
            if (!(Math.abs(judged - margins[i]) <= SAME * Math.max(1, Math.abs(judged)))) {
                throw new IllegalStateException("the worst margin of " + requirement + " is " + judged
                        + " by the judgement and " + margins[i] + " by the bare loop");
            }
        }
    }
}
