package dev.reelproof.certificate;

import dev.reelproof.certificate.CertificateContent.Conceded;
import dev.reelproof.certificate.CertificateContent.Signer;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Product;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;

/** What a certificate says of the concessions of its reel. */
final class Concessions {
    private final Wording wording;

    Concessions(Wording wording) {
        this.wording = wording;
    }

    List<Conceded> of(ConcessionStanding standing, LimitSet limitSet, Product product) {
        return standing.granted().stream()
                .map(concession -> conceded(concession, limitSet, product))
                .toList();
    }

    private Conceded conceded(Concession concession, LimitSet limitSet, Product product) {
        List<String> requirements = concession.requirements().stream()
                .map(id -> title(id, limitSet, product))
                .toList();
        Concession.Decision approval = concession.approval();
        return new Conceded(
                concession.id(),
                concession.terms().kind().word(),
                requirements,
                concession.reason(),
                signer(concession.requestedBy(), concession.requested()),
                signer(approval.by(), approval.at()),
                wording.concession(concession, requirements),
                wording.concessionPersons(concession));
    }

    /** A requirement of the set of before, where the reel was regraded, keeps its id in words. */
    private String title(String id, LimitSet limitSet, Product product) {
        return limitSet.requirement(id, product.pairs()).map(wording::title).orElseGet(() -> id.replace('-', ' '));
    }

    private Signer signer(Concession.Person person, OffsetDateTime when) {
        return new Signer(
                person.name(), wording.role(person.role()), when.toLocalDate().toString());
    }
}
