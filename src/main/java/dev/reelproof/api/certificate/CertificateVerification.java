package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.VerifyCertificate;
import dev.reelproof.app.certificate.VerifyCertificate.Known;
import dev.reelproof.certificate.IssuedCertificate;
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
                verified.isGenuine()
                        ? known.map(one -> one.life().publicReasons(words)).orElse(List.of())
                        : List.of(),
                verified.differences().stream()
                        .map(difference -> difference.sentence(words))
                        .toList(),
                said(known, IssuedCertificate::issue),
                said(known, IssuedCertificate::issued),
                said(known, IssuedCertificate::reel),
                known.map(Known::product).orElse(null),
                said(known, IssuedCertificate::pdfSha256),
                verified.matches().orElse(null));
    }

    private static String state(VerifyCertificate.Verified verified) {
        return verified.known()
                .map(known -> verified.isGenuine() ? known.life().state().word() : ALTERED)
                .orElse(UNKNOWN);
    }

    private static String sentence(VerifyCertificate.Verified verified, String state, CertificateWords words) {
        return switch (state) {
            case UNKNOWN -> verified.number().isPresent() ? words.unknown() : words.noNumber();
            case ALTERED -> words.altered();
            default -> verified.known().orElseThrow().life().sentence(words);
        };
    }

    private static <T> @Nullable T said(Optional<Known> known, Function<IssuedCertificate, T> part) {
        return known.map(Known::certificate).map(part).orElse(null);
    }
}
