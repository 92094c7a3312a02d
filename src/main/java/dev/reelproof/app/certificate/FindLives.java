package dev.reelproof.app.certificate;

import dev.reelproof.app.ConflictException;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.life.CertificateLife;
import dev.reelproof.certificate.life.Question;
import dev.reelproof.certificate.life.Succession;
import dev.reelproof.certificate.life.Withdrawal;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.Withdrawals;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Works out what became of certificates, from what is recorded at the time of asking. */
@ApplicationScoped
public class FindLives {
    private final Certificates certificates;
    private final Withdrawals withdrawals;
    private final FindQuestions questions;

    FindLives(Certificates certificates, Withdrawals withdrawals, FindQuestions questions) {
        this.certificates = certificates;
        this.withdrawals = withdrawals;
        this.questions = questions;
    }

    /**
     * These certificates with what became of them, in their order.
     *
     * @throws ConflictException when the holds of their reels are not found in time: nothing is then said to be current
     */
    @Transactional
    public List<LivingCertificate> of(String plant, List<IssuedCertificate> asked) {
        if (asked.isEmpty()) {
            return List.of();
        }
        Map<String, List<IssuedCertificate>> ofReels = certificates.ofReels(
                plant, asked.stream().map(IssuedCertificate::reel).collect(Collectors.toUnmodifiableSet()));
        Map<String, Withdrawal> withdrawn = withdrawals.of(
                plant, asked.stream().map(IssuedCertificate::number).collect(Collectors.toUnmodifiableSet()));
        Map<IssuedCertificate, List<Question>> open = questions(plant, asked);
        return asked.stream()
                .map(certificate -> new LivingCertificate(
                        certificate,
                        new CertificateLife(
                                Succession.of(certificate, ofReels.getOrDefault(certificate.reel(), List.of())),
                                Optional.ofNullable(withdrawn.get(certificate.number())),
                                open.getOrDefault(certificate, List.of()))))
                .toList();
    }

    /** What became of one certificate. */
    @Transactional
    public CertificateLife of(IssuedCertificate certificate) {
        return of(certificate.plant(), List.of(certificate)).get(0).life();
    }

    private Map<IssuedCertificate, List<Question>> questions(String plant, List<IssuedCertificate> asked) {
        try {
            return questions.of(plant, asked);
        } catch (SearchTooLargeException e) {
            throw new ConflictException(
                    "Whether the certified reels are on hold could not be found out: " + e.getMessage());
        }
    }

    /**
     * The numbers of a reel's certificates that its newest test puts in question. It asks for no holds, and so is quick.
     */
    @Transactional
    public List<String> questionedByNewestTest(String plant, String reel) {
        return standing(plant, List.of(reel)).stream()
                .filter(certificate -> questions.newerTest(plant, certificate).isPresent())
                .map(IssuedCertificate::number)
                .toList();
    }

    /** The certificates of these reels that are neither withdrawn nor superseded, in the order of their numbers. */
    @Transactional
    public List<IssuedCertificate> standing(String plant, Collection<String> reels) {
        Map<String, List<IssuedCertificate>> ofReels = certificates.ofReels(plant, reels);
        List<IssuedCertificate> unsuperseded = ofReels.values().stream()
                .flatMap(all -> all.stream()
                        .filter(certificate -> !Succession.of(certificate, all).isSuperseded()))
                .sorted(Comparator.comparing(IssuedCertificate::number))
                .toList();
        Map<String, Withdrawal> withdrawn = withdrawals.of(
                plant, unsuperseded.stream().map(IssuedCertificate::number).toList());
        return unsuperseded.stream()
                .filter(certificate -> !withdrawn.containsKey(certificate.number()))
                .toList();
    }
}
