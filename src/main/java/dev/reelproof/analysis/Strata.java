package dev.reelproof.analysis;

import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Sets of reels, each reel in one of them, within which reels are compared with each other and not beyond. */
final class Strata {
    private final int[] stratumOf;
    private final int count;

    private Strata(int[] stratumOf, int count) {
        this.stratumOf = stratumOf;
        this.count = count;
    }

    /** All reels in one stratum. */
    static Strata whole(int reels) {
        return new Strata(new int[reels], 1);
    }

    /** Reels with equal keys, such as the week of their test, are in one stratum. */
    static Strata by(List<?> keys) {
        Map<Object, Integer> numbers = new HashMap<>();
        int[] stratumOf = new int[keys.size()];
        for (int i = 0; i < stratumOf.length; i++) {
            stratumOf[i] = numbers.computeIfAbsent(keys.get(i), key -> numbers.size());
        }
        return new Strata(stratumOf, Math.max(1, numbers.size()));
    }

    /** Each stratum cut in two: the reels that met something, and those that did not. */
    Strata cutBy(BitSet met) {
        int[] cut = new int[stratumOf.length];
        for (int i = 0; i < cut.length; i++) {
            cut[i] = 2 * stratumOf[i] + (met.get(i) ? 1 : 0);
        }
        return new Strata(cut, 2 * count);
    }

    /** The stratum of a reel, from 0. */
    int of(int reel) {
        return stratumOf[reel];
    }

    /** How many strata there are, at least 1. Some may be empty. */
    int count() {
        return count;
    }

    /** How many reels there are. */
    int reels() {
        return stratumOf.length;
    }

    /** Counts some reels by stratum. */
    int[] count(BitSet some) {
        int[] counts = new int[count];
        for (int reel = some.nextSetBit(0); reel >= 0; reel = some.nextSetBit(reel + 1)) {
            counts[stratumOf[reel]]++;
        }
        return counts;
    }
}
