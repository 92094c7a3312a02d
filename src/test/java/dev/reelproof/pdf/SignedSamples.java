package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateSamples;
import dev.reelproof.digest.Sha256;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import dev.reelproof.record.TestRecord;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Invented certificates with all that lets their reader check them, ready to be signed. */
public final class SignedSamples {
    static final String SERVICE = "https://reelproof.example";

    private SignedSamples() {}

    static TestRecord record() {
        return new TestRecord(
                "north",
                UUID.fromString("0f8c2f4e-51c7-4a4e-9d0a-0b1c6a3e7d55"),
                OffsetDateTime.parse("2026-03-02T14:10:00Z"),
                "R-2026-00417",
                CertificateSamples.product(4),
                1,
                judgement(),
                Length.of(1000, "ft"),
                Temperature.of(87.8, "°F"),
                "bay-2",
                "T. Example",
                null,
                OffsetDateTime.parse("2026-03-02T14:09:30Z"),
                CertificateSamples.conditions().equipment(),
                List.of(),
                Sha256.hex("an upload"),
                List.of(),
                null);
    }

    static Judgement judgement() {
        return CertificateSamples.of(4, 60).judgement(Verdict.ACCEPTED);
    }

    static ResultAttachment result() {
        return ResultJson.attachment(record(), judgement().sweeps());
    }

    /** Four pairs over three pages. */
    public static byte[] unsigned() {
        return unsigned(new Provenance(Optional.of(SERVICE), Optional.of(result()), Provenance.Signing.PLANT));
    }

    /** The digest of the result that they have attached. */
    public static String resultSha256() {
        return result().sha256();
    }

    /** The same with a proof of the plant's log. */
    public static byte[] unsigned(byte[] logProof) {
        return unsigned(new Provenance(
                Optional.of(SERVICE), Optional.of(result().provenBy(logProof)), Provenance.Signing.PLANT));
    }

    static byte[] unsigned(Provenance provenance) {
        CertificateContent content = CertificateSamples.of(4, 60).content();
        try (CertificateDraft draft = CertificatePdf.draft(content, provenance, Optional.empty())) {
            return draft.finish(content);
        }
    }
}
