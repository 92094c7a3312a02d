package dev.reelproof.certificate.life;

import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.Terms;
import dev.reelproof.wording.CertificateWords;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** A fact that puts a certificate in question: while it lasts, nobody may rely on the certificate. */
public sealed interface Question {

    /** The word of its kind, as answers spell it. */
    String kind();

    /** What it is, for those who work at the plant. */
    String sentence(CertificateWords words);

    /** What it is, for whoever holds the certificate: no person, no lot, no reason that is the plant's own affair. */
    String publicSentence(CertificateWords words);

    /**
     * An open hold reaches the reel.
     *
     * @param hold the hold, in words: its number, what it names, who placed it, when and why
     */
    record Held(String hold) implements Question {
        public Held {
            Objects.requireNonNull(hold, "a certificate is in question by a hold that can be named");
        }

        @Override
        public String kind() {
            return "hold";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.held(hold);
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.heldInPublic();
        }
    }

    /**
     * A newer test of the reel was not passed.
     *
     * @param attempt which test of the reel it is
     * @param verdict what it came to: anything but accepted
     * @param finished when it ended
     */
    record NewerTest(int attempt, Verdict verdict, OffsetDateTime finished) implements Question {
        public NewerTest {
            Objects.requireNonNull(finished, "a test ended at some time");
            if (verdict == Verdict.ACCEPTED) {
                throw new IllegalArgumentException(
                        "attempt " + attempt + " was accepted; that puts no certificate in question");
            }
        }

        @Override
        public String kind() {
            return "newer-test";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.newerTest(attempt, verdict, finished);
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.newerTestInPublic();
        }
    }

    /**
     * Two persons found the revision of the limit set wrong that the certificate was judged by.
     *
     * @param limitSet the set
     * @param revision its revision
     * @param reason what is wrong with it
     */
    record LimitsWrong(String limitSet, int revision, String reason) implements Question {
        public LimitsWrong {
            Objects.requireNonNull(limitSet, "a revision is one of a limit set");
            Objects.requireNonNull(reason, "a revision is wrong for a reason");
        }

        @Override
        public String kind() {
            return "limits-wrong";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.limitsWrong(limitSet, revision, reason);
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.limitsWrongInPublic(limitSet, revision);
        }
    }

    /**
     * What becomes of the reel is asked for and not decided.
     *
     * @param concession the number of the concession
     */
    record ConcessionOpen(long concession) implements Question {
        @Override
        public String kind() {
            return "concession-open";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.concessionOpen(concession);
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.concessionOpenInPublic();
        }
    }

    /**
     * The reel was regraded or shortened after the certificate was issued, and is no longer what the certificate describes.
     *
     * @param concession the number of the concession
     * @param terms what was conceded
     */
    record ReelChanged(long concession, Terms terms) implements Question {
        public ReelChanged {
            if (terms instanceof Terms.UseAsIs) {
                throw new IllegalArgumentException(
                        "concession " + concession + " leaves the reel as it is; that puts no certificate in question");
            }
        }

        @Override
        public String kind() {
            return "reel-changed";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.reelChanged(concession, terms);
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.reelChangedInPublic();
        }
    }

    /**
     * What the concessions of a reel say against a certificate of it.
     *
     * @param ofReel the concessions
     * @param newest the newest record of the reel
     */
    static List<Question> ofConcessions(List<Concession> ofReel, UUID newest, IssuedCertificate certificate) {
        return ofReel.stream()
                .map(concession -> ofConcession(concession, newest, certificate))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Question> ofConcession(Concession concession, UUID newest, IssuedCertificate certificate) {
        if (concession.state(newest) == Concession.State.OPEN) {
            return Optional.of(new ConcessionOpen(concession.id()));
        }
        boolean changesReel = concession.isApproved() && !(concession.terms() instanceof Terms.UseAsIs);
        return changesReel && concession.approval().at().isAfter(certificate.issued())
                ? Optional.of(new ReelChanged(concession.id(), concession.terms()))
                : Optional.empty();
    }

    /** The newest test of the reel passed after a failure, and the plant asks an engineer to accept it. */
    record AwaitsEngineer() implements Question {
        @Override
        public String kind() {
            return "awaits-engineer";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.awaitsEngineer();
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.awaitsEngineerInPublic();
        }
    }

    /** The reel was scrapped. */
    record Scrapped() implements Question {
        @Override
        public String kind() {
            return "scrapped";
        }

        @Override
        public String sentence(CertificateWords words) {
            return words.scrapped();
        }

        @Override
        public String publicSentence(CertificateWords words) {
            return words.scrapped();
        }
    }
}
