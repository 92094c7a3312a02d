package dev.reelproof.api.reel;

import dev.reelproof.app.reel.DefineProduct;
import dev.reelproof.app.reel.DefineProduct.Defined;
import dev.reelproof.app.reel.FindProducts;
import dev.reelproof.intake.reel.ProductReader;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Products. */
@Path("/api/v1/products")
@Produces(MediaType.APPLICATION_JSON)
@Tag(name = "Products and reels")
@Authenticated
public class ProductResource {
    private final FindProducts findProducts;
    private final DefineProduct defineProduct;

    ProductResource(FindProducts findProducts, DefineProduct defineProduct) {
        this.findProducts = findProducts;
        this.defineProduct = defineProduct;
    }

    /** A list of products. */
    @Schema(name = "Products")
    record Listed(List<ProductAnswer> products) {}

    @GET
    @Operation(summary = "All products of a plant, by code")
    public Listed list(@QueryParam("plant") @Nullable String plantNamed) {
        return new Listed(
                findProducts.all(plantNamed).stream().map(ProductAnswer::of).toList());
    }

    @GET
    @Path("/{product}")
    @Operation(summary = "A product as it is defined now")
    public ProductAnswer get(String product, @QueryParam("plant") @Nullable String plantNamed) {
        return ProductAnswer.of(findProducts.byCode(plantNamed, product));
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
    public Response put(String product, @QueryParam("plant") @Nullable String plantNamed, byte[] body) {
        Defined defined = defineProduct.define(plantNamed, () -> ProductReader.read(product, body));
        return Response.status(defined.isNew() ? Response.Status.CREATED : Response.Status.OK)
                .entity(ProductAnswer.of(defined.product()))
                .build();
    }
}
