package dev.reelproof.record.concession;

import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import dev.reelproof.record.TestRecord;
import dev.reelproof.record.concession.Concession.State;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** What may be conceded of which reel, and when a concession may still be decided. Who may is a matter of roles. */
public final class ConcessionRule {
    private ConcessionRule() {}

    /**
     * The ids of the requirements that a concession of a record concedes: those that fail, were not tested, or pass only conditionally.
     *
     * @throws ConcessionRefusedException when the record is neither rejected nor accepted conditionally
     */
    public static List<String> conceded(TestRecord record) {
        Judgement judgement = record.judgement();
        if (judgement.verdict() != Verdict.REJECTED && !judgement.isConditional()) {
            throw new ConcessionRefusedException("Reel " + record.reel() + " is "
                    + judgement.verdict().word() + "; a concession is of a reel that is rejected, or accepted"
                    + " conditionally."
                    + (judgement.verdict() == Verdict.INCOMPLETE ? " Complete the measurement first." : ""));
        }
        return judgement.findings().stream()
                .filter(finding -> finding.outcome() != Outcome.PASS)
                .map(Finding::requirement)
                .distinct()
                .toList();
    }

    /**
     * Requires that nothing is missing of what is used as it is: what was never measured cannot be conceded.
     *
     * @throws ConcessionRefusedException when a requirement was not tested
     */
    public static void requireMeasured(TestRecord record) {
        List<String> open = record.judgement().findings().stream()
                .filter(finding -> finding.outcome() == Outcome.NOT_TESTED)
                .map(Finding::requirement)
                .toList();
        if (!open.isEmpty()) {
            throw new ConcessionRefusedException("Reel " + record.reel() + " was not tested for "
                    + String.join(", ", open) + "; what was not measured cannot be used as it is. Test it first.");
        }
    }

    /**
     * Requires that a reel can be one of another product: another name for the same cable.
     *
     * @throws ConcessionRefusedException when it is the same product, or a cable of another make
     */
    public static void requireSameCable(Product from, Product to) {
        if (to.id().equals(from.id())) {
            throw new ConcessionRefusedException("The reel is " + from.id() + " already; name another product.");
        }
        if (to.pairs() != from.pairs() || !to.gauge().equals(from.gauge())) {
            throw new ConcessionRefusedException("Product " + to.id() + " has " + to.pairs() + " pairs of " + to.gauge()
                    + ", product " + from.id() + " has " + from.pairs() + " of " + from.gauge()
                    + "; a regrade gives another name to the same cable.");
        }
    }

    /**
     * Requires that a test, judged again as another product, is accepted.
     *
     * @throws ConcessionRefusedException when it is not
     */
    public static void requireAccepted(Product product, Judgement judgement) {
        if (judgement.verdict() != Verdict.ACCEPTED) {
            throw new ConcessionRefusedException("Judged by " + judgement.limitSet() + " revision "
                    + judgement.revision() + " as product " + product.id() + " the reel is "
                    + judgement.verdict().word() + ": "
                    + judgement.findings().stream()
                            .filter(finding -> !finding.outcome().accepts())
                            .map(finding -> finding.requirement() + " ("
                                    + finding.outcome().word().replace('-', ' ') + ")")
                            .collect(Collectors.joining(", "))
                    + ". Regrade it to a product whose limit set it meets.");
        }
    }

    /**
     * Requires that a reel gets shorter.
     *
     * @throws ConcessionRefusedException when it does not
     */
    public static void requireShorter(Length registered, Terms.Shorten terms) {
        if (!(terms.length().metres() < registered.metres())) {
            throw new ConcessionRefusedException("The reel has " + registered.metres()
                    + " m; it cannot be shortened to " + terms.length().metres() + " m.");
        }
    }

    /**
     * Requires that no other concession of the same record is open or approved, and that it has no certificate.
     *
     * @param ofReel the concessions of the reel
     * @param certificate the number of the record's certificate; empty when it has none
     * @throws ConcessionRefusedException when there is one
     */
    public static void requireFree(TestRecord newest, List<Concession> ofReel, Optional<String> certificate) {
        ofReel.stream()
                .filter(other -> other.record().equals(newest.id()))
                .filter(other -> other.state(newest.id()) == State.OPEN || other.isApproved())
                .findFirst()
                .ifPresent(other -> {
                    throw new ConcessionRefusedException("Concession " + other.id() + " of this test of reel "
                            + newest.reel() + " is " + other.state(newest.id()).word() + " already.");
                });
        requireNoCertificate(newest.reel(), certificate);
    }

    /**
     * Requires that a record has no certificate: what a customer has on paper is not conceded behind it.
     *
     * @throws ConcessionRefusedException when it has one
     */
    public static void requireNoCertificate(String reel, Optional<String> certificate) {
        certificate.ifPresent(number -> {
            throw new ConcessionRefusedException("Certificate " + number + " was issued for this test of reel " + reel
                    + "; a concession comes before the certificate.");
        });
    }

    /**
     * Requires that a concession may be decided.
     *
     * @param newest the newest record of its reel
     * @param isRequester whether the same person asked for it
     * @throws ConcessionRefusedException when it was decided before, lapsed, or it is the requester who decides
     */
    public static void requireMayDecide(Concession concession, UUID newest, boolean isRequester) {
        Concession.Decision made = concession.decision();
        if (made != null) {
            throw new ConcessionRefusedException("Concession " + concession.id() + " was "
                    + (made.approved() ? "approved" : "refused") + " by "
                    + made.by().name() + " on "
                    + made.at().toLocalDate() + "; a decision does not change.");
        }
        if (concession.state(newest) == State.LAPSED) {
            throw new ConcessionRefusedException("Concession " + concession.id() + " lapsed: reel " + concession.reel()
                    + " was tested again since. Look at the newest test, and ask anew if it must be.");
        }
        if (isRequester) {
            throw new ConcessionRefusedException(
                    "You asked for concession " + concession.id() + " yourself; somebody else must decide on it.");
        }
    }

    /**
     * Requires that a reel is still registered as it was when the concession was asked for.
     *
     * @throws ConcessionRefusedException when it is not
     */
    public static void requireUnchanged(Concession concession, Concession.Registration now) {
        if (!concession.before().equals(now)) {
            throw new ConcessionRefusedException("Reel " + concession.reel() + " was registered as "
                    + concession.before().product() + ", " + concession.before().length() + " "
                    + concession.before().unit() + " when concession " + concession.id() + " was asked for, and is "
                    + now.product() + ", " + now.length() + " " + now.unit() + " now; refuse it, and ask anew.");
        }
    }
}
