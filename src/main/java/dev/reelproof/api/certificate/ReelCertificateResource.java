package dev.reelproof.api.certificate;

import dev.reelproof.access.Action;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindCertificates;
import dev.reelproof.app.certificate.IssueCertificate;
import dev.reelproof.app.certificate.IssueCertificate.Issued;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The certificates of a reel. */
@Path("/api/v1/reels/{reel}/certificates")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Certificates")
@Authenticated
public class ReelCertificateResource {
    private final IssueCertificate issuing;
    private final FindCertificates certificates;
    private final Plants plants;

    ReelCertificateResource(IssueCertificate issuing, FindCertificates certificates, Plants plants) {
        this.issuing = issuing;
        this.certificates = certificates;
        this.plants = plants;
    }

    @POST
    @Operation(
            summary = "Issue the certificate of a reel's newest record",
            description = "Asked again for the same record, it gives the same certificate.")
    @APIResponse(
            responseCode = "201",
            description = "issued",
            content = @Content(schema = @Schema(implementation = CertificateAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "issued before",
            content = @Content(schema = @Schema(implementation = CertificateAnswer.class)))
    @APIResponse(responseCode = "404", description = "the reel is not registered")
    @APIResponse(
            responseCode = "409",
            description =
                    "the reel may not have one: it is on hold, neither accepted nor conceded, its concession is not decided or"
                            + " not done, it was never tested, scrapped, judged by limits that were found wrong, or its"
                            + " certificate was withdrawn; or its type demands what nobody stated")
    @APIResponse(
            responseCode = "503",
            description = "it cannot be signed at present; a number that it has by then is kept for it")
    public Response issue(@PathParam("reel") String reel, @QueryParam("plant") @Nullable String plantNamed) {
        Issued issued = issuing.issue(plants.forAction(Action.ISSUE, plantNamed, "plant"), reel);
        CertificateAnswer answer = CertificateAnswer.of(certificates.living(issued.certificate()));
        return (issued.first() ? Response.created(URI.create(answer.pdf())) : Response.ok())
                .entity(answer)
                .build();
    }
}
