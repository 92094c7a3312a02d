package dev.reelproof.certificate.life;

import dev.reelproof.wording.CertificateWords;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is known of an issued certificate beside what it says, and the state that follows from it.
 *
 * @param succession what has taken its place
 * @param withdrawal that it was taken back; empty when it was not
 * @param questions what speaks against it now; none when nothing does
 */
public record CertificateLife(Succession succession, Optional<Withdrawal> withdrawal, List<Question> questions) {

    public CertificateLife {
        Objects.requireNonNull(succession, "a certificate's life says what has taken its place");
        Objects.requireNonNull(withdrawal, "a certificate's life says whether it was withdrawn");
        questions = List.copyOf(questions);
    }

    /**
     * The state: what two persons decided comes before what happened, and what has taken its place before what speaks against it. In
     * no other case than the last is it current.
     */
    public CertificateState state() {
        if (withdrawal.isPresent()) {
            return CertificateState.WITHDRAWN;
        }
        if (succession.isSuperseded()) {
            return CertificateState.SUPERSEDED;
        }
        return questions.isEmpty() ? CertificateState.CURRENT : CertificateState.IN_QUESTION;
    }

    /** Whether it may be relied on. */
    public boolean isCurrent() {
        return state() == CertificateState.CURRENT;
    }

    /** The state in a sentence; what speaks against it stands in the questions. */
    public String sentence(CertificateWords words) {
        return switch (state()) {
            case CURRENT -> words.current();
            case IN_QUESTION -> words.inQuestion();
            case WITHDRAWN -> words.withdrawn();
            case SUPERSEDED -> succession
                    .issue()
                    .map(words::supersededByIssue)
                    .orElseGet(
                            () -> words.supersededByNumber(succession.number().orElseThrow()));
        };
    }

    /** What speaks against it, for those who work at the plant; first why it was withdrawn, when it was. */
    public List<String> reasons(CertificateWords words) {
        return withdrawal
                .map(one -> List.of(words.withdrawnBecause(one.askedBy(), one.approvedBy(), one.at(), one.reason())))
                .orElseGet(
                        () -> questions.stream().map(one -> one.sentence(words)).toList());
    }

    /** What speaks against it, for whoever holds the certificate: each sentence once. */
    public List<String> publicReasons(CertificateWords words) {
        return questions.stream()
                .map(question -> question.publicSentence(words))
                .distinct()
                .toList();
    }
}
