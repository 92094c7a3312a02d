package dev.reelproof.judgement;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

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
 * @param uncertaintyModel the model that uncertainties were taken from, if any
 */
public record Judgement(
        String limitSet,
        int revision,
        String limitSetSha256,
        String engine,
        Verdict verdict,
        List<Finding> findings,
        List<CorrectedSweep> sweeps,
        @Nullable Model uncertaintyModel) {

    /**
     * Which revision of an uncertainty model.
     *
     * @param id its name
     * @param revision its revision
     * @param sha256 digest of its file
     */
    public record Model(String id, int revision, String sha256) {

        public Model {
            requireRevision("uncertainty model", id, revision, sha256);
        }
    }

    /**
     * Checks that the parts agree. A record of version 0.1 may say that the reel was accepted though no figure of a finding was kept: its
     * verdict stands as recorded.
     *
     * @throws IllegalArgumentException when the verdict is not what the findings come to, or a name is blank
     */
    public Judgement {
        requireRevision("limit set", limitSet, revision, limitSetSha256);
        if (engine == null || engine.isBlank()) {
            throw new IllegalArgumentException("a judgement names the version of the program that judged");
        }
        findings = List.copyOf(findings);
        sweeps = List.copyOf(sweeps);
        Verdict come = Verdict.of(findings.stream().map(Finding::outcome).toList());
        if (verdict != come && !(verdict == Verdict.ACCEPTED && isAcceptedAsRecorded(findings))) {
            throw new IllegalArgumentException("the findings by limit set " + limitSet + " revision " + revision
                    + " come to " + come.word() + ", not to " + (verdict == null ? null : verdict.word()));
        }
    }

    private static boolean isAcceptedAsRecorded(List<Finding> findings) {
        return !findings.isEmpty()
                && findings.stream()
                        .allMatch(finding -> finding.outcome().accepts()
                                || finding.obstacles().isFigureNotKept());
    }

    private static void requireRevision(String what, String id, int revision, String sha256) {
        if (id == null || id.isBlank() || sha256 == null || sha256.isBlank() || !(revision >= 1)) {
            throw new IllegalArgumentException("a " + what + " has a name, a revision from 1 and a digest, not '" + id
                    + "' revision " + revision + ", '" + sha256 + "'");
        }
    }

    /** How sure it is that all judged values meet their limits; empty where no uncertainty is known, or none was kept. */
    public Optional<ReelConformity> conformity() {
        return ReelConformity.of(findings);
    }

    /** Whether the reel is accepted only conditionally: a passing value lies within a guard band. */
    public boolean isConditional() {
        return verdict == Verdict.ACCEPTED
                && findings.stream().anyMatch(finding -> finding.outcome() == Outcome.CONDITIONAL_PASS);
    }
}
