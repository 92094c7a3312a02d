package dev.reelproof.api.reel;

import dev.reelproof.access.Action;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.reel.ProductReader;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.measurement.Product;
import dev.reelproof.store.reel.Products;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Products. */
@Path("/api/v1/products")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Products and reels")
@Authenticated
public class ProductResource {
    private final Products products;
    private final Plants plants;
    private final LimitSets limitSets;

    ProductResource(Products products, Plants plants, LimitSets limitSets) {
        this.products = products;
        this.plants = plants;
        this.limitSets = limitSets;
    }

    /** A list of products. */
    @Schema(name = "Products")
    record Listed(List<ProductAnswer> products) {}

    @GET
    @Operation(summary = "All products of a plant, by code")
    public Listed list(@QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return new Listed(products.all(plant).stream()
                .map(product -> ProductAnswer.of(plant, product))
                .toList());
    }

    @GET
    @Path("/{product}")
    @Operation(summary = "A product as it is defined now")
    public ProductAnswer get(String product, @QueryParam("plant") String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return products.byId(plant, product)
                .map(found -> ProductAnswer.of(plant, found))
                .orElseThrow(() -> new NothingThereException(
                        "Product '" + product + "' is not registered at plant " + plant + "."));
    }

    @PUT
    @Path("/{product}")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Register a product, or change its definition",
            description = "Records keep the definition by which they were judged.")
    @RequestBody(
            required = true,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = Registrations.OfProduct.class)))
    @APIResponse(
            responseCode = "201",
            description = "registered",
            content = @Content(schema = @Schema(implementation = ProductAnswer.class)))
    @APIResponse(
            responseCode = "200",
            description = "registered before; now as sent",
            content = @Content(schema = @Schema(implementation = ProductAnswer.class)))
    @APIResponse(responseCode = "400", description = "no JSON")
    @APIResponse(responseCode = "422", description = "the definition cannot be so")
    public Response put(String product, @QueryParam("plant") String plantNamed, byte[] body) {
        String plant = plants.forAction(Action.DEFINE_PRODUCTS, plantNamed, "plant");
        Product read = ProductReader.read(product, body);
        requireLimitSet(read);
        boolean isNew = products.put(plant, read, Instant.now());
        return Response.status(isNew ? Response.Status.CREATED : Response.Status.OK)
                .entity(ProductAnswer.of(plant, read))
                .build();
    }

    private void requireLimitSet(Product product) {
        List<LimitSet> revisions = limitSets.all().stream()
                .filter(set -> set.id().equals(product.limitSet()))
                .toList();
        if (revisions.isEmpty()) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/limitSet",
                    "unknown limit set '" + product.limitSet() + "'; known: "
                            + String.join(
                                    ", ",
                                    limitSets.all().stream()
                                            .map(LimitSet::id)
                                            .distinct()
                                            .toList()));
        }
        if (revisions.stream().noneMatch(set -> set.pairs().holds(product.pairs()))) {
            PairCount pairs = revisions.get(revisions.size() - 1).pairs();
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/pairs",
                    "limit set " + product.limitSet() + " holds for " + pairs.from() + " to " + pairs.to()
                            + " pairs, not for " + product.pairs());
        }
    }
}
