package dev.reelproof.api.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.api.Problem;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.api.access.ApprovalAnswer;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.AskWithdrawal;
import dev.reelproof.app.certificate.FindCertificates;
import dev.reelproof.app.certificate.ReissueCertificate;
import dev.reelproof.app.certificate.VerifyCertificate;
import dev.reelproof.certificate.CertificateFilter;
import dev.reelproof.certificate.IssuedCertificate;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Certificates that were issued. */
@Path("/api/v1/certificates")
@Tag(name = "Certificates")
@Authenticated
public class CertificateResource {
    private static final String PDF = "application/pdf";

    private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");
    private static final String NOT_KEPT = "no-store";

    private final FindCertificates certificates;
    private final VerifyCertificate verification;
    private final ReissueCertificate reissuing;
    private final AskWithdrawal withdrawing;
    private final Plants plants;

    CertificateResource(
            FindCertificates certificates,
            VerifyCertificate verification,
            ReissueCertificate reissuing,
            AskWithdrawal withdrawing,
            Plants plants) {
        this.certificates = certificates;
        this.verification = verification;
        this.reissuing = reissuing;
        this.withdrawing = withdrawing;
        this.plants = plants;
    }

    /** A list of certificates. */
    @Schema(name = "Certificates")
    record Listed(
            List<CertificateAnswer> certificates,
            @Schema(nullable = true, description = "what 'after' is to say for those that follow; null when none do")
                    @Nullable
                    String next) {}

