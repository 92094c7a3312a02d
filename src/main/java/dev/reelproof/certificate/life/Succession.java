package dev.reelproof.certificate.life;

import dev.reelproof.certificate.IssuedCertificate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What takes the place of a certificate: a later issue of its number, or the certificate of a later test of the reel. A reel has one
 * certificate that counts; one that was superseded stays so, also when its successor is withdrawn.
 *
 * @param issue the later issue of the same number; empty when there is none
 * @param number the number that was issued last for the reel, when that is another and was issued later; else empty
 */
public record Succession(Optional<Integer> issue, Optional<String> number) {

    /** That nothing has taken its place. */
    public static final Succession NONE = new Succession(Optional.empty(), Optional.empty());

    /**
     * What takes the place of a certificate.
     *
     * @param ofReel all issues of all numbers of its reel
     */
    public static Succession of(IssuedCertificate certificate, List<IssuedCertificate> ofReel) {
        Optional<Integer> issue = ofReel.stream()
                .filter(other -> other.number().equals(certificate.number()) && other.issue() > certificate.issue())
                .map(IssuedCertificate::issue)
                .max(Comparator.naturalOrder());
        IssuedCertificate first = ofReel.stream()
                .filter(other -> other.number().equals(certificate.number()))
                .min(Comparator.comparing(IssuedCertificate::issue))
                .orElse(certificate);
        Comparator<IssuedCertificate> order =
                Comparator.comparing(IssuedCertificate::issued).thenComparing(IssuedCertificate::number);
        Optional<String> number = ofReel.stream()
                .filter(other -> !other.number().equals(certificate.number()))
                .filter(other -> order.compare(other, first) > 0)
                .max(order)
                .map(IssuedCertificate::number);
        return new Succession(issue, number);
    }

    /** Whether something has taken its place. */
    public boolean isSuperseded() {
        return issue.isPresent() || number.isPresent();
    }
}
