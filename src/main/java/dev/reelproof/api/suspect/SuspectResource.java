package dev.reelproof.api.suspect;

import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.IncomparableMarginsException;
import dev.reelproof.analysis.ReelSelection;
import dev.reelproof.analysis.StrataBy;
import dev.reelproof.analysis.SuspectQuestion;
import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.Plants;
import dev.reelproof.app.suspect.RankSuspects;
import dev.reelproof.measurement.Property;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What the reels that fail have in common. */
@Path("/api/v1/suspects")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Analysis")
@Authenticated
public class SuspectResource {
    private static final int MOST_SUSPECTS = 1_000;
    private static final String EVIDENCE_WORDS =
            Stream.of(Evidence.values()).map(Evidence::word).collect(Collectors.joining(" or "));

    private static final String STRATA_WORDS =
            Stream.of(StrataBy.values()).map(StrataBy::word).collect(Collectors.joining(" or "));

    private final RankSuspects ranking;
    private final Plants plants;

    SuspectResource(RankSuspects ranking, Plants plants) {
        this.ranking = ranking;
        this.plants = plants;
    }

    @GET
    @Operation(
            summary = "What reels that fail a property have in common, upstream or in the test, best evidence first",
            description =
                    """
                    Every lot, machine, die, operator, shift and so on that reels tested from…to met, weighed by how much more often \
                    the reels that met it fail, or by how much lower their margins are; and so is the test itself: bay, instrument, \
                    technician, day. Reels are compared within the week of their test unless strata is none. Of each reel the newest record within the \
                    time counts, and each reel counts once, however many ways lead to a lot. An association, not proof of a cause.""")
    @APIResponse(responseCode = "200", description = "the ranking")
    @APIResponse(
            responseCode = "422",
            description = "an unknown property, a time that ends before it begins, too many reels")
    public SuspectAnswer suspects(
            @QueryParam("property") @Parameter(required = true, description = "such as return-loss") @Nullable
                    String property,
            @QueryParam("from")
                    @Parameter(description = "earliest end of the test: a time with its offset, or a day in UTC")
                    @Nullable
                    String from,
            @QueryParam("to")
                    @Parameter(description = "latest end of the test, itself included; a day to its end")
                    @Nullable
                    String to,
            @QueryParam("product") @Nullable String product,
            @QueryParam("evidence")
                    @DefaultValue("failures")
                    @Parameter(description = "failures, or margins for a drift of one product")
                    String evidence,
            @QueryParam("strata")
                    @DefaultValue("week")
                    @Parameter(
                            description =
                                    "week compares each reel with those tested in the same week; none with all, so that what was in use"
                                            + " while failures clustered looks guilty")
                    String strata,
            @QueryParam("level") @DefaultValue("0.05") String level,
            @QueryParam("minimumExposed") @DefaultValue("3") String minimumExposed,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") @Nullable String plantNamed) {
        ReelSelection reels = selection(
                plants.named(plantNamed, "plant"),
                property(property),
                QueryParameters.timeOrDay("from", from, LocalTime.MIN),
                QueryParameters.timeOrDay("to", to, LocalTime.MAX),
                QueryParameters.textIfGiven("product", product));
        SuspectQuestion question = question(evidence, level, minimumExposed, strata);
        int most = QueryParameters.limit(limit, MOST_SUSPECTS);
        try {
            return SuspectAnswer.of(ranking.rank(reels, question, most));
        } catch (IncomparableMarginsException e) {
            throw QueryParameters.refused(
                    switch (e.differ()) {
                        case IN_PRODUCT -> "product";
                        case IN_UNIT -> "property";
                    },
                    e);
        }
    }

    private static ReelSelection selection(
            String plant,
            Property property,
            @Nullable OffsetDateTime from,
            @Nullable OffsetDateTime to,
            @Nullable String product) {
        return checked("from", () -> new ReelSelection(plant, property, from, to, product));
    }

    private static Property property(@Nullable String name) {
        if (name == null || name.isBlank()) {
            throw QueryParameters.refused("property", "name the property that fails, such as property=return-loss");
        }
        return checked("property", () -> Property.named(name));
    }

    private static SuspectQuestion question(String evidence, String level, String minimumExposed, String strata) {
        SuspectQuestion usual = Evidence.named(evidence)
                .map(SuspectQuestion::of)
                .orElseThrow(() ->
                        QueryParameters.refused("evidence", "must be " + EVIDENCE_WORDS + ", not '" + evidence + "'"));
        StrataBy strataBy = StrataBy.named(strata)
                .orElseThrow(
                        () -> QueryParameters.refused("strata", "must be " + STRATA_WORDS + ", not '" + strata + "'"));
        double asked = QueryParameters.number("level", level);
        SuspectQuestion atLevel = checked("level", () -> usual.withLevel(asked));
        int minimum = QueryParameters.whole("minimumExposed", minimumExposed);
        return checked("minimumExposed", () -> atLevel.withMinimumExposed(minimum))
                .withStrata(strataBy);
    }

    /** A value of the core; what it refuses is a fault of the parameter. */
    private static <T> T checked(String where, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            throw QueryParameters.refused(where, e);
        }
    }
}
