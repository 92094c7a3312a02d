package dev.reelproof.api.lot;

import dev.reelproof.api.Quantity;
import dev.reelproof.app.lot.FindCommonAncestors;
import dev.reelproof.genealogy.CommonAncestor;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.SentObject;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What several reels were all made from. */
@Path("/api/v1/lots/common-ancestors")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Lots")
@Authenticated
public class CommonAncestorsResource {
    private static final int LONGEST_NAME = 200;

    private final FindCommonAncestors ancestors;

    CommonAncestorsResource(FindCommonAncestors ancestors) {
        this.ancestors = ancestors;
    }

    /** The question, for the description of the API. */
    @Schema(name = "CommonAncestorsQuestion")
    record Question(@Schema(required = true) List<String> reels, @Nullable String plant) {}

    /**
     * The ancestors that at least two of the reels share, those shared by most first.
     *
     * @param reels how many reels were asked for, each once
     * @param unknown those of them that are not registered
     */
    record CommonAnswer(int reels, List<String> unknown, List<Ancestor> lots) {

        /** An ancestor, and how many of the reels descend from it; {@code byAll} when all that are registered do. */
        record Ancestor(
                String id,
                String kind,
                Quantity quantity,
                OffsetDateTime made,
                @Nullable String step,
                @Nullable String machine,
                @Nullable String run,
                int reels,
                boolean byAll) {}
    }

    @GET
    @Operation(summary = "The lots from which several reels descend, those shared by most first; reels=a,b,c")
    public CommonAnswer common(
            @QueryParam("reels") @Nullable String reels, @QueryParam("plant") @Nullable String plantNamed) {
        return answer(reels == null ? List.of() : Arrays.asList(reels.split(",")), "reels", plantNamed);
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "The same, for more reels than an address can hold")
    @RequestBody(
            required = true,
            content =
                    @Content(mediaType = MediaType.APPLICATION_JSON, schema = @Schema(implementation = Question.class)))
    public CommonAnswer common(byte[] body) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read("question", body, faults).allow("reels", "plant");
        List<String> reels = sent.texts("reels", LONGEST_NAME);
        String plant = sent.text("plant", LONGEST_NAME).orElse(null);
        faults.refuseIfAny();
        return answer(reels, "/reels", plant);
    }

    private CommonAnswer answer(List<String> names, String where, @Nullable String plantNamed) {
        FindCommonAncestors.Found found = ancestors.find(names, where, plantNamed);
        return new CommonAnswer(
                found.asked(),
                found.unknown().stream().map(LotId::value).toList(),
                found.ancestors().stream()
                        .map(one -> ancestor(one, found.known()))
                        .toList());
    }

    private static CommonAnswer.Ancestor ancestor(CommonAncestor common, int known) {
        Pedigree.Member lot = common.lot();
        return new CommonAnswer.Ancestor(
                lot.id().value(),
                lot.kind().word(),
                LotAnswer.asSent(lot.quantity()),
                lot.made(),
                lot.step(),
                lot.machine(),
                lot.run() == null ? null : lot.run().value(),
                common.reels(),
                common.reels() == known);
    }
}
