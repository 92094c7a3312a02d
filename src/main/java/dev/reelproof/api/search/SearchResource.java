package dev.reelproof.api.search;

import dev.reelproof.api.QueryParameters;
import dev.reelproof.app.search.Search;
import dev.reelproof.record.ScannedCode;
import dev.reelproof.search.Question;
import dev.reelproof.search.Searched;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** One search over all that has a name. */
@Path("/api/v1/search")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Search")
@Authenticated
public class SearchResource {
    private static final int MOST = 50;

    private final Search search;

    SearchResource(Search search) {
        this.search = search;
    }

    @GET
    @Operation(
            summary = "Find reels, orders, certificates, customers and products by one text, the best match first",
            description =
                    "What a scanner puts around a number, spaces, dashes, case and accents do not matter. What is exactly so"
                            + " comes first, then what has it as whole words, what begins so, what has a word that begins so, and what belongs to an order, customer or product"
                            + " that matches; of very many that begin so, those of the highest numbers. 'from' and 'to' are days or times of"
                            + " a reel's registration and a certificate's issue, 'to' as a day included; without 'q' the newest are found."
                            + " 'kind' is one or more of reel, order, certificate, customer, product, with commas; all when absent.")
    public SearchAnswer find(
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("kind") @DefaultValue("") String kind,
            @QueryParam("from") @Nullable String from,
            @QueryParam("to") @Nullable String to,
            @QueryParam("limit") @DefaultValue("20") String limit,
            @QueryParam("plant") @Nullable String plantNamed) {
        String text = QueryParameters.text("q", ScannedCode.of(q));
        return SearchAnswer.of(
                text,
                search.find(
                        plantNamed,
                        new Search.Wanted(
                                Question.of(text),
                                kinds(kind),
                                QueryParameters.timeOrDay("from", from, LocalTime.MIN),
                                QueryParameters.before("to", to),
                                QueryParameters.limit(limit, MOST))));
    }

    private static Set<Searched> kinds(String asked) {
        Set<Searched> kinds = EnumSet.noneOf(Searched.class);
        for (String word : asked.isBlank() ? List.<String>of() : List.of(asked.split(",", -1))) {
            kinds.add(Searched.named(word.strip())
                    .orElseThrow(() -> QueryParameters.refused(
                            "kind", "'" + word + "' is none of " + String.join(", ", Searched.words()))));
        }
        return kinds.isEmpty() ? EnumSet.allOf(Searched.class) : kinds;
    }
}
