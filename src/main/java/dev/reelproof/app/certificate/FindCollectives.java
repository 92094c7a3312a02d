package dev.reelproof.app.certificate;

import dev.reelproof.certificate.CollectiveContent.Line;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.certificate.life.CertificateLife;
import dev.reelproof.certificate.life.CollectiveLife;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.CollectiveCertificates;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds collective certificates, and works out what they are worth from the certificates that they name, at the time of asking. */
@ApplicationScoped
public class FindCollectives {
    /** Of an order so many are listed, the newest. */
    private static final int MOST_OF_ORDER = 20;

    private final CollectiveCertificates collectives;
    private final Certificates certificates;
    private final FindLives lives;

    FindCollectives(CollectiveCertificates collectives, Certificates certificates, FindLives lives) {
        this.collectives = collectives;
        this.certificates = certificates;
        this.lives = lives;
    }

    /** Those of an order, newest first. */
    @Transactional
    public List<LivingCollective> ofOrder(String plant, String order) {
        return living(plant, collectives.ofOrder(plant, order, MOST_OF_ORDER));
    }

    /** Those of some numbers. */
    @Transactional
    public List<LivingCollective> of(String plant, Collection<String> numbers) {
        return numbers.isEmpty() ? List.of() : living(plant, collectives.of(plant, numbers));
    }

    /** One with what became of it. */
    @Transactional
    public LivingCollective living(IssuedCollective certificate) {
        return living(certificate.plant(), List.of(certificate)).get(0);
    }

    private List<LivingCollective> living(String plant, List<IssuedCollective> asked) {
        Set<String> places = asked.stream()
                .flatMap(one -> one.content().lines().stream())
                .map(FindCollectives::place)
                .collect(Collectors.toUnmodifiableSet());
        Set<String> numbers = asked.stream()
                .flatMap(one -> one.content().lines().stream())
                .map(Line::certificate)
                .collect(Collectors.toUnmodifiableSet());
        List<IssuedCertificate> named = certificates.issuesOf(plant, numbers).stream()
                .filter(one -> places.contains(FindCertificates.place(one)))
                .toList();
        Map<String, CertificateLife> lifeOf = new HashMap<>();
        lives.of(plant, named).forEach(one -> lifeOf.put(FindCertificates.place(one.certificate()), one.life()));
        return asked.stream()
                .map(one -> new LivingCollective(one, life(one, lifeOf)))
                .toList();
    }

    private static CollectiveLife life(IssuedCollective certificate, Map<String, CertificateLife> lifeOf) {
        return new CollectiveLife(certificate.content().lines().stream()
                .map(line -> new CollectiveLife.Named(
                        line.certificate(),
                        line.issue(),
                        line.reel(),
                        line.product(),
                        found(certificate, line, lifeOf)))
                .toList());
    }

    /** Nothing can be said of one that names what is not kept: somebody took it out of the database. */
    private static CertificateLife found(IssuedCollective certificate, Line line, Map<String, CertificateLife> lifeOf) {
        CertificateLife life = lifeOf.get(place(line));
        if (life == null) {
            throw new IllegalStateException("certificate " + place(line) + ", which " + certificate.number()
                    + " names, is not kept; the command that checks the log says what was taken out");
        }
        return life;
    }

    private static String place(Line line) {
        return line.certificate() + "/" + line.issue();
    }
}
