package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Looks whether failing grows with the share of a reel that was made from a lot. */
final class DoseTrend {
    private static final int PERCENT = 100;
    private static final int BANDS = 4;

    private final Map<Exposure, Doses> doses;
    private final BitSet failing;
    private final Strata strata;

    DoseTrend(Map<Exposure, Doses> doses, BitSet failing, Strata strata) {
        this.doses = doses;
        this.failing = failing;
        this.strata = strata;
    }

    /**
     * What the shares of a suspect's reels say; empty where no lot of the group has reels with different known shares.
     *
     * @param group what the reels met; the first of its lots with different shares counts
     * @param exposed the reels that met it
     */
    Optional<DoseEvidence> of(List<Exposure> group, BitSet exposed) {
        for (Exposure member : group) {
            Doses shares = doses.get(member);
            if (shares != null) {
                int[] percent = exposed.stream()
                        .map(reel -> percent(shares.of(reel)))
                        .filter(share -> share >= 0)
                        .distinct()
                        .toArray();
                if (percent.length > 1) {
                    return Optional.of(evidence(member, shares, exposed));
                }
            }
        }
        return Optional.empty();
    }

    /** A share in whole percent; −1 where it is not known. */
    private static int percent(double share) {
        return Double.isNaN(share) ? -1 : (int) Math.rint(PERCENT * share);
    }

    private DoseEvidence evidence(Exposure lot, Doses shares, BitSet exposed) {
        List<List<Integer>> failingScores = lists(strata.count());
        List<List<Integer>> passingScores = lists(strata.count());
        int[] reels = new int[BANDS];
        int[] failingReels = new int[BANDS];
        int known = 0;
        for (int reel : exposed.stream().toArray()) {
            int percent = percent(shares.of(reel));
            if (percent < 0) {
                continue;
            }
            known++;
            boolean fails = failing.get(reel);
            (fails ? failingScores : passingScores).get(strata.of(reel)).add(percent);
            int band = Math.max(0, Math.min(BANDS - 1, (percent - 1) * BANDS / PERCENT));
            reels[band]++;
            failingReels[band] += fails ? 1 : 0;
        }
        List<CochranArmitage.Scores> scores = new ArrayList<>();
        for (int stratum = 0; stratum < strata.count(); stratum++) {
            scores.add(new CochranArmitage.Scores(
                    numbers(failingScores.get(stratum)), numbers(passingScores.get(stratum))));
        }
        List<DoseEvidence.Band> bands = new ArrayList<>();
        for (int band = 0; band < BANDS; band++) {
            if (reels[band] > 0) {
                bands.add(new DoseEvidence.Band(
                        band * PERCENT / BANDS, (band + 1) * PERCENT / BANDS, reels[band], failingReels[band]));
            }
        }
        return new DoseEvidence(lot, known, exposed.cardinality() - known, CochranArmitage.greater(scores), bands);
    }

    private static List<List<Integer>> lists(int count) {
        List<List<Integer>> lists = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            lists.add(new ArrayList<>());
        }
        return lists;
    }

    private static int[] numbers(List<Integer> list) {
        return list.stream().mapToInt(Integer::intValue).toArray();
    }
}
