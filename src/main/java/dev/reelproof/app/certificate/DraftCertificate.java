package dev.reelproof.app.certificate;

import dev.reelproof.app.Plants;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Issuing;
import dev.reelproof.certificate.Item;
import dev.reelproof.certificate.TestConditions;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.pdf.CertificateDraft;
import dev.reelproof.pdf.CertificatePdf;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.wording.Wording;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;

/** Lays out the certificate of a record before it has a number. It takes long, and asks nothing of the database. */
@ApplicationScoped
public class DraftCertificate {
    static final int FIRST_ISSUE = 1;

    /** A number like any other stands in until the certificate has its own; nobody draws it. */
    private static final int STAND_IN_SERIAL = 1;

    private final Plants plants;
    private final Clock clock;

    DraftCertificate(Plants plants, Clock clock) {
        this.plants = plants;
        this.clock = clock;
    }

    /**
     * Lays out a certificate; the caller closes the draft.
     *
     * @param sweeps the record's sweeps
     * @param limitSet what it was judged by
     * @param standing what the reel's concessions mean for the record
     * @throws IllegalArgumentException when the record may not have a certificate, or was judged by another limit set
     */
    public CertificateDraft draft(
            RegisteredReel reel,
            TestRecord record,
            List<CorrectedSweep> sweeps,
            LimitSet limitSet,
            ConcessionStanding standing) {
        OffsetDateTime now = OffsetDateTime.now(clock);
        CertificateNumber standIn = CertificateNumber.of(record.plant(), now.getYear(), STAND_IN_SERIAL);
        return CertificatePdf.draft(CertificateContent.of(
                new Issuing(standIn, FIRST_ISSUE, now, plants.signature(record.plant())),
                item(reel, record),
                conditions(record),
                record.product(),
                withSweeps(record.judgement(), sweeps),
                limitSet,
                standing,
                Wording.english()));
    }

    /** The measured length; as registered when it is the same, so that a length in feet reads in feet. */
    private static Item item(RegisteredReel reel, TestRecord record) {
        boolean same = reel.length().equals(record.length());
        return new Item(
                reel.id(),
                same ? reel.sentLength() : record.length().metres(),
                same ? reel.sentUnit() : "m",
                record.length(),
                reel.customer(),
                reel.order());
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
