package dev.reelproof.app.certificate;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.seal.KeepLog;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.certificate.Completeness;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.certificate.Issuing;
import dev.reelproof.certificate.Item;
import dev.reelproof.certificate.TestConditions;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.pdf.CertificateDraft;
import dev.reelproof.pdf.CertificatePdf;
import dev.reelproof.pdf.Provenance;
import dev.reelproof.pdf.ResultAttachment;
import dev.reelproof.pdf.ResultJson;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Lays out the certificate of a record before it has a number. It takes long; it asks the plant's log for a proof, in transactions of its
 * own, and nothing else of the database.
 */
@ApplicationScoped
public class DraftCertificate {
    static final int FIRST_ISSUE = 1;

    /** A number like any other stands in until the certificate has its own; nobody draws it. */
    private static final int STAND_IN_SERIAL = 1;

    private static final String SLASHES_AT_THE_END = "/+$";

    private final Plants plants;
    private final PlantLogos logos;
    private final SigningOfPlant signing;
    private final PaperSettings settings;
    private final KeepLog log;
    private final Clock clock;

    DraftCertificate(
            Plants plants, PlantLogos logos, SigningOfPlant signing, PaperSettings settings, KeepLog log, Clock clock) {
        this.plants = plants;
        this.logos = logos;
        this.signing = signing;
        this.settings = settings;
        this.log = log;
        this.clock = clock;
    }

    /**
     * Lays out a certificate; the caller closes the draft.
     *
     * @param consignee to whom the goods go; null when that is not stated
     * @param circumstances what is to be said beside the record
     * @param sweeps the record's sweeps
     * @param limitSet what it was judged by
     * @throws ConflictException when the plant's log was set back, when the declared type of certificate demands what is not stated, or something stated cannot be printed
     * @throws IllegalArgumentException when the record may not have a certificate, or was judged by another limit set
     */
    public CertificateDraft draft(
            RegisteredReel reel,
            @Nullable String consignee,
            TestRecord record,
            Circumstances circumstances,
            List<CorrectedSweep> sweeps,
            LimitSet limitSet) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        CertificateNumber standIn = CertificateNumber.of(record.plant(), now.getYear(), STAND_IN_SERIAL);
        Declaration declaration = plants.declaration(record.plant());
        Item item = item(reel, consignee, record);
        TestConditions test = conditions(record);
        requireComplete(declaration, item, test);
        CertificateContent content = CertificateContent.of(
                new Issuing(standIn, FIRST_ISSUE, now, plants.signature(record.plant())),
                declaration,
                circumstances,
                item,
                test,
                record.product(),
                withSweeps(record.judgement(), sweeps),
                limitSet);
        CertificateDraft draft = CertificatePdf.draft(content, provenance(record, sweeps), logos.of(record.plant()));
        List<String> unprintable = draft.unprintable();
        if (!unprintable.isEmpty()) {
            draft.close();
            throw new ConflictException(
                    "Reel " + item.reel() + ": certificates are printed in letters of Latin, Greek and Cyrillic; "
                            + String.join("; ", unprintable) + ". Write it in those letters, then ask again.");
        }
        return draft;
    }

    /** The address of the service that verifies, without a slash at its end; empty when the plant names none. */
    static Optional<String> service(PaperSettings settings) {
        return settings.address().map(address -> address.strip().replaceAll(SLASHES_AT_THE_END, ""));
    }

    private Provenance provenance(TestRecord record, List<CorrectedSweep> sweeps) {
        ResultAttachment result = ResultJson.attachment(record, sweeps);
        return new Provenance(
                service(settings),
                Optional.of(result.provenBy(log.proofToCarry(record.plant(), result.sha256()))),
                signing.signing());
    }

    /** Refuses what the declared type demands and nobody stated, before anything is issued. */
    private static void requireComplete(Declaration declaration, Item item, TestConditions test) {
        List<String> missing = Completeness.missing(declaration, item, test);
        if (!missing.isEmpty()) {
            throw new ConflictException("Reel " + item.reel() + ": a certificate of type "
                    + declaration.type().word() + " must state " + String.join(", ", missing)
                    + ". State what is missing, then ask again.");
        }
    }

    /** The measured length; as registered when it is the same, so that a length in feet reads in feet. */
    private static Item item(RegisteredReel reel, @Nullable String consignee, TestRecord record) {
        boolean same = reel.length().equals(record.length());
        return new Item(
                reel.id(),
                same ? reel.sentLength() : record.length().metres(),
                same ? reel.sentUnit() : "m",
                record.length(),
                reel.lengthMarks(),
                reel.customer(),
                reel.order(),
                consignee);
    }

    private static TestConditions conditions(TestRecord record) {
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

    private static Judgement withSweeps(Judgement judgement, List<CorrectedSweep> sweeps) {
        return new Judgement(
                judgement.limitSet(),
                judgement.revision(),
                judgement.limitSetSha256(),
                judgement.engine(),
                judgement.verdict(),
                judgement.findings(),
                sweeps,
                judgement.uncertaintyModel());
    }
}
