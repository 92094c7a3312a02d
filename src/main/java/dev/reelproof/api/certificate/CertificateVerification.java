package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.LivingCollective;
import dev.reelproof.app.certificate.VerifyCertificate;
import dev.reelproof.app.certificate.VerifyCertificate.Known;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.wording.CertificateWords;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What anyone may know of a certificate that they have: nothing of order, customer, figures or the plant's own affairs. */
@Schema(name = "CertificateVerification")
record CertificateVerification(
        @Schema(nullable = true, description = "null when the file states none") @Nullable String number,
        @Schema(description = "false when it was not issued here, or the PDF or digest asked about is another")
                boolean genuine,
        @Schema(description = "true only in the state current") boolean current,
        @Schema(enumeration = {"current", "in-question", "superseded", "withdrawn", "altered", "unknown"}) String state,
        @Schema(description = "the state in a few words") String stateText,
        @Schema(description = "what the state means for whoever holds the certificate") String stateSentence,
        @Schema(description = "what speaks against it, a sentence each, when it is in question") List<String> reasons,
        @Schema(description = "in what an altered file is not as issued, a sentence each") List<String> differences,
        @Schema(nullable = true) @Nullable Integer issue,
        @Schema(nullable = true) @Nullable OffsetDateTime issued,
        @Schema(nullable = true) @Nullable String reel,
        @Schema(nullable = true) @Nullable String product,
        @Schema(description = "the certificates that a collective certificate names; empty for one of a single reel")
                List<CollectiveAnswer.Named> certificates,
        @Schema(nullable = true, description = "SHA-256 of the issue's PDF, hexadecimal") @Nullable String pdfSha256,
        @Schema(
                        description =
                                "whether the PDF or digest asked about is that of an issued PDF; null when none was",
                        nullable = true)
                @Nullable
                Boolean matches) {

    private static final String ALTERED = "altered";
    private static final String UNKNOWN = "unknown";

    static CertificateVerification of(VerifyCertificate.Verified verified) {
        CertificateWords words = Wording.english().certificates();
        Optional<Known> known = verified.known();
        String state = state(verified);
        return new CertificateVerification(
                verified.number().orElse(null),
                verified.isGenuine(),
                verified.isCurrent(),
                state,
                words.state(state),
                sentence(verified, state, words),
                verified.isGenuine() ? reasons(verified, words) : List.of(),
                verified.differences().stream()
                        .map(difference -> difference.sentence(words))
                        .toList(),
                either(verified, IssuedCertificate::issue, one -> one.content().issue()),
                either(verified, IssuedCertificate::issued, IssuedCollective::issued),
                known.map(one -> one.certificate().reel()).orElse(null),
                known.map(Known::product).orElse(null),
                verified.collective()
                        .map(one -> CollectiveAnswer.Named.of(one.life(), words))
                        .orElse(List.of()),
                either(verified, IssuedCertificate::pdfSha256, IssuedCollective::pdfSha256),
                verified.matches().orElse(null));
    }

    private static String state(VerifyCertificate.Verified verified) {
        return verified.state()
                .map(state -> verified.isGenuine() ? state.word() : ALTERED)
                .orElse(UNKNOWN);
    }

    private static String sentence(VerifyCertificate.Verified verified, String state, CertificateWords words) {
        return switch (state) {
            case UNKNOWN -> verified.number().isPresent() ? words.unknown() : words.noNumber();
            case ALTERED -> words.altered();
            default -> verified.collective()
                    .map(one -> one.life().sentence(words))
                    .orElseGet(() -> verified.known().orElseThrow().life().sentence(words));
        };
    }

    private static List<String> reasons(VerifyCertificate.Verified verified, CertificateWords words) {
        return verified.collective()
                .map(one -> one.life().publicReasons(words))
                .or(() -> verified.known().map(one -> one.life().publicReasons(words)))
                .orElse(List.of());
    }

    /** A part that certificates of one reel and of several have both. */
    private static <T> @Nullable T either(
            VerifyCertificate.Verified verified,
            Function<IssuedCertificate, T> ofOne,
            Function<IssuedCollective, T> ofSeveral) {
        return verified.known()
                .map(Known::certificate)
                .map(ofOne)
                .or(() ->
                        verified.collective().map(LivingCollective::certificate).map(ofSeveral))
                .orElse(null);
    }
}
