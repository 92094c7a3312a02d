package dev.reelproof.app.certificate;

import dev.reelproof.app.hold.FindHolds;
import dev.reelproof.certificate.CertificateStanding;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Tells of many certificates at once whether what they say may be relied on now. */
@ApplicationScoped
public class StandingOfCertificates {
    /** So many reels are asked about with one statement. */
    private static final int HANDFUL = 500;

    private final Certificates certificates;
    private final Reels reels;
    private final FindHolds holds;

    StandingOfCertificates(Certificates certificates, Reels reels, FindHolds holds) {
        this.certificates = certificates;
        this.reels = reels;
        this.holds = holds;
    }

    /** A certificate and whether it may be relied on now. */
    public record Stands(IssuedCertificate certificate, CertificateStanding standing) {
        public boolean isCurrent() {
            return standing == CertificateStanding.CURRENT;
        }

        /** Whether another has taken its place. */
        public boolean isReplaced() {
            return standing == CertificateStanding.SUPERSEDED;
        }
    }

    /**
     * The standing of certificates, in their order.
     *
     * @throws IntakeException when it is not found in time which of their reels are on hold
     */
    @Transactional
    public List<Stands> of(String plant, List<IssuedCertificate> some) {
        List<String> numbers =
                some.stream().map(IssuedCertificate::reel).distinct().toList();
        Set<String> accepted = new HashSet<>();
        Set<String> held = new HashSet<>();
        Map<String, List<IssuedCertificate>> ofReel = handfuls(numbers).stream()
                .flatMap(handful -> certificates.ofReels(plant, handful).stream())
                .collect(Collectors.groupingBy(IssuedCertificate::reel));
        for (List<String> handful : handfuls(numbers)) {
            reels.linesOf(plant, handful).stream()
                    .filter(line -> line.verdict() == Verdict.ACCEPTED)
                    .forEach(line -> accepted.add(line.reel().id()));
            held.addAll(heldAmong(plant, handful));
        }
        return some.stream()
                .map(one -> new Stands(
                        one,
                        CertificateStanding.of(
                                isReplaced(one, ofReel.getOrDefault(one.reel(), List.of())),
                                held.contains(one.reel()),
                                accepted.contains(one.reel()))))
                .toList();
    }

    private static boolean isReplaced(IssuedCertificate one, List<IssuedCertificate> ofReel) {
        return ofReel.stream()
                .anyMatch(other -> other.number().equals(one.number())
                        ? other.issue() > one.issue()
                        : other.issued().isAfter(one.issued()));
    }

    private Set<String> heldAmong(String plant, List<String> handful) {
        try {
            return holds.heldAmong(plant, handful);
        } catch (SearchTooLargeException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "query", e);
        }
    }

    private static List<List<String>> handfuls(List<String> all) {
        List<List<String>> handfuls = new ArrayList<>();
        for (int i = 0; i < all.size(); i += HANDFUL) {
            handfuls.add(all.subList(i, Math.min(i + HANDFUL, all.size())));
        }
        return handfuls;
    }
}
