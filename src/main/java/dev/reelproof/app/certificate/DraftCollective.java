package dev.reelproof.app.certificate;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.Plants;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.Issuing;
import dev.reelproof.pdf.CollectiveDraft;
import dev.reelproof.pdf.Provenance;
import dev.reelproof.store.certificate.Certificates;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Lays out a collective certificate before it has a number, from what the certificates say that it names. */
@ApplicationScoped
public class DraftCollective {
    /** A number like any other stands in until it has its own; nobody draws it. */
    private static final int STAND_IN_SERIAL = 1;

    private final Plants plants;
    private final PlantLogos logos;
    private final SigningOfPlant signing;
    private final PaperSettings settings;
    private final Certificates certificates;
    private final Clock clock;

    DraftCollective(
            Plants plants,
            PlantLogos logos,
            SigningOfPlant signing,
            PaperSettings settings,
            Certificates certificates,
            Clock clock) {
        this.plants = plants;
        this.logos = logos;
        this.signing = signing;
        this.settings = settings;
        this.certificates = certificates;
        this.clock = clock;
    }

    /**
     * Lays it out; the caller closes the draft.
     *
     * @param customer who ordered; null when not known
     * @param named the certificates that it names
     * @throws ConflictException when these are not of one kind and language, or something stated cannot be printed
     */
    public CollectiveDraft draft(String plant, String order, @Nullable String customer, List<IssuedCertificate> named) {
        List<CertificateContent> contents =
                QuarkusTransaction.joiningExisting().call(() -> certificates.contents(plant, named));
        requireOneKind(order, contents);
        OffsetDateTime now = OffsetDateTime.now(clock);
        CollectiveContent content = CollectiveContent.of(
                new Issuing(
                        CertificateNumber.of(plant, now.getYear(), STAND_IN_SERIAL),
                        CollectiveContent.FIRST_ISSUE,
                        now,
                        plants.signature(plant)),
                plants.declaration(plant).authorised(),
                order,
                customer,
                named,
                contents);
        CollectiveDraft draft = CollectiveDraft.of(
                content,
                contents,
                new Provenance(DraftCertificate.service(settings), Optional.empty(), signing.signing()),
                logos.of(plant));
        List<String> unprintable = draft.unprintable();
        if (!unprintable.isEmpty()) {
            draft.close();
            throw new ConflictException("Order " + order
                    + ": certificates are printed in letters of Latin, Greek and Cyrillic; "
                    + String.join("; ", unprintable) + ". Write it in those letters, then ask again.");
        }
        return draft;
    }

    private static void requireOneKind(String order, List<CertificateContent> contents) {
        TreeMap<String, String> anyOfKind = new TreeMap<>();
        contents.forEach(content -> anyOfKind.putIfAbsent(
                content.paper().title() + " (" + content.paper().language() + ")", content.number()));
        if (anyOfKind.size() > 1) {
            throw new ConflictException(
                    "Order " + order + ": a collective certificate names certificates of one kind and"
                            + " language, and these are of several, such as " + anyOfKind
                            + ". Issue those of the other kind again, or ask for the reels of one kind.");
        }
    }
}
