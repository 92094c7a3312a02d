package dev.reelproof.api.result;

import dev.reelproof.api.Problem;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.result.AdviseOnFailure;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.Part;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Finding;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.StoredRecord;
import dev.reelproof.wording.Wording;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Records and what is behind their figures. */
@Path("/api/v1/records/{id}")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Results and records")
@Authenticated
public class RecordResource {
    private static final String NO_TYPE_OF_OURS = MediaType.APPLICATION_OCTET_STREAM;
    private static final List<String> SERVED_AS_SENT = List.of(MediaType.APPLICATION_JSON, "text/csv");

    private final Records archive;
    private final LimitSets limitSets;
    private final Plants plants;
    private final AdviseOnFailure adviceDesk;

    RecordResource(Records archive, LimitSets limitSets, Plants plants, AdviseOnFailure adviceDesk) {
        this.archive = archive;
        this.limitSets = limitSets;
        this.plants = plants;
        this.adviceDesk = adviceDesk;
    }

    @GET
    @Operation(summary = "A record")
    public RecordAnswer get(String id, @QueryParam("plant") String plantNamed) {
        StoredRecord record = record(id, plantNamed);
        return RecordAnswer.of(record, limitSets.of(record), Wording.english());
    }

    @GET
    @Path("/findings/{property}")
    @Operation(
            summary = "A finding with the chain behind its figure",
            description = "By property or by requirement; of several requirements of a property the worst finding.")
    public FindingAnswer finding(String id, String property, @QueryParam("plant") String plantNamed) {
        StoredRecord record = record(id, plantNamed);
        List<Finding> findings = record.judgement().findings();
        Finding found = findings.stream()
                .filter(finding -> finding.requirement().equals(property))
                .findFirst()
                .or(() -> findings.stream()
                        .filter(finding -> finding.property().id().equals(property))
                        .min(worstFirst()))
                .orElseThrow(() -> new NothingThereException("Record " + record.id() + " has no finding on '" + property
                        + "'; it has findings on "
                        + String.join(
                                ", ",
                                findings.stream().map(Finding::requirement).toList())
                        + "."));
        List<String> requirements = findings.stream()
                .filter(finding -> finding.property() == found.property())
                .map(Finding::requirement)
                .toList();
        return FindingAnswer.explained(found, limitSets.of(record), record.product(), Wording.english(), requirements);
    }

    @GET
    @Path("/alternatives")
    @Operation(
            summary = "What else a reel could be: cut shorter, or graded by another limit set of its construction",
            description =
                    "Advice for whoever has the authority; nothing is decided or changed by it. cutTo: the greatest"
                            + " length at which all that fails would pass; null where cutting does not mend it. passes: the other limit"
                            + " sets that accept the result as measured. blockedBy: the properties that fail.")
    @APIResponse(responseCode = "200", description = "the advice")
    @APIResponse(responseCode = "404", description = "no such record")
    public AlternativesAnswer alternatives(String id, @QueryParam("plant") String plantNamed) {
        StoredRecord record = record(id, plantNamed);
        return AlternativesAnswer.of(record, adviceDesk.alternatives(record), Wording.english());
    }

    /** Fail, conditionally or not, then not tested, then conditional pass, then the least margin. */
    private static Comparator<Finding> worstFirst() {
        return Comparator.<Finding>comparingInt(finding -> switch (finding.outcome()) {
                    case FAIL -> 0;
                    case CONDITIONAL_FAIL -> 1;
                    case NOT_TESTED -> 2;
                    case CONDITIONAL_PASS -> 3;
                    case PASS -> 4;
                })
                .thenComparingDouble(finding -> finding.figure() == null
                        ? Double.POSITIVE_INFINITY
                        : finding.figure().margin());
    }

