package dev.reelproof.analysis;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;

/** Weighs how low margins are. */
final class MarginWeighing implements Weighing {
    private final FailureWeighing failures;
    private final Strata strata;
    private final double[] margins;
    private final MannWhitneyTest all;
    private final VanElteren within;
    private final Map<BitSet, VanElteren> withFixed = new HashMap<>();

    MarginWeighing(double[] margins, FailureWeighing failures, Strata strata) {
        this.failures = failures;
        this.strata = strata;
        this.margins = margins.clone();
        this.all = MannWhitneyTest.of(margins);
        this.within = VanElteren.of(all, strata);
    }

    @Override
    public double overall(BitSet exposed) {
        return all.lower(exposed);
    }

    @Override
    public Chance withinStrata(BitSet exposed) {
        return new Chance(within.lower(exposed), within.leastAttainable(exposed));
    }

    @Override
    public double withFixed(BitSet exposed, BitSet fixed) {
        return withFixed
                .computeIfAbsent(fixed, met -> VanElteren.of(all, strata.cutBy(met)))
                .lower(exposed);
    }

    @Override
    public double effect(BitSet exposed) {
        return all.shareLower(exposed);
    }

    @Override
    public OptionalDouble oddsRatioWithinStrata(BitSet exposed) {
        return failures.oddsRatioWithinStrata(exposed);
    }

    @Override
    public Suspect.Margins margins(BitSet exposed) {
        BitSet others = (BitSet) exposed.clone();
        others.flip(0, margins.length);
        return new Suspect.Margins(
                all.shareLower(exposed), HodgesLehmannShift.of(marginsOf(exposed), marginsOf(others)));
    }

    private double[] marginsOf(BitSet some) {
        return some.stream().mapToDouble(i -> margins[i]).toArray();
    }
}
