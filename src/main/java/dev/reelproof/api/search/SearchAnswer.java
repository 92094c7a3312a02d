package dev.reelproof.api.search;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.certificate.CertificateAnswer;
import dev.reelproof.api.certificate.CollectiveAnswer;
import dev.reelproof.api.reel.ReelAnswer;
import dev.reelproof.app.search.Search;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What a search found, the best match first. */
@Schema(name = "SearchHits")
record SearchAnswer(
        @Schema(description = "what was looked for: the text without what a scanner puts around it") String query,
        List<Hit> hits) {

    /** One thing that was found. */
    @Schema(name = "SearchHit")
    record Hit(
            @Schema(description = "reel, order, certificate, customer or product") String kind,
            @Schema(description = "its number, or its name as registered") String name,
            @Schema(description = "exact, words, beginning, word-beginning, or belonging to something that matches")
                    String match,
            @Schema(
                            nullable = true,
                            description = "the order, customer or product that matches, where it does not itself")
                    @Nullable
                    String belongsTo,
            @Schema(description = "when a reel was registered, a certificate issued, or another first named")
                    OffsetDateTime at,
            @JsonInclude(JsonInclude.Include.NON_NULL) ReelAnswer.@Nullable Line reel,
            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable CertificateAnswer certificate,
            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable CollectiveAnswer collective) {}

    static SearchAnswer of(String query, List<Search.Hit> hits) {
        return new SearchAnswer(
                query,
                hits.stream()
                        .map(hit -> new Hit(
                                hit.kind().word(),
                                hit.name(),
                                hit.match().word(),
                                hit.belongsTo().orElse(null),
                                hit.at(),
                                hit.reel().map(ReelAnswer.Line::of).orElse(null),
                                hit.certificate().map(CertificateAnswer::of).orElse(null),
                                hit.collective().map(CollectiveAnswer::of).orElse(null)))
                        .toList());
    }
}
