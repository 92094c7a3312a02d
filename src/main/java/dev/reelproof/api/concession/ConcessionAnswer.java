package dev.reelproof.api.concession;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.app.concession.FindConcessions.Standing;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.Terms;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A concession, as it is answered. */
@Schema(name = "Concession")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ConcessionAnswer(
        long id,
        String reel,
        @Schema(description = "the record that it concedes") UUID record,
        @Schema(enumeration = {"use-as-is", "regrade", "shorten"}) String kind,
        @Schema(description = "the requirements that the record does not pass, or passes only conditionally")
                List<String> requirements,
        @Schema(description = "of a regrade: what the reel becomes") @Nullable String product,
        @Schema(description = "of a shortening: the new length") @Nullable Quantity length,
        @Schema(description = "what the reel was registered as when it was asked for") String fromProduct,
        Quantity fromLength,
        String reason,
        String requestedBy,
        OffsetDateTime requested,
        @Schema(
                        enumeration = {"open", "approved", "refused", "lapsed"},
                        description = "lapsed when the reel was tested again before anybody decided")
                String state,
        @Nullable String decidedBy,
        @Nullable OffsetDateTime decided,
        @Nullable String decisionReason,
        @Schema(description = "of an approved regrade: the test, judged again") @Nullable UUID newRecord,
        @Schema(description = "what is conceded, in a word or two") String title,
        @Schema(description = "what the approval does, a sentence or two") String effect,
        @Schema(description = "of an approved one: what may be done with the reel now, a sentence") @Nullable
                String allows) {

    /** A list of concessions. */
    @Schema(name = "Concessions")
    record Listed(List<ConcessionAnswer> concessions) {}

    /** What is asked for, for the description of the API. */
    @Schema(name = "ConcessionRequest")
    record Request(
            @Schema(
                            required = true,
                            enumeration = {"use-as-is", "regrade", "shorten"})
                    String kind,
            @Schema(description = "of a regrade alone: what the reel is to become") @Nullable String product,
            @Schema(description = "of a shortening alone: the new length") @Nullable Quantity length,
            @Schema(required = true) String reason) {}

    /** Why it is decided so, for the description of the API. */
    @Schema(name = "ConcessionDecision")
    record Decision(@Schema(required = true) String reason) {}

    static ConcessionAnswer of(Standing standing, Wording wording) {
        Concession concession = standing.concession();
        Terms terms = concession.terms();
        Concession.Decision decision = concession.decision();
        return new ConcessionAnswer(
                concession.id(),
                concession.reel(),
                concession.record(),
                terms.kind().word(),
                concession.requirements(),
                terms instanceof Terms.Regrade regrade ? regrade.product() : null,
                terms instanceof Terms.Shorten shorten ? new Quantity(shorten.value(), shorten.unit()) : null,
                concession.before().product(),
                new Quantity(concession.before().length(), concession.before().unit()),
                concession.reason(),
                concession.requestedBy().name(),
                concession.requested(),
                standing.state().word(),
                decision == null ? null : decision.by().name(),
                decision == null ? null : decision.at(),
                decision == null ? null : decision.reason(),
                decision == null ? null : decision.newRecord(),
                wording.concession(terms),
                wording.concessionEffect(concession),
                standing.bearing()
                        .map(bearing -> wording.concessionAllows(concession, bearing))
                        .orElse(null));
    }
}
