package dev.reelproof.certificate;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The rule that only an accepted reel has a certificate, or one that is used as it is by an approved concession. */
public final class MayHaveCertificate {
    private static final int DIGITS_OF_MARGIN = 4;

    private MayHaveCertificate() {}

    /** As {@link #reasonAgainst(Judgement, ConcessionStanding)}, of a reel without concessions. */
    public static Optional<String> reasonAgainst(Judgement judgement) {
        return reasonAgainst(judgement, ConcessionStanding.NONE);
    }

    /**
     * Why a judgement cannot be certified, in words that name each requirement in the way; empty when it can.
     *
     * @param standing what the reel's concessions mean for it
     */
    public static Optional<String> reasonAgainst(Judgement judgement, ConcessionStanding standing) {
        if (judgement.findings().isEmpty()) {
            return Optional.of("nothing was judged: limit set " + judgement.limitSet() + " revision "
                    + judgement.revision() + " has no requirement for this product");
        }
        Optional<String> unfinished = Wording.english().unfinished(standing);
        if (standing.untested().isPresent()) {
            return unfinished;
        }
        List<String> reasons = standing.usedAsIs().isPresent() ? new ArrayList<>() : failing(judgement);
        list(judgement, Outcome.NOT_TESTED, "was not tested", "were not tested").ifPresent(reasons::add);
        if (reasons.isEmpty()) {
            return unfinished;
        }
        unfinished.ifPresent(reasons::add);
        return Optional.of("only an accepted reel has a certificate; " + String.join("; ", reasons));
    }

    private static List<String> failing(Judgement judgement) {
        List<String> reasons = new ArrayList<>();
        list(judgement, Outcome.FAIL, "fails", "fail").ifPresent(reasons::add);
        list(judgement, Outcome.CONDITIONAL_FAIL, "fails conditionally", "fail conditionally")
                .ifPresent(reasons::add);
        return reasons;
    }

    private static Optional<String> list(Judgement judgement, Outcome outcome, String one, String several) {
        List<Finding> findings = judgement.findings().stream()
                .filter(finding -> finding.outcome() == outcome)
                .toList();
        if (findings.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(findings.size() + (findings.size() == 1 ? " requirement " + one : " requirements " + several)
                + ": " + findings.stream().map(MayHaveCertificate::words).collect(Collectors.joining("; ")));
    }

    private static String words(Finding finding) {
        Figure figure = finding.figure();
        if (finding.reason() != null) {
            return finding.requirement() + " (" + finding.reason() + ")";
        }
        if (figure == null) {
            return finding.requirement();
        }
        return finding.requirement() + " (" + Wording.english().place(finding.property(), figure) + ": margin "
                + Figures.significant(figure.margin(), DIGITS_OF_MARGIN) + " " + figure.unit() + ")";
    }
}