    @GET
    @Path("/sweeps/{property}")
    @Operation(
            summary = "The sweeps of a property, as measured and corrected, with their limit",
            description =
                    "With pair, partner or end: the first such sweep alone, with the limit at each frequency. 'limit' is the"
                            + " one to draw where only one can be; 'limits' has every requirement that binds the property.")
    @APIResponse(
            responseCode = "200",
            description = "the sweeps, or one sweep",
            content = @Content(schema = @Schema(oneOf = {SweepsAnswer.class, SweepsAnswer.One.class})))
    @APIResponse(responseCode = "404", description = "no such record, or no such sweep of it")
    public Object sweeps(
            String id,
            String property,
            @QueryParam("pair") String pair,
            @QueryParam("partner") String partner,
            @QueryParam("end") String end,
            @QueryParam("plant") String plantNamed) {
        StoredRecord record = record(id, plantNamed);
        Property meant = property(property);
        Integer pairNumber = number("pair", pair);
        Integer partnerNumber = number("partner", partner);
        List<CorrectedSweep> sweeps = archive.sweeps(record.plant(), record.id()).stream()
                .filter(sweep -> sweep.property() == meant)
                .filter(sweep ->
                        pairNumber == null || Objects.equals(sweep.subject().pair(), pairNumber))
                .filter(sweep ->
                        partnerNumber == null || Objects.equals(sweep.subject().partner(), partnerNumber))
                .filter(sweep -> end == null
                        || sweep.subject().end() != null
                                && sweep.subject().end().word().equals(end))
                .toList();
        if (sweeps.isEmpty()) {
            throw new NothingThereException("Record " + record.id() + " has no such sweep of " + property + ".");
        }
        List<Requirement> requirements = alongFrequency(limitSets.of(record), record, meant);
        Optional<Requirement> requirement =
                requirements.stream().min(Comparator.comparing(each -> !(each.domain() instanceof Domain.Range)));
        boolean one = pair != null || partner != null || end != null;
        return one
                ? SweepsAnswer.One.of(sweeps.get(0), requirement, requirements, Wording.english())
                : SweepsAnswer.of(meant, sweeps, requirement, requirements, Wording.english());
    }

    private static Property property(String name) {
        try {
            return Property.named(name);
        } catch (IllegalArgumentException e) {
            throw new NothingThereException(e.getMessage());
        }
    }

    private static Integer number(String name, String text) {
        try {
            return text == null ? null : Integer.valueOf(text.trim());
        } catch (NumberFormatException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, name, "must be a whole number, not '" + text + "'");
        }
    }

    /** The requirements that bind a property along frequency, in the set's order. */
    private static List<Requirement> alongFrequency(LimitSet limitSet, StoredRecord record, Property property) {
        return limitSet.requirements().stream()
                .filter(requirement -> requirement.property() == property)
                .filter(requirement -> !(requirement.domain() instanceof Domain.NoFrequency))
                .filter(requirement -> record.judgement().findings().stream()
                        .anyMatch(finding -> finding.requirement().equals(requirement.id())))
                .filter(requirement -> requirement.pairs().isEmpty()
                        || requirement.pairs().get().holds(record.product().pairs()))
                .toList();
    }

    @GET
    @Path("/original/{n}")
    @Produces({NO_TYPE_OF_OURS, Problem.MEDIA_TYPE})
    @Operation(
            summary =
                    "A part of the upload as received; parts are counted from 0 in the order of the record's 'original'")
    @APIResponse(responseCode = "200", description = "its bytes", content = @Content(mediaType = NO_TYPE_OF_OURS))
    @APIResponse(responseCode = "404", description = "no such part")
    public Response original(String id, String n, @QueryParam("plant") String plantNamed) {
        StoredRecord record = record(id, plantNamed);
        Part part = Optional.ofNullable(number("n", n))
                .flatMap(ordinal -> archive.original(record.plant(), record.id(), ordinal))
                .orElseThrow(() -> new NothingThereException("Record " + record.id() + " has no original " + n
                        + "; it has " + record.originals().size() + ", counted from 0."));
        // What was uploaded is offered for saving and never shown as a page of ours.
        return Response.ok(part.bytes(), SERVED_AS_SENT.contains(part.mediaType()) ? part.mediaType() : NO_TYPE_OF_OURS)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        "attachment; filename=\"" + part.name().replaceAll("[^A-Za-z0-9._-]", "_") + "\"")
                .build();
    }

    private StoredRecord record(String id, String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        Optional<UUID> uuid;
        try {
            uuid = Optional.of(UUID.fromString(id));
        } catch (IllegalArgumentException e) {
            uuid = Optional.empty();
        }
        return uuid.flatMap(known -> archive.byId(plant, known))
                .orElseThrow(() -> new NothingThereException("Plant " + plant + " has no record '" + id + "'."));
    }
}
