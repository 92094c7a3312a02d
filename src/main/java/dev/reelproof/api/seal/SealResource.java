package dev.reelproof.api.seal;

import dev.reelproof.api.Problem;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.seal.ReadLog;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.SignedHead;
import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The log that makes an edit show. */
@Path("/api/v1/log")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Log")
@Authenticated
public class SealResource {
    private final ReadLog log;

    SealResource(ReadLog log) {
        this.log = log;
    }

    /** The key that signs heads. */
    @Schema(name = "LogKey")
    record Key(
            @Schema(description = "Ed25519") String algorithm,
            @Schema(description = "the SHA-256 of the public key's encoding") String id,
            @Schema(description = "SubjectPublicKeyInfo in Base64") String publicKey) {}

    /** How a plant's log stood. */
    @Schema(name = "LogHead")
    record Head(String plant, long size, String root, String at, String key, String signature) {
        static Head of(SignedHead head) {
            return new Head(
                    head.head().plant(),
                    head.head().size(),
                    head.head().root().hex(),
                    head.head().at().toString(),
                    head.keyId(),
                    head.signature());
        }
    }

    /** The log of this installation. */
    @Schema(name = "Log")
    record Log(Key key, List<Head> heads) {}

    @GET
    @PermitAll
    @Operation(
            summary = "The public key of the log and the newest head of each plant; open to everybody",
            description = "Keep a head elsewhere, and the database can be held to it later.")
    public Log log() {
        return new Log(
                new Key("Ed25519", log.key().id(), log.key().base64()),
                log.newestHeads().stream().map(Head::of).toList());
    }

    @POST
    @Path("/heads")
    @Operation(
            summary = "Sign a plant's log as it stands now, and write the head outside the database",
            description = "For the roles quality-manager and administrator.")
    @APIResponse(
            responseCode = "201",
            description = "the head",
            content = @Content(schema = @Schema(implementation = Head.class)))
    @APIResponse(responseCode = "403", description = "the role may not")
    public Response sign(@QueryParam("plant") @Nullable String plant) {
        return Response.status(Response.Status.CREATED)
                .entity(Head.of(log.sign(plant)))
                .build();
    }

    @GET
    @Path("/proof")
    @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
    @Operation(
            summary = "The proof that something is in a plant's log",
            description =
                    "'kind' is upload, record, certificate, attachment, withdrawal, retest-acceptance, limits-found-wrong,"
                            + " concession, concession-decision, judged-again, hold, hold-release or audit-entry; 'id' of an upload, a"
                            + " record or what was judged again its id, of a certificate number, slash,"
                            + " issue, of an attachment its SHA-256, of a withdrawal the certificate's number, of limits found"
                            + " wrong set, slash, revision, of a hold's release hold, slash, ordinal from 0, of a decision the concession's, else its number."
                            + " Leaf, place, path and signed head, after RFC 9162, 2.1.3.")
    @APIResponse(
            responseCode = "200",
            description = "the proof",
            content = @Content(schema = @Schema(implementation = ProofAnswer.class)))
    @APIResponse(responseCode = "404", description = "nothing like that is in the log")
    public Response proof(
            @QueryParam("kind") @Nullable String kind,
            @QueryParam("id") @Nullable String id,
            @QueryParam("plant") @Nullable String plant) {
        LeafKind known = LeafKind.named(QueryParameters.text("kind", kind == null ? "" : kind))
                .orElseThrow(() -> QueryParameters.refused(
                        "kind",
                        "must be one of "
                                + Stream.of(LeafKind.values())
                                        .map(LeafKind::word)
                                        .collect(Collectors.joining(", "))));
        String named = QueryParameters.text("id", id == null ? "" : id);
        if (named.isBlank()) {
            throw QueryParameters.refused("id", "must name what is to be proven");
        }
        return Response.ok(log.proof(plant, known, named), MediaType.APPLICATION_JSON)
                .build();
    }
}
