package dev.reelproof.api.certificate;

import dev.reelproof.api.Problem;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.certificate.StoredCertificate;
import dev.reelproof.store.result.Records;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Certificates that were issued. */
@Path("/api/v1/certificates")
@Tag(name = "Certificates")
@Authenticated
public class CertificateResource {
    private static final String PDF = "application/pdf";

    private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");
    private static final String NOT_KEPT = "no-store";

    private final Certificates certificates;
    private final Records archive;
    private final Plants plants;

    CertificateResource(Certificates certificates, Records archive, Plants plants) {
        this.certificates = certificates;
        this.archive = archive;
        this.plants = plants;
    }

    /** A list of certificates. */
    @Schema(name = "Certificates")
    record Listed(List<CertificateAnswer> certificates) {}

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Find certificates by a part of their number, reel, order or customer",
            description = "Whatever its case; newest first.")
    public Listed search(
            @QueryParam("query") @DefaultValue("") String query,
            @QueryParam("limit") @DefaultValue("20") String limit,
            @QueryParam("plant") String plantNamed) {
        return new Listed(
                certificates.search(plants.named(plantNamed, "plant"), query, QueryParameters.limit(limit)).stream()
                        .map(CertificateAnswer::of)
                        .toList());
    }

    @GET
    @Path("/{number}.pdf")
    @Produces({PDF, Problem.MEDIA_TYPE})
    @Operation(summary = "A certificate as PDF, the same bytes each time")
    @APIResponse(responseCode = "200", description = "the certificate", content = @Content(mediaType = PDF))
    @APIResponse(responseCode = "404", description = "no such certificate")
    public Response pdf(String number, @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        byte[] pdf = certificates
                .pdf(plant, number)
                .orElseThrow(
                        () -> new NothingThereException("Plant " + plant + " issued no certificate '" + number + "'."));
        return Response.ok(pdf, PDF)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"" + number + ".pdf\"")
                .build();
    }

    @GET
    @Path("/{number}/verification")
    @Produces(MediaType.APPLICATION_JSON)
    @PermitAll
    @Operation(
            summary = "Whether a certificate is genuine and current; open to anyone who has its number",
            description =
                    "With the SHA-256 of a PDF: whether that is the certificate as issued, be it an earlier issue.")
    @APIResponse(
            responseCode = "200",
            description = "it was issued here",
            content = @Content(schema = @Schema(implementation = CertificateVerification.class)))
    @APIResponse(responseCode = "404", description = "no such certificate was issued here")
    @APIResponse(responseCode = "422", description = "sha256 is not a SHA-256")
    public Response verify(String number, @QueryParam("sha256") String sha256) {
        String asked = sha256 == null ? null : sha256.strip().toLowerCase(Locale.ROOT);
        if (asked != null && !SHA256.matcher(asked).matches()) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT, "sha256", "must be the 64 hexadecimal digits of a SHA-256");
        }
        List<StoredCertificate> issues = issues(number)
                .orElseThrow(() -> new NothingThereException("No certificate of this number was issued here."));
        StoredCertificate newest = issues.get(0);
        StoredCertificate meant = issues.stream()
                .filter(issue -> issue.pdfSha256().equals(asked))
                .findFirst()
                .orElse(newest);
        return Response.ok(new CertificateVerification(
                        meant.number(),
                        true,
                        meant.issue() == newest.issue(),
                        meant.issue(),
                        meant.issued(),
                        meant.reel(),
                        archive.productOf(meant.plant(), meant.record()).orElseThrow(),
                        meant.pdfSha256(),
                        asked == null ? null : meant.pdfSha256().equals(asked)))
                .header(HttpHeaders.CACHE_CONTROL, NOT_KEPT)
                .build();
    }

    private Optional<List<StoredCertificate>> issues(String number) {
        CertificateNumber read;
        try {
            read = CertificateNumber.parse(number);
        } catch (IllegalArgumentException e) {
            // What is no number was never issued.
            return Optional.empty();
        }
        return plants.served().stream()
                .map(plant -> certificates.issues(plant, read.toString()))
                .filter(found -> !found.isEmpty())
                .findFirst();
    }
}
