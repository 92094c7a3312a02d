package dev.reelproof.app.certificate;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.hold.HeldException;
import dev.reelproof.app.hold.HoldCheck;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Issuing;
import dev.reelproof.certificate.Item;
import dev.reelproof.certificate.MayHaveCertificate;
import dev.reelproof.certificate.TestConditions;
import dev.reelproof.genealogy.Hold;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.pdf.CertificatePdf;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.StoredCertificate;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.reel.RegisteredReel;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.StoredRecord;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** Issues certificates: for the newest record of a reel, when it is accepted and not on hold, once. */
@ApplicationScoped
public class IssueCertificate {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int FIRST_ISSUE = 1;

    private final Reels reels;
    private final Records archive;
    private final Certificates certificates;
    private final HoldCheck holds;
    private final LimitSets limitSets;
    private final Plants plants;

    IssueCertificate(
            Reels reels,
            Records archive,
            Certificates certificates,
            HoldCheck holds,
            LimitSets limitSets,
            Plants plants) {
        this.reels = reels;
        this.archive = archive;
        this.certificates = certificates;
        this.holds = holds;
        this.limitSets = limitSets;
        this.plants = plants;
    }

    /**
     * What came of asking for a certificate.
     *
     * @param certificate the certificate
     * @param first false when the record had it before
     */
    public record Issued(StoredCertificate certificate, boolean first) {}

    /**
     * The certificate of a reel's newest record, issued now when it has none yet.
     *
     * @throws NothingThereException when the reel is not registered
     * @throws ConflictException when the reel may not have one
     * @throws HeldException when the reel is on hold, also when it has one already
     */
    @Transactional
    public Issued issue(String plant, String reelNumber, OffsetDateTime now) {
        RegisteredReel reel = reels.byId(plant, reelNumber)
                .orElseThrow(() -> new NothingThereException(
                        "Reel '" + reelNumber + "' is not registered at plant " + plant + "."));
        reels.lock(plant, reel.id());
        Optional<StoredRecord> newest = archive.newestOf(plant, reel.id());
        requireFree(plant, reel.id(), newest);
        StoredRecord record =
                newest.orElseThrow(() -> new ConflictException("Reel " + reel.id() + " was never tested."));
        MayHaveCertificate.reasonAgainst(record.judgement()).ifPresent(reason -> {
            throw new ConflictException("Reel " + reel.id() + ": " + reason);
        });
        Optional<StoredCertificate> before = certificates.ofRecord(plant, record.id());
        if (before.isPresent()) {
            return new Issued(before.get(), false);
        }
        int year = now.getYear();
        CertificateNumber number = CertificateNumber.of(plant, year, certificates.nextSerial(plant, year));
        CertificateContent content = CertificateContent.of(
                new Issuing(number, FIRST_ISSUE, now, plants.signature(plant)),
                item(reel, record),
                conditions(record),
                record.product(),
                withSweeps(record),
                limitSets.of(record));
        return new Issued(
                certificates.keep(
                        record,
                        number.toString(),
                        FIRST_ISSUE,
                        now,
                        reel.order(),
                        reel.customer(),
                        json(content),
                        CertificatePdf.render(content)),
                true);
    }

    private void requireFree(String plant, String reel, Optional<StoredRecord> newest) {
        List<Hold> found = holds.openOf(plant, reel);
        if (!found.isEmpty()) {
            throw HeldException.noCertificate(
                    reel,
                    found,
                    newest.flatMap(record -> certificates.ofRecord(plant, record.id()))
                            .map(StoredCertificate::number)
                            .orElse(null));
        }
    }

    /** The measured length; as registered when it is the same, so that a length in feet reads in feet. */
    private static Item item(RegisteredReel reel, StoredRecord record) {
        boolean same = reel.length().equals(record.length());
        return new Item(
                reel.id(),
                same ? reel.sentLength() : record.length().metres(),
                same ? reel.sentUnit() : "m",
                record.length(),
                reel.customer(),
                reel.order());
    }

    private static TestConditions conditions(StoredRecord record) {
        return new TestConditions(
                record.id().toString(),
                record.sourceSha256(),
                record.temperature().celsius(),
                "°C",
                record.temperature(),
                record.started(),
                record.finished(),
                record.station(),
                record.technician(),
                record.equipment());
    }

    private Judgement withSweeps(StoredRecord record) {
        Judgement judgement = record.judgement();
        return new Judgement(
                judgement.limitSet(),
                judgement.revision(),
                judgement.limitSetSha256(),
                judgement.engine(),
                judgement.verdict(),
                judgement.findings(),
                archive.sweeps(record.plant(), record.id()),
                judgement.uncertaintyModel());
    }

    private static String json(CertificateContent content) {
        try {
            return JSON.writeValueAsString(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("certificate " + content.number() + " cannot be kept", e);
        }
    }
}
