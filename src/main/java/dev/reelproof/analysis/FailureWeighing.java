package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Weighs how many reels fail. */
final class FailureWeighing implements Weighing {
    private final BitSet failing;
    private final Strata strata;
    private final int[] reelsOfEach;
    private final int[] failingOfEach;

    FailureWeighing(BitSet failing, Strata strata) {
        this.failing = failing;
        this.strata = strata;
        this.reelsOfEach = reels(strata);
        this.failingOfEach = strata.count(failing);
    }

    private static int[] reels(Strata strata) {
        BitSet all = new BitSet();
        all.set(0, strata.reels());
        return strata.count(all);
    }

    /** Counts reels in and out of an exposure. */
    CountTable counts(BitSet exposed) {
        int in = exposed.cardinality();
        int inFailing = failing(exposed).cardinality();
        return new CountTable(in, inFailing, strata.reels() - in, failing.cardinality() - inFailing);
    }

    private BitSet failing(BitSet exposed) {
        BitSet both = (BitSet) exposed.clone();
        both.and(failing);
        return both;
    }

    private List<CountTable> tables(BitSet exposed) {
        return tables(exposed, strata, reelsOfEach, failingOfEach);
    }

    private List<CountTable> tables(BitSet exposed, Strata within, int[] all, int[] allFailing) {
        int[] in = new int[all.length];
        int[] inFailing = new int[all.length];
        for (int reel = exposed.nextSetBit(0); reel >= 0; reel = exposed.nextSetBit(reel + 1)) {
            in[within.of(reel)]++;
            if (failing.get(reel)) {
                inFailing[within.of(reel)]++;
            }
        }
        List<CountTable> tables = new ArrayList<>(in.length);
        for (int stratum = 0; stratum < in.length; stratum++) {
            tables.add(new CountTable(
                    in[stratum],
                    inFailing[stratum],
                    all[stratum] - in[stratum],
                    allFailing[stratum] - inFailing[stratum]));
        }
        return tables;
    }

    @Override
    public double overall(BitSet exposed) {
        return FisherOneSided.greater(counts(exposed));
    }

    @Override
    public Chance withinStrata(BitSet exposed) {
        return FisherOneSided.overStrata(tables(exposed));
    }

    @Override
    public double withFixed(BitSet exposed, BitSet fixed) {
        Strata cut = strata.cutBy(fixed);
        return FisherOneSided.greater(tables(exposed, cut, reels(cut), cut.count(failing)));
    }

    @Override
    public double effect(BitSet exposed) {
        return RiskDifference.of(counts(exposed)).estimate();
    }

    @Override
    public OptionalDouble oddsRatioWithinStrata(BitSet exposed) {
        return MantelHaenszel.oddsRatio(tables(exposed));
    }

    @Override
    public Suspect.@Nullable Margins margins(BitSet exposed) {
        return null;
    }
}
