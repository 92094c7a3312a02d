package dev.reelproof.analysis;

import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * What could become a suspect.
 *
 * @param group what exactly these reels met
 * @param exposed the reels
 * @param counts reels in and out of the exposure, and how many fail
 * @param p the chance among all reels
 * @param decisive the chance within the strata, which decides
 * @param isTested whether it could be significant at all
 * @param effect how strong the effect is
 */
record Candidate(
        List<Exposure> group,
        BitSet exposed,
        CountTable counts,
        double p,
        double decisive,
        boolean isTested,
        double effect) {

    /** Of equal evidence the tested first; then the test before what it tested, the stronger effect, the more reels, the name. */
    private static final Comparator<Candidate> OF_EQUAL_EVIDENCE = Comparator.comparing(
                    (Candidate candidate) -> !candidate.isTested)
            .thenComparing(candidate -> !candidate.isOfTest())
            .thenComparing(Comparator.comparingDouble(Candidate::effect).reversed())
            .thenComparing(Comparator.comparingInt((Candidate candidate) -> candidate.exposed.cardinality())
                    .reversed())
            .thenComparing(Candidate::first);

    /** By the evidence within the strata. */
    static final Comparator<Candidate> BY_DECISIVE = Comparator.comparingDouble(Candidate::decisive)
            .thenComparing(Candidate::p)
            .thenComparing(OF_EQUAL_EVIDENCE);

    /** By the evidence among all reels. */
    static final Comparator<Candidate> BY_OVERALL =
            Comparator.comparingDouble(Candidate::p).thenComparing(OF_EQUAL_EVIDENCE);

    Exposure first() {
        return group.get(0);
    }

    /** Whether the test may be behind it; its first member is of the test then. */
    boolean isOfTest() {
        return first().factor().isOfTest();
    }

    boolean isUpstreamAlone() {
        return !isOfTest();
    }
}
