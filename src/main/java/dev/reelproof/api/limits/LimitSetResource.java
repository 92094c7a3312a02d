package dev.reelproof.api.limits;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.quantity.FrequencyGrid;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Limit sets. */
@Path("/api/v1/limit-sets")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Limit sets")
@Authenticated
public class LimitSetResource {
    private final LimitSets limitSets;

    LimitSetResource(LimitSets limitSets) {
        this.limitSets = limitSets;
    }

    @GET
    @Operation(summary = "All limit sets, every revision")
    public LimitSetAnswer.Lines list() {
        return new LimitSetAnswer.Lines(
                limitSets.all().stream().map(LimitSetAnswer.Line::of).toList());
    }

    @GET
    @Path("/{id}")
    @Operation(
            summary = "A limit set with all that it demands",
            description = "Without revision: the one in force today.")
    public LimitSetAnswer get(String id, @QueryParam("revision") String revision) {
        return LimitSetAnswer.of(limitSet(id, revision));
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
            @QueryParam("frequency") String frequency,
            @QueryParam("unit") @DefaultValue("MHz") String unit,
            @QueryParam("pairs") String pairs,
            @QueryParam("revision") String revision) {
        LimitSet limitSet = limitSet(id, revision);
        Optional<Integer> pairCount = Optional.ofNullable(pairs).map(text -> whole("pairs", text));
        List<Requirement> meant = limitSet.requirements().stream()
                .filter(requirement -> requirement.id().equals(property)
                        || requirement.property().id().equals(property))
                .filter(requirement -> pairCount.isEmpty()
                        || requirement.pairs().isEmpty()
                        || requirement.pairs().get().holds(pairCount.get()))
                .sorted(Comparator.comparing(
                                (Requirement requirement) -> !requirement.id().equals(property))
                        .thenComparing(requirement -> requirement.statistic() != Statistic.INDIVIDUAL))
                .toList();
        if (meant.isEmpty()) {
            throw new NothingThereException("Limit set " + id + " has no requirement on '" + property + "'"
                    + pairCount.map(count -> " for " + count + " pairs").orElse("") + ".");
        }
        Optional<Double> asked = Optional.ofNullable(frequency).map(text -> megahertz(text, unit));
        Requirement chosen = meant.stream()
                .filter(requirement -> holds(requirement.domain(), asked))
                .findFirst()
                .orElseThrow(() -> outside(meant.get(0), asked));
        return LimitSetAnswer.At.of(
                chosen,
                at(chosen.domain(), asked),
                meant.stream().map(Requirement::id).distinct().toList());
    }

    private LimitSet limitSet(String id, String revision) {
        return (revision == null
                        ? limitSets.current(id, LocalDate.now(ZoneOffset.UTC))
                        : limitSets.revision(id, whole("revision", revision)))
                .orElseThrow(() -> new NothingThereException(
                        "There is no limit set '" + id + "'" + (revision == null ? "" : " of revision " + revision)
                                + "; GET /api/v1/limit-sets lists them."));
    }

    private static boolean holds(Domain domain, Optional<Double> megahertz) {
        if (domain instanceof Domain.Range range) {
            return megahertz.isPresent() && megahertz.get() >= range.from() && megahertz.get() <= range.to();
        }
        return !(domain instanceof Domain.Spot spot) || megahertz.isEmpty() || megahertz.get() == spot.megahertz();
    }

    private static Optional<Double> at(Domain domain, Optional<Double> megahertz) {
        if (domain instanceof Domain.Spot spot) {
            return Optional.of(spot.megahertz());
        }
        return domain instanceof Domain.Range ? megahertz : Optional.empty();
    }

    private static IntakeException outside(Requirement requirement, Optional<Double> asked) {
        String range = requirement.domain() instanceof Domain.Range domain
                ? "from " + domain.from() + " to " + domain.to() + " MHz"
                : "at " + ((Domain.Spot) requirement.domain()).megahertz() + " MHz";
        return IntakeException.of(
                IntakeException.Kind.CONTENT,
                "frequency",
                requirement.id() + " is limited " + range
                        + asked.map(f -> ", not at " + f + " MHz").orElse("; give a frequency"));
    }

    private static double megahertz(String text, String unit) {
        try {
            double megahertz = FrequencyGrid.megahertz(Double.parseDouble(text.trim()), unit);
            if (megahertz > 0 && Double.isFinite(megahertz)) {
                return megahertz;
            }
        } catch (NumberFormatException e) {
            // Said below, as for a number that is none of a frequency.
        } catch (IllegalArgumentException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "unit", e.getMessage());
        }
        throw IntakeException.of(
                IntakeException.Kind.CONTENT, "frequency", "must be a positive number, not '" + text + "'");
    }

    private static int whole(String name, String text) {
        try {
            return Integer.parseInt(text.trim());
        } catch (NumberFormatException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, name, "must be a whole number, not '" + text + "'");
        }
    }
}
