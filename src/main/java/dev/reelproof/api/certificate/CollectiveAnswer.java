package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.LivingCollective;
import dev.reelproof.certificate.life.CollectiveLife;
import dev.reelproof.wording.CertificateWords;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A collective certificate in the HTTP contract. */
@Schema(name = "CollectiveCertificate")
public record CollectiveAnswer(
        String number,
        String plant,
        String order,
        @Schema(nullable = true) @Nullable String customer,
        OffsetDateTime issued,
        String pdf,
        @Schema(description = "SHA-256 of the PDF, hexadecimal") String pdfSha256,
        @Schema(
                        enumeration = {"current", "in-question", "superseded", "withdrawn"},
                        description = "current only while each certificate that it names is")
                String state,
        @Schema(description = "the state in a few words") String stateText,
        @Schema(description = "the state in a sentence") String stateSentence,
        @Schema(description = "which of its certificates are not current, and why, a sentence each")
                List<String> reasons,
        @Schema(description = "the certificates that it names, by reel") List<Named> certificates) {

    /** A certificate that a collective certificate names. */
    @Schema(name = "NamedCertificate")
    public record Named(
            String number,
            int issue,
            String reel,
            String product,
            @Schema(enumeration = {"current", "in-question", "superseded", "withdrawn"}) String state,
            @Schema(description = "the state in a few words") String stateText) {

        static List<Named> of(CollectiveLife life, CertificateWords words) {
            return life.named().stream()
                    .map(one -> new Named(
                            one.certificate(),
                            one.issue(),
                            one.reel(),
                            one.product(),
                            one.life().state().word(),
                            words.state(one.life().state().word())))
                    .toList();
        }
    }

    public static CollectiveAnswer of(LivingCollective living) {
        CertificateWords words = Wording.english().certificates();
        String state = living.life().state().word();
        return new CollectiveAnswer(
                living.certificate().number(),
                living.certificate().plant(),
                living.certificate().content().order(),
                living.certificate().content().customer(),
                living.certificate().issued(),
                "/api/v1/certificates/" + living.certificate().number() + ".pdf",
                living.certificate().pdfSha256(),
                state,
                words.state(state),
                living.life().sentence(words),
                living.life().reasons(words),
                Named.of(living.life(), words));
    }
}
