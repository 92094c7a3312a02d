package dev.reelproof.api;

import dev.reelproof.store.Certificates;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Certificates that were issued. */
@Path("/api/v1/certificates")
@Tag(name = "Certificates")
public class CertificateResource {
    private static final String PDF = "application/pdf";

    private final Certificates certificates;
    private final Plants plants;

    CertificateResource(Certificates certificates, Plants plants) {
        this.certificates = certificates;
        this.plants = plants;
    }

    /** A list of certificates. */
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
                certificates.search(plants.named(plantNamed, "plant"), query, ReelResource.listLength(limit)).stream()
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
}
