package dev.reelproof.analysis;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * The test and the common odds ratio over strata: W. G. Cochran, Biometrics 10 (1954) 417–451; N. Mantel and W. Haenszel, Journal of the
 * National Cancer Institute 22 (1959) 719–748. From memory, checked with published worked tables.
 *
 * <p>Equation: z = (Σ(a − nF/N) − 1/2) / √Σ n(N − n)F(N − F)/(N²(N − 1)), p = 1 − Φ(z); odds ratio Σ(ad/N) / Σ(bc/N).
 *
 * <p>Symbols: in each stratum a exposed reels that fail, b exposed that pass, c others that fail, d others that pass; n = a + b, F = a +
 * c, N all; counts.
 *
 * <p>Range: the test where the sums are large; {@link FisherOneSided} is the exact form for fewer. Any counts for the odds ratio.
 *
 * <p>Edge cases: strata in which all or none are exposed, or all or none fail, add nothing; p = 1 where no other is left. The odds ratio
 * is absent where it divides by zero.
 *
 * <p>Known error: the normal form is only near the exact chance, and far out in the tail may miss it by a factor.
 */
final class MantelHaenszel {
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double CONTINUITY = 0.5;

    private MantelHaenszel() {}

    /** The chance of as many failing exposed reels or more in all strata together if the exposure had no effect in any. */
    static double greater(List<CountTable> strata) {
        double excess = 0;
        double variance = 0;
        for (CountTable stratum : strata) {
            double all = stratum.reels();
            if (!(all > 1)) {
                continue;
            }
            double n = stratum.exposed();
            double failing = stratum.failing();
            excess += stratum.exposedFailing() - n * failing / all;
            variance += n * (all - n) * failing * (all - failing) / (all * all * (all - 1));
        }
        return variance > 0 ? NORMAL.survivalProbability((excess - CONTINUITY) / Math.sqrt(variance)) : 1;
    }

    /** The odds ratio that the strata have in common. */
    static OptionalDouble oddsRatio(List<CountTable> strata) {
        double above = 0;
        double below = 0;
        for (CountTable stratum : strata) {
            double all = Math.max(1, stratum.reels());
            above += (double) stratum.exposedFailing() * (stratum.others() - stratum.othersFailing()) / all;
            below += (double) (stratum.exposed() - stratum.exposedFailing()) * stratum.othersFailing() / all;
        }
        return below > 0 ? OptionalDouble.of(above / below) : OptionalDouble.empty();
    }
}
