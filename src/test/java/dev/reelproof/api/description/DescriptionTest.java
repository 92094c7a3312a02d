package dev.reelproof.api.description;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.api.Problem;
import dev.reelproof.api.access.SessionCookie;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.Executable;

/** The description of the API says all that a stranger's tools need: a new route cannot leave it out. */
@QuarkusTest
class DescriptionTest {
    private static final List<String> METHODS = List.of("get", "put", "post", "patch", "delete");

    private JsonNode description;

    private record Operation(String method, String path, JsonNode says) {
        String name() {
            return method + " " + path;
        }
    }

    @BeforeEach
    void read() throws Exception {
        description = new ObjectMapper()
                .readTree(given().queryParam("format", "json").get("/q/openapi").asString());
    }

    private List<Operation> operations() {
        List<Operation> operations = new ArrayList<>();
        description.get("paths").properties().forEach(path -> METHODS.stream()
                .filter(method -> path.getValue().has(method))
                .forEach(method -> operations.add(
                        new Operation(method, path.getKey(), path.getValue().get(method)))));
        return operations;
    }

    @TestFactory
    Stream<DynamicTest> saysOfEveryOperation() {
        return operations().stream()
                .map(operation -> DynamicTest.dynamicTest(
                        operation.name(),
                        () -> assertAll(
                                () -> assertTrue(operation
                                        .says()
                                        .path("operationId")
                                        .asText()
                                        .matches("[a-z][A-Za-z]+")),
                                () -> assertFalse(
                                        operation
                                                .says()
                                                .path("summary")
                                                .asText()
                                                .isBlank(),
                                        "summary"),
                                () -> assertEquals(
                                        1, operation.says().path("tags").size(), "one tag"),
                                () -> assertAll(successes(operation)),
                                () -> assertAll(refusals(operation)),
                                () -> assertAll(bodies(operation)))));
    }

    private Stream<Executable> successes(Operation operation) {
        JsonNode responses = operation.says().get("responses");
        List<String> statuses = new ArrayList<>();
        responses.fieldNames().forEachRemaining(status -> {
            if (status.matches("[23]..")) {
                statuses.add(status);
            }
        });
        assertFalse(statuses.isEmpty(), "no success");
        return statuses.stream().map(status -> () -> {
            JsonNode content = responses.get(status).path("content");
            if (status.equals("204") || status.startsWith("3")) {
                assertTrue(content.isMissingNode(), status + " has no body");
            } else {
                assertTrue(isTyped(content), status + " is not typed: " + responses.get(status));
            }
        });
    }

    private Stream<Executable> refusals(Operation operation) {
        JsonNode responses = operation.says().get("responses");
        List<String> expected = new ArrayList<>(List.of("400", "500"));
        if (operation.says().path("security").size() > 0) {
            expected.addAll(List.of("401", "403"));
        }
        if (operation.path().contains("{")) {
            expected.add("404");
        }
        if (operation.says().has("requestBody")) {
            expected.addAll(List.of("413", "415", "422"));
        }
        responses.fieldNames().forEachRemaining(status -> {
            if (status.matches("[45]..")) {
                expected.add(status);
            }
        });
        return expected.stream()
                .map(status -> () -> assertEquals(
                        "#/components/schemas/Problem",
                        responses
                                .path(status)
                                .path("content")
                                .path(Problem.MEDIA_TYPE)
                                .path("schema")
                                .path("$ref")
                                .asText(),
                        status));
    }

    private Stream<Executable> bodies(Operation operation) {
        JsonNode body = operation.says().path("requestBody");
        return body.isMissingNode()
                ? Stream.empty()
                : Stream.of(() -> assertTrue(isTyped(body.path("content")), "the body is not typed: " + body));
    }

    /** Whether each media type has a schema that says more than that it is something. */
    private static boolean isTyped(JsonNode content) {
        if (content.isEmpty()) {
            return false;
        }
        return content.properties().stream().allMatch(mediaType -> {
            JsonNode schema = mediaType.getValue().path("schema");
            boolean isBytesOrText = !mediaType.getKey().equals("application/json")
                    && schema.path("type").asText().equals("string");
            boolean isParts = mediaType.getKey().equals("multipart/form-data")
                    && schema.path("additionalProperties")
                            .path("format")
                            .asText()
                            .equals("binary");
            return isBytesOrText || isParts || schema.has("$ref") || schema.has("oneOf");
        });
    }

    @Test
    void namesEachOperationOnce() {
        List<String> names = operations().stream()
                .map(operation -> operation.says().path("operationId").asText())
                .toList();
        assertEquals(List.copyOf(names), names.stream().distinct().toList());
        assertFalse(names.isEmpty());
    }

    @Test
    void givesNoSchemaANumberInsteadOfAName() {
        description
                .at("/components/schemas")
                .fieldNames()
                .forEachRemaining(name -> assertFalse(
                        name.matches(".*\\d"), name + ": two schemas have one name; give one @Schema(name = …)"));
    }

    /** A component of a Java class's name, such as OffsetDateTime, would become a class of that name in a client. */
    @Test
    void writesPlainValuesWhereTheyStand() {
        description
                .at("/components/schemas")
                .properties()
                .forEach(schema -> assertFalse(
                        schema.getValue().has("format") && !schema.getValue().has("enum"),
                        schema.getKey() + ": add it to PlainTypes"));
    }

    @Test
    void refersOnlyToWhatItHolds() {
        Set<String> unresolved = new HashSet<>();
        for (JsonNode reference : description.findValues("$ref")) {
            String to = reference.asText();
            if (!to.startsWith("#/") || description.at(to.substring(1)).isMissingNode()) {
                unresolved.add(to);
            }
        }
        assertEquals(Set.of(), unresolved);
    }

    @Test
    void tellsHowACallerShowsWhoItIs() {
        JsonNode schemes = description.at("/components/securitySchemes");
        assertEquals("http", schemes.at("/token/type").asText());
        assertEquals("bearer", schemes.at("/token/scheme").asText());
        assertEquals("apiKey", schemes.at("/session/type").asText());
        assertEquals("cookie", schemes.at("/session/in").asText());
        assertEquals(SessionCookie.NAME, schemes.at("/session/name").asText());
        assertEquals(2, schemes.size());
    }

    @Test
    void tellsWhichRoutesAreOpen() {
        Set<String> open = new HashSet<>();
        for (Operation operation : operations()) {
            if (operation.says().path("security").isEmpty()) {
                open.add(operation.name());
            } else {
                assertEquals(
                        "[{\"token\":[]},{\"session\":[]}]",
                        operation.says().get("security").toString(),
                        operation.name());
            }
        }
        assertEquals(
                Set.of(
                        "get /api/v1/log",
                        "post /api/v1/session",
                        "post /api/v1/set-up",
                        "get /api/v1/status",
                        "get /api/v1/certificates/{number}/verification",
                        "post /api/v1/certificates/verification"),
                open);
    }

    @Test
    void asksNobodyForWhatClientsSendByThemselves() {
        for (Operation operation : operations()) {
            for (JsonNode parameter : operation.says().path("parameters")) {
                assertTrue(
                        Set.of("path", "query").contains(parameter.get("in").asText()),
                        operation.name() + ": " + parameter);
            }
        }
    }
}
