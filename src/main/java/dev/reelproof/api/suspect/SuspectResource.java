package dev.reelproof.api.suspect;

import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.SuspectQuestion;
import dev.reelproof.analysis.SuspectRanking;
import dev.reelproof.api.Listing;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.suspect.PopulationQuery;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What the reels that fail have in common. */
@Path("/api/v1/suspects")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Analysis")
@Authenticated
public class SuspectResource {
    private static final int MOST_SUSPECTS = 1_000;
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 9999;

    private final PopulationQuery populations;
    private final Plants plants;

    SuspectResource(PopulationQuery populations, Plants plants) {
        this.populations = populations;
        this.plants = plants;
    }

    @GET
    @Operation(
            summary = "What reels that fail a property have in common upstream, best evidence first",
            description =
                    """
                    Every lot, machine, die, operator, shift and so on that reels tested from…to met, weighed by how much more often \
                    the reels that met it fail, or by how much lower their margins are. Of each reel the newest record within the \
                    time counts, and each reel counts once, however many ways lead to a lot. An association, not proof of a cause.""")
    @APIResponse(responseCode = "200", description = "the ranking")
    @APIResponse(
            responseCode = "422",
            description = "an unknown property, a time that ends before it begins, too many reels")
    public SuspectAnswer suspects(
            @QueryParam("property") @Parameter(required = true, description = "such as return-loss") String property,
            @QueryParam("from")
                    @Parameter(description = "earliest end of the test: a time with its offset, or a day in UTC")
                    String from,
            @QueryParam("to") @Parameter(description = "latest end of the test, itself included; a day to its end")
                    String to,
            @QueryParam("product") String product,
            @QueryParam("evidence")
                    @DefaultValue("failures")
                    @Parameter(description = "failures, or margins for a drift of one product")
                    String evidence,
            @QueryParam("level") @DefaultValue("0.05") String level,
            @QueryParam("minimumExposed") @DefaultValue("3") String minimumExposed,
            @QueryParam("limit") @DefaultValue("50") String limit,
            @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        PopulationQuery.Selection selection = new PopulationQuery.Selection(
                plant,
                property(property),
                time("from", from, LocalTime.MIN),
                time("to", to, LocalTime.MAX),
                product(product));
        if (selection.from() != null
                && selection.to() != null
                && selection.from().isAfter(selection.to())) {
            throw refused(
                    "from", "the time begins at " + from + ", after its end at " + to + "; exchange 'from' and 'to'");
        }
        SuspectQuestion question = question(evidence, level, minimumExposed);
        int most = whole("limit", limit);
        if (!(most >= 1 && most <= MOST_SUSPECTS)) {
            throw refused("limit", "must be from 1 to " + MOST_SUSPECTS + ", not " + limit);
        }
        PopulationQuery.Found found = find(selection, question);
        return SuspectAnswer.of(selection, found, SuspectRanking.of(found.population(), question, most));
    }

    private PopulationQuery.Found find(PopulationQuery.Selection selection, SuspectQuestion question) {
        boolean needsMargins = question.evidence() == Evidence.MARGINS;
        try {
            PopulationQuery.Found found = populations.find(selection, needsMargins);
            if (needsMargins && found.products().size() > 1) {
                throw refused(
                        "product",
                        "margins of different products are against different limits; name one of "
                                + String.join(", ", found.products()));
            }
            if (needsMargins && found.units().size() > 1) {
                throw refused(
                        "property",
                        "its margins are in different units (" + String.join(", ", found.units())
                                + ") and cannot be ranked together; ask for failures, or for a time under one limit set");
            }
            return found;
        } catch (SearchTooLargeException e) {
            throw refused("query", e.getMessage());
        }
    }

    private static Property property(String name) {
        if (name == null || name.isBlank()) {
            throw refused("property", "name the property that fails, such as property=return-loss");
        }
        try {
            return Property.named(name);
        } catch (IllegalArgumentException e) {
            throw refused("property", e.getMessage());
        }
    }

    private static String product(String name) {
        if (name != null && name.codePoints().anyMatch(Character::isISOControl)) {
            throw refused("product", "holds a control character");
        }
        return name;
    }

    /** A time with its offset, or a day, of which the time is meant in UTC. */
    private static OffsetDateTime time(String where, String text, LocalTime ofDay) {
        if (text == null) {
            return null;
        }
        OffsetDateTime time;
        try {
            time = LocalDate.parse(text).atTime(ofDay).atOffset(ZoneOffset.UTC);
        } catch (DateTimeParseException e) {
            time = Listing.time(where, text);
        }
        if (!(time.getYear() >= FIRST_YEAR && time.getYear() <= LAST_YEAR)) {
            throw refused(where, "must be in a year from " + FIRST_YEAR + " to " + LAST_YEAR + ", not " + text);
        }
        return time;
    }

    private static SuspectQuestion question(String evidence, String level, String minimumExposed) {
        Evidence kind = Evidence.named(evidence)
                .orElseThrow(() -> refused("evidence", "must be failures or margins, not '" + evidence + "'"));
        double rate = number("level", level);
        if (!(rate > 0 && rate <= SuspectQuestion.HIGHEST_LEVEL)) {
            throw refused(
                    "level", "must be more than 0 and at most " + SuspectQuestion.HIGHEST_LEVEL + ", not " + level);
        }
        int minimum = whole("minimumExposed", minimumExposed);
        if (!(minimum >= 1)) {
            throw refused("minimumExposed", "must be a whole number of reels from 1, not " + minimumExposed);
        }
        return new SuspectQuestion(kind, rate, minimum);
    }

    private static double number(String where, String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw refused(where, "must be a number, not '" + text + "'");
        }
    }

    private static int whole(String where, String text) {
        try {
            return Integer.parseInt(text.strip());
        } catch (NumberFormatException e) {
            throw refused(where, "must be a whole number, not '" + text + "'");
        }
    }

    private static IntakeException refused(String where, String message) {
        return IntakeException.of(IntakeException.Kind.CONTENT, where, message);
    }
}
