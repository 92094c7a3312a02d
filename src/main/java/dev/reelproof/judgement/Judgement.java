package dev.reelproof.judgement;

import java.util.List;

/**
 * A result judged against one revision of a limit set.
 *
 * @param limitSet id of the limit set
 * @param revision its revision
 * @param limitSetSha256 digest of its file
 * @param engine version of the program that judged
 * @param verdict what the reel came to
 * @param findings one a requirement that holds for the product, in the set's order
 * @param sweeps the sweeps that were judged, with their corrected values
 */
public record Judgement(
        String limitSet,
        int revision,
        String limitSetSha256,
        String engine,
        Verdict verdict,
        List<Finding> findings,
        List<CorrectedSweep> sweeps) {

    public Judgement {
        findings = List.copyOf(findings);
        sweeps = List.copyOf(sweeps);
    }
}
