package dev.reelproof.api;

import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@QuarkusTest
@ExtendWith(SignedIn.class)
class ServiceRoutesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** Every route of the service, as other programs rely on them. */
    private static final Set<String> ROUTES = Set.of(
            "get /api/v1/status",
            "post /api/v1/session",
            "get /api/v1/session",
            "delete /api/v1/session",
            "post /api/v1/session/password",
            "get /api/v1/session/identity-provider",
            "post /api/v1/set-up",
            "get /api/v1/accounts",
            "post /api/v1/accounts",
            "patch /api/v1/accounts/{name}",
            "get /api/v1/tokens",
            "post /api/v1/tokens",
            "delete /api/v1/tokens/{id}",
            "get /api/v1/schemas/{name}",
            "get /api/v1/products",
            "get /api/v1/products/{product}",
            "put /api/v1/products/{product}",
            "get /api/v1/reels",
            "get /api/v1/reels/{reel}",
            "put /api/v1/reels/{reel}",
            "post /api/v1/reels/{reel}/tests",
            "post /api/v1/reels/{reel}/certificates",
            "get /api/v1/records/{id}",
            "post /api/v1/records/{id}/acceptance",
            "get /api/v1/records/{id}/findings/{property}",
            "get /api/v1/records/{id}/alternatives",
            "get /api/v1/records/{id}/sweeps/{property}",
            "get /api/v1/records/{id}/original/{n}",
            "get /api/v1/limit-sets",
            "get /api/v1/limit-sets/{id}",
            "get /api/v1/limit-sets/{id}/{property}",
            "post /api/v1/limit-sets/{id}/revisions/{revision}/found-wrong",
            "post /api/v1/lots",
            "post /api/v1/lots/bulk",
            "get /api/v1/lots/waiting",
            "delete /api/v1/lots/waiting/{lot}",
            "get /api/v1/lots/implausible",
            "get /api/v1/lots/incomplete",
            "get /api/v1/lots/common-ancestors",
            "post /api/v1/lots/common-ancestors",
            "get /api/v1/runs/{run}",
            "get /api/v1/runs/{run}/reels",
            "get /api/v1/machines/{machine}/reels",
            "get /api/v1/reels/{reel}/positions",
            "get /api/v1/reels/{reel}/disposition",
            "post /api/v1/reels/{reel}/disposition",
            "get /api/v1/lots/{lot}",
            "get /api/v1/lots/{lot}/descendants",
            "get /api/v1/reels/{reel}/ancestors",
            "get /api/v1/certificates",
            "get /api/v1/certificates/{number}.pdf",
            "get /api/v1/certificates/{number}/verification",
            "post /api/v1/certificates/verification",
            "post /api/v1/certificates/{number}/reissues",
            "post /api/v1/certificates/{number}/withdrawals",
            "get /api/v1/search",
            "get /api/v1/orders/{order}",
            "post /api/v1/orders/{order}/certificates",
            "post /api/v1/orders/{order}/collective-certificate",
            "get /api/v1/orders/{order}/certificates.txt",
            "get /api/v1/orders/{order}/certificates.zip",
            "get /api/v1/certificate-batches/{id}",
            "get /api/v1/log",
            "post /api/v1/log/heads",
            "get /api/v1/log/proof",
            "get /api/v1/suspects",
            "get /api/v1/holds",
            "post /api/v1/holds",
            "get /api/v1/holds/{id}",
            "post /api/v1/holds/{id}/release",
            "post /api/v1/reels/{reel}/concessions",
            "get /api/v1/concessions",
            "get /api/v1/concessions/{id}",
            "post /api/v1/concessions/{id}/approval",
            "post /api/v1/concessions/{id}/refusal",
            "get /api/v1/audit",
            "get /api/v1/approvals",
            "post /api/v1/approvals",
            "post /api/v1/approvals/{id}/decision");

    private static JsonNode openApi() throws Exception {
        return JSON.readTree(
                given().queryParam("format", "json").get("/q/openapi").asString());
    }

    @Test
    void saysWhatItIs() {
        get("/api/v1/status")
                .then()
                .statusCode(200)
                .body("plant", equalTo("north"))
                .body("plants", contains("north"))
                .body("demo", equalTo(false))
                .body("version", equalTo("0.2.0"));
    }

    @Test
    void describesExactlyTheRoutesThatAreKnown() throws Exception {
        Set<String> described = new TreeSet<>();
        openApi().get("paths").properties().forEach(path -> path.getValue()
                .properties()
                .forEach(method -> {
                    described.add(method.getKey() + " " + path.getKey());
                    assertTrue(
                            method.getValue().path("summary").asText().length() > 5, path.getKey() + " has no summary");
                }));
        assertEquals(new TreeSet<>(ROUTES), described);
    }

    @Test
    void describesTheResultByItsPublishedSchema() throws Exception {
        JsonNode published = JSON.readTree(get("/api/v1/schemas/result").asByteArray());
        ObjectNode described = (ObjectNode) openApi().at("/components/schemas/Result");
        ObjectNode definitions = described.putObject("$defs");
        openApi().at("/components/schemas").properties().stream()
                .filter(schema -> schema.getKey().matches("Result.+"))
                .forEach(schema -> definitions.set(definition(schema.getKey()), schema.getValue()));
        described.findParents("$ref").forEach(reference -> ((ObjectNode) reference)
                .put(
                        "$ref",
                        "#/$defs/"
                                + definition(
                                        reference.get("$ref").asText().replaceFirst("^#/components/schemas/", ""))));
        assertEquals(((ObjectNode) published).without(List.of("$schema", "$id")), described);
        assertEquals(
                "#/components/schemas/Result",
                openApi()
                        .get("paths")
                        .get("/api/v1/reels/{reel}/tests")
                        .at("/post/requestBody/content")
                        .get("application/json")
                        .at("/schema/$ref")
                        .asText());
    }

    /** The definition in the published schema that a component of the description is: ResultNetworkPort is networkPort. */
    private static String definition(String component) {
        String name = component.substring("Result".length());
        return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
    }

    @Test
    void publishesTheSchemaOfLimitSets() {
        get("/api/v1/schemas/limit-set").then().statusCode(200).contentType("application/schema+json");
    }

    @Test
    void compressesItsAnswers() {
        given().header("Accept-Encoding", "gzip")
                .get("/api/v1/limit-sets/category-6a-cable")
                .then()
                .statusCode(200)
                .header("Content-Encoding", "gzip");
    }
}