    @GET
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Certificates with their state, newest first",
            description =
                    "Certificates of single reels; those over several are with their order. 'query' is a part of number, reel, order or customer, whatever its case; 'reel', 'order' and"
                            + " 'customer' are exact. 'from' and 'to' are days or times of issue, 'to' as a day included. 'after' is the"
                            + " 'next' of the answer before.")
    public Listed search(
            @QueryParam("query") @DefaultValue("") String query,
            @QueryParam("reel") @Nullable String reel,
            @QueryParam("order") @Nullable String order,
            @QueryParam("customer") @Nullable String customer,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @DefaultValue("20") String limit,
            @QueryParam("plant") @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        CertificateFilter filter = new CertificateFilter(
                QueryParameters.text("query", query),
                QueryParameters.textIfGiven("reel", reel),
                QueryParameters.textIfGiven("order", order),
                QueryParameters.textIfGiven("customer", customer),
                QueryParameters.timeOrDay("from", from, LocalTime.MIN),
                QueryParameters.before("to", to),
                after == null ? null : after(plant, QueryParameters.text("after", after)));
        FindCertificates.Page page = certificates.list(plant, filter, QueryParameters.limit(limit));
        List<CertificateAnswer> lines =
                page.certificates().stream().map(CertificateAnswer::of).toList();
        return new Listed(
                lines,
                page.isMore()
                        ? FindCertificates.place(page.certificates()
                                .get(page.certificates().size() - 1)
                                .certificate())
                        : null);
    }

    private IssuedCertificate after(String plant, String place) {
        return certificates
                .at(plant, place)
                .orElseThrow(() -> QueryParameters.refused(
                        "after",
                        "is the 'next' of the answer before, such as NORTH-2026-000123/1, not '" + place + "'"));
    }

    @GET
    @Path("/{number}.pdf")
    @Produces({PDF, Problem.MEDIA_TYPE})
    @Operation(summary = "A certificate as PDF, also a collective one; the same bytes each time")
    @APIResponse(responseCode = "200", description = "the certificate", content = @Content(mediaType = PDF))
    @APIResponse(responseCode = "404", description = "no such certificate")
    public Response pdf(String number, @QueryParam("plant") @Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return Response.ok(certificates.pdf(plant, number), PDF)
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
                    "With the SHA-256 of a PDF: whether that is the certificate as issued, be it an earlier issue; it is"
                            + " genuine only then.")
    @APIResponse(
            responseCode = "200",
            description = "it was issued here",
            content = @Content(schema = @Schema(implementation = CertificateVerification.class)))
    @APIResponse(responseCode = "404", description = "no such certificate was issued here")
    @APIResponse(responseCode = "422", description = "sha256 is not a SHA-256")
    public Response verify(String number, @QueryParam("sha256") @Nullable String sha256) {
        return Response.ok(CertificateVerification.of(verification.verify(number, digest(sha256))))
                .header(HttpHeaders.CACHE_CONTROL, NOT_KEPT)
                .build();
    }

    @POST
    @Path("/verification")
    @Consumes(PDF)
    @Produces(MediaType.APPLICATION_JSON)
    @PermitAll
    @Operation(
            summary = "Whether a PDF is a genuine and current certificate; open to anyone who has it",
            description =
                    "Number and digest are read from the PDF itself; its name does not matter. The file is not kept.")
    @RequestBody(
            required = true,
            content = @Content(mediaType = PDF, schema = @Schema(type = SchemaType.STRING, format = "binary")))
    @APIResponse(
            responseCode = "200",
            description = "what is known of it, be it that it is unknown",
            content = @Content(schema = @Schema(implementation = CertificateVerification.class)))
    @APIResponse(responseCode = "409", description = "too many files are being verified; send it again")
    @APIResponse(responseCode = "422", description = "nothing was sent")
    public Response verifyFile(byte[] pdf) {
        if (pdf.length == 0) {
            throw QueryParameters.refused("body", "must be the PDF");
        }
        return Response.ok(CertificateVerification.of(verification.verifyFile(pdf)))
                .header(HttpHeaders.CACHE_CONTROL, NOT_KEPT)
                .build();
    }

    @POST
    @Path("/{number}/reissues")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Issue a certificate again, with other details of customer, order or consignee",
            description =
                    "The same number and judgement, the next issue; the issue before is superseded. What is not sent stays.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = SentLife.Reissue.class)))
    @APIResponse(
            responseCode = "201",
            description = "issued again",
            content = @Content(schema = @Schema(implementation = CertificateAnswer.class)))
    @APIResponse(responseCode = "404", description = "no such certificate")
    @APIResponse(
            responseCode = "409",
            description = "the reel may have no certificate now, or this one is of an earlier test or withdrawn")
    @APIResponse(responseCode = "422", description = "no reason, or a detail that cannot be")
    public Response reissue(String number, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        String plant = plants.forAction(Action.REISSUE, plantNamed, "plant");
        CertificateAnswer answer =
                CertificateAnswer.of(certificates.living(reissuing.reissue(plant, number, SentLife.reissue(body))));
        return Response.created(URI.create(answer.pdf())).entity(answer).build();
    }

    @POST
    @Path("/{number}/withdrawals")
    @Consumes(MediaType.APPLICATION_JSON)
    @Produces(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Ask to have a certificate withdrawn; another person approves",
            description =
                    "The answer is the open approval; POST /api/v1/approvals/{id}/decision by another person withdraws the"
                            + " certificate with all its issues. For persons of the role quality-manager.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = SentLife.Withdrawal.class)))
    @APIResponse(
            responseCode = "201",
            description = "asked for",
            content = @Content(schema = @Schema(implementation = ApprovalAnswer.class)))
    @APIResponse(responseCode = "403", description = "the role may not, or it is a token")
    @APIResponse(responseCode = "404", description = "no such certificate")
    @APIResponse(responseCode = "409", description = "withdrawn before, or asked for already")
    @APIResponse(responseCode = "422", description = "no reason")
    public Response withdraw(String number, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        String plant = withdrawing.requirePermission(plantNamed);
        return Response.status(Response.Status.CREATED)
                .entity(ApprovalAnswer.of(withdrawing.ask(plant, number, SentLife.withdrawal(body))))
                .build();
    }

    private static Optional<String> digest(@Nullable String sha256) {
        Optional<String> asked =
                Optional.ofNullable(sha256).map(text -> text.strip().toLowerCase(Locale.ROOT));
        if (!asked.stream().allMatch(text -> SHA256.matcher(text).matches())) {
            throw QueryParameters.refused("sha256", "must be the 64 hexadecimal digits of a SHA-256");
        }
        return asked;
    }
}
