package dev.reelproof.api;

import static dev.reelproof.api.TestPlant.newReel;
import static dev.reelproof.api.TestPlant.putProduct;
import static dev.reelproof.api.TestPlant.putReel;
import static dev.reelproof.api.TestPlant.test;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import java.net.URL;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Every refusal is a problem document that says what, where and what would be right, and keeps nothing. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class ProblemsTest {
    private static final HttpClient CLIENT = HttpClient.newHttpClient();
    private static final int LARGEST_BODY = 50 * 1024 * 1024;

    private static final RestAssuredConfig RAW = RestAssuredConfig.config()
            .encoderConfig(EncoderConfig.encoderConfig()
                    .encodeContentTypeAs("multipart/form-data", ContentType.TEXT)
                    .appendDefaultContentCharsetToContentTypeIfUndefined(false));

    @TestHTTPResource
    URL service;

    private static ValidatableResponse problem(ValidatableResponse answer, int status) {
        return answer.statusCode(status)
                .contentType(Problem.MEDIA_TYPE)
                .body("status", equalTo(status))
                .body("title", notNullValue())
                .body("detail", notNullValue())
                .body("errors", notNullValue());
    }

    @Test
    void nothingAtAnAddress() {
        problem(get("/api/v1/no-such-route").then(), 404).body("detail", containsString("/api/v1/no-such-route"));
        problem(get("/api/v1/reels/none").then(), 404).body("detail", containsString("'none'"));
        problem(get("/api/v1/records/none").then(), 404);
        problem(get("/api/v1/records/" + UUID.randomUUID()).then(), 404);
        problem(get("/api/v1/products/none").then(), 404);
        problem(get("/api/v1/limit-sets/none").then(), 404);
        problem(get("/api/v1/limit-sets/category-6a-cable/strip-force").then(), 404);
        problem(get("/api/v1/certificates/none.pdf").then(), 404);
        problem(get("/api/v1/schemas/none").then(), 404);
        problem(test("none", new SampleResult().json()), 404).body("detail", containsString("PUT /api/v1/reels/none"));
    }

    @Test
    void aBrowserGetsAPageWithAWayBack() {
        String browser = "text/html,application/xhtml+xml,application/xml;q=0.9,*/*;q=0.8";
        for (String path : List.of("/no-such-page", "/no/such/page.html")) {
            given().accept(browser)
                    .get(path)
                    .then()
                    .statusCode(404)
                    .contentType("text/html")
                    .body("html.body.header.a.@href", equalTo("/"))
                    .body("html.body.main.h1", equalTo("There is no page here"));
            problem(given().accept("application/json").get(path).then(), 404);
            problem(given().accept("*/*").get(path).then(), 404);
        }
        problem(given().accept(browser).get("/api/v1/reels/none").then(), 404).body("detail", containsString("'none'"));
    }

    @Test
    void aMethodThatIsNotServed() {
        problem(given().delete("/api/v1/reels/R-1").then(), 405);
    }

    @Test
    void whatCannotBeRead() {
        String reel = newReel();
        problem(test(reel, ""), 400);
        problem(test(reel, new SampleResult().json().substring(0, 500)), 400)
                .body("errors.where", hasItem(containsString("result")));
        problem(putReel(reel, "{\"plant\": "), 400);
        problem(
                given().contentType("application/json")
                        .body("[1")
                        .put("/api/v1/products/P")
                        .then(),
                400);
        problem(
                        given().config(RAW)
                                .contentType("multipart/form-data; boundary=x")
                                .body("--x\r\nContent-Disposition: form-data; name=\"result\"\r\n\r\n{\"product\":")
                                .post("/api/v1/reels/" + reel + "/tests")
                                .then(),
                        400)
                .body("errors[0].message", containsString("cut short"));
        problem(
                given().config(RAW)
                        .contentType("multipart/form-data")
                        .body("no boundary")
                        .post("/api/v1/reels/" + reel + "/tests")
                        .then(),
                400);
        problem(
                        given().multiPart("bulk", "a.csv", new byte[] {1}, "text/csv")
                                .post("/api/v1/reels/" + reel + "/tests")
                                .then(),
                        400)
                .body("errors[0].message", containsString("'result' is missing"));
        get("/api/v1/reels/" + reel).then().body("records", empty());
    }

    @Test
    void aMediaTypeThatIsNotTaken() {
        problem(
                        given().contentType("text/plain")
                                .body("{}")
                                .post("/api/v1/reels/" + newReel() + "/tests")
                                .then(),
                        415)
                .body("detail", containsString("multipart/form-data"));
        problem(
                given().contentType("text/csv")
                        .body("a")
                        .put("/api/v1/products/P")
                        .then(),
                415);
    }

    @Test
    void whatCanBeReadButCannotBe() {
        String reel = newReel();
        problem(test(reel, new SampleResult().product("OTHER").json()), 422)
                .body("errors[0].where", equalTo("/product"));
        problem(test(reel, new SampleResult().celsius(120).json()), 422)
                .body("errors[0].where", equalTo("/temperature"));
        problem(test(reel, new SampleResult().json().replace("\"pair\": 4", "\"pair\": 5")), 422)
                .body("errors[0].message", containsString("beyond the 4 pairs"));
        problem(test(reel, new SampleResult().metres(-1).json()), 422)
                .body("errors[0].where", containsString("/length"));
        problem(putProduct("P", "no-such-set", 4), 422).body("errors[0].where", equalTo("/limitSet"));
        problem(putProduct("P", "category-6a-cable", 25), 422).body("errors[0].where", equalTo("/pairs"));
        problem(
                        putReel(
                                "R",
                                "{\"plant\": \"moon\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 1, \"unit\": \"m\"}}"),
                        422)
                .body("errors[0].where", equalTo("/plant"));
        problem(putReel("R", "{\"product\": \"NONE\", \"length\": {\"value\": 1, \"unit\": \"m\"}}"), 422)
                .body("errors[0].where", equalTo("/product"));
        problem(get("/api/v1/reels?limit=none").then(), 422);
        problem(get("/api/v1/reels?plant=moon").then(), 422);
        problem(get("/api/v1/limit-sets/category-6a-cable/next?frequency=501").then(), 422)
                .body("errors[0].where", equalTo("frequency"));
        problem(get("/api/v1/limit-sets/category-6a-cable/next").then(), 422);
        problem(
                get("/api/v1/limit-sets/category-6a-cable/next?frequency=1&unit=dB")
                        .then(),
                422);
        get("/api/v1/reels/" + reel).then().body("records", empty());
    }

    @Test
    void aBodyThatStatesThatItIsTooLarge() throws Exception {
        byte[] body = new byte[2 * LARGEST_BODY];
        HttpResponse<String> answer = post(BodyPublishers.ofByteArray(body));
        assertTooLarge(answer);
    }

    @Test
    void aBodyThatTurnsOutToBeTooLarge() throws Exception {
        byte[] body = new byte[LARGEST_BODY + 1];
        assertTooLarge(post(BodyPublishers.fromPublisher(BodyPublishers.ofByteArray(body))));
    }

    @Test
    void aBodyThatDoesNotStateItsSizeIsReadAllTheSame() throws Exception {
        byte[] json = new SampleResult().json().getBytes(StandardCharsets.UTF_8);
        HttpRequest request = HttpRequest.newBuilder(service.toURI().resolve("/api/v1/reels/" + newReel() + "/tests"))
                .header("Content-Type", "application/json")
                .header("Authorization", SignedIn.authorization())
                .POST(BodyPublishers.fromPublisher(BodyPublishers.ofByteArray(json)))
                .build();
        assertEquals(201, CLIENT.send(request, BodyHandlers.ofString()).statusCode());
    }

    @Test
    void partsThatDoNotStateTheirSizeAreReadAllTheSame() throws Exception {
        String parts =
                "--x\r\nContent-Disposition: form-data; name=\"result\"\r\nContent-Type: application/json\r\n\r\n"
                        + new SampleResult().json() + "\r\n--x--\r\n";
        byte[] body = parts.getBytes(StandardCharsets.UTF_8);
        HttpRequest request = HttpRequest.newBuilder(service.toURI().resolve("/api/v1/reels/" + newReel() + "/tests"))
                .header("Content-Type", "multipart/form-data; boundary=x")
                .header("Authorization", SignedIn.authorization())
                .POST(BodyPublishers.fromPublisher(BodyPublishers.ofByteArray(body)))
                .build();
        assertEquals(201, CLIENT.send(request, BodyHandlers.ofString()).statusCode());
    }

    private static void assertTooLarge(HttpResponse<String> answer) {
        assertEquals(413, answer.statusCode());
        assertEquals(
                Problem.MEDIA_TYPE, answer.headers().firstValue("Content-Type").orElseThrow());
        assertTrue(answer.body().contains("At most " + LARGEST_BODY + " bytes"), answer.body());
    }

    private HttpResponse<String> post(BodyPublisher body) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(service.toURI().resolve("/api/v1/reels/R-1/tests"))
                .header("Content-Type", "application/json")
                .header("Authorization", SignedIn.authorization())
                .POST(body)
                .build();
        return CLIENT.send(request, BodyHandlers.ofString());
    }
}
