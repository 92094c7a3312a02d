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
 * @param uncertaintyModel the model that uncertainties were taken from; null when there was none
 */
public record Judgement(
        String limitSet,
        int revision,
        String limitSetSha256,
        String engine,
        Verdict verdict,
        List<Finding> findings,
        List<CorrectedSweep> sweeps,
        Model uncertaintyModel) {

    /**
     * Which revision of an uncertainty model.
     *
     * @param id its name
     * @param revision its revision
     * @param sha256 digest of its file
     */
    public record Model(String id, int revision, String sha256) {}

    public Judgement {
        findings = List.copyOf(findings);
        sweeps = List.copyOf(sweeps);
    }

    /** Whether the reel is accepted only conditionally: a passing value lies within a guard band. */
    public boolean isConditional() {
        return verdict == Verdict.ACCEPTED
                && findings.stream().anyMatch(finding -> finding.outcome() == Outcome.CONDITIONAL_PASS);
    }
}
