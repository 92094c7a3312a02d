package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.LivingCertificate;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCertificate.Reissue;
import dev.reelproof.certificate.life.Question;
import dev.reelproof.wording.CertificateWords;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A certificate in the HTTP contract. */
public record CertificateAnswer(
        String number,
        int issue,
        String plant,
        String reel,
        UUID record,
        OffsetDateTime issued,
        @Nullable String order,
        @Nullable String customer,
        @Schema(nullable = true, description = "to whom the goods go, where a reissue says it") @Nullable
                String consignee,
        @Schema(nullable = true, description = "why it was issued again; null for the first issue") @Nullable
                String reissueReason,
        @Schema(nullable = true, description = "who issued it again") @Nullable String reissuedBy,
        String pdf,
        String pdfSha256,
        @Schema(enumeration = {"current", "in-question", "superseded", "withdrawn"}) String state,
        @Schema(description = "the state in a few words") String stateText,
        @Schema(description = "the state in a sentence") String stateSentence,
        @Schema(description = "why it is in question, or was withdrawn, a sentence each") List<String> reasons,
        @Schema(description = "what speaks against it now") List<QuestionAnswer> questions) {

    /** A fact that speaks against a certificate. */
    @Schema(name = "CertificateQuestion")
    public record QuestionAnswer(
            @Schema(
                            enumeration = {
                                "hold",
                                "newer-test",
                                "awaits-engineer",
                                "limits-wrong",
                                "concession-open",
                                "reel-changed",
                                "scrapped"
                            })
                    String kind,
            String sentence) {
        static QuestionAnswer of(Question question, CertificateWords words) {
            return new QuestionAnswer(question.kind(), question.sentence(words));
        }
    }

    public static CertificateAnswer of(LivingCertificate living) {
        CertificateWords words = Wording.english().certificates();
        IssuedCertificate certificate = living.certificate();
        String state = living.life().state().word();
        return new CertificateAnswer(
                certificate.number(),
                certificate.issue(),
                certificate.plant(),
                certificate.reel(),
                certificate.record(),
                certificate.issued(),
                certificate.order(),
                certificate.customer(),
                said(certificate, Reissue::consignee),
                said(certificate, Reissue::reason),
                said(certificate, Reissue::by),
                "/api/v1/certificates/" + certificate.number() + ".pdf",
                certificate.pdfSha256(),
                state,
                words.state(state),
                living.life().sentence(words),
                living.life().reasons(words),
                living.life().questions().stream()
                        .map(question -> QuestionAnswer.of(question, words))
                        .toList());
    }

    private static @Nullable String said(IssuedCertificate certificate, Function<Reissue, @Nullable String> part) {
        return Optional.ofNullable(certificate.reissue()).map(part).orElse(null);
    }
}
