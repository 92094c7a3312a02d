package dev.reelproof.api;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.app.access.CompanySettings;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What this installation is, and the schemas of the documents that it takes. */
@Path("/api/v1")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Service")
public class ServiceResource {
    private static final List<String> SCHEMAS =
            List.of("result", "certified-result", "limit-set", "construction", "uncertainty-model");

    private final Settings settings;
    private final Plants plants;
    private final CompanySettings company;
    private final String version;

    ServiceResource(
            Settings settings,
            Plants plants,
            CompanySettings company,
            @ConfigProperty(name = "quarkus.application.version") String version) {
        this.settings = settings;
        this.plants = plants;
        this.company = company;
        this.version = version;
    }

    /** What this installation is. */
    record Status(
            String plant,
            List<String> plants,
            boolean demo,
            @Schema(description = "whether the company's identity provider signs in here") boolean identityProvider,
            String version) {}

    @GET
    @PermitAll
    @Path("/status")
    @Operation(summary = "The plants served, whether this is the demo, and the version")
    public Status status() {
        return new Status(
                plants.home(), plants.served(), settings.demo(), company.oidc().on(), version);
    }

    @GET
    @Authenticated
    @Path("/schemas/{name}")
    @Produces("application/schema+json")
    @Operation(
            summary =
                    "The JSON Schema of a result, of what a certificate's PDF has attached, or of a file of limits/ (result,"
                            + " certified-result, limit-set, construction, uncertainty-model)")
    public byte[] schema(String name) {
        if (!SCHEMAS.contains(name)) {
            throw new NothingThereException(
                    "There is no schema '" + name + "'; there are " + String.join(", ", SCHEMAS) + ".");
        }
        return Schemas.bytes(name);
    }
}
