package dev.reelproof.api.limits;

import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.limits.AskLimits;
import dev.reelproof.limit.LimitAt;
import dev.reelproof.quantity.FrequencyGrid;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Limit sets. */
@Path("/api/v1/limit-sets")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Limit sets")
@Authenticated
public class LimitSetResource {
    private final AskLimits askLimits;

    LimitSetResource(AskLimits askLimits) {
        this.askLimits = askLimits;
    }

    @GET
    @Operation(summary = "All limit sets, every revision")
    public LimitSetAnswer.Lines list() {
        return new LimitSetAnswer.Lines(
                askLimits.all().stream().map(LimitSetAnswer.Line::of).toList());
    }

    @GET
    @Path("/{id}")
    @Operation(
            summary = "A limit set with all that it demands",
            description = "Without revision: the one in force today.")
    public LimitSetAnswer get(String id, @QueryParam("revision") @Nullable String revision) {
        return LimitSetAnswer.of(askLimits.limitSet(id, whole("revision", revision)));
    }

    @GET
    @Path("/{id}/{property}")
    @Operation(
            summary = "The limit of a property or requirement, at a frequency where it has one",
            description =
                    "Where a property has several requirements: that on each value by itself first, in the set's order;"
                            + " 'requirements' names all. pairs chooses where the limit depends on the pair count.")
    @APIResponse(responseCode = "200", description = "the limit")
    @APIResponse(responseCode = "404", description = "no such set, or nothing on this property in it")
    @APIResponse(responseCode = "422", description = "the frequency is missing, malformed or outside the range")
    public LimitSetAnswer.At limit(
            String id,
            String property,
            @QueryParam("frequency") @Nullable String frequency,
            @QueryParam("unit") @DefaultValue("MHz") String unit,
            @QueryParam("pairs") @Nullable String pairs,
            @QueryParam("revision") @Nullable String revision) {
        LimitAt limit = askLimits.limit(
                id,
                property,
                Optional.ofNullable(frequency).map(text -> megahertz(text, unit)),
                whole("pairs", pairs),
                whole("revision", revision));
        return LimitSetAnswer.At.of(limit.requirement(), limit.megahertz(), limit.requirements());
    }

    private static Optional<Integer> whole(String name, @Nullable String asked) {
        return Optional.ofNullable(asked).map(text -> QueryParameters.whole(name, text));
    }

    private static double megahertz(String asked, String unit) {
        double number = QueryParameters.number("frequency", asked.strip());
        double megahertz;
        try {
            megahertz = FrequencyGrid.megahertz(number, unit);
        } catch (IllegalArgumentException e) {
            throw QueryParameters.refused("unit", e);
        }
        if (megahertz > 0 && Double.isFinite(megahertz)) {
            return megahertz;
        }
        throw QueryParameters.refused("frequency", "must be a positive number, not '" + asked + "'");
    }
}
