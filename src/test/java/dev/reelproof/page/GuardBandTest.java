package dev.reelproof.page;

import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig;
import io.restassured.response.ValidatableResponse;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;

/** A plant with limit sets and an uncertainty model of its own: a guard band, from the result to the page and the certificate. */
@QuarkusTest
@TestProfile(GuardBandTest.OwnFolder.class)
class GuardBandTest {
    private static final String PRODUCT = "GUARDED-2P";

    @TestHTTPResource("/")
    URI page;

    private People people;
    private final String reel = "R-" + UUID.randomUUID();

    /** The plant's own folder. */
    public static class OwnFolder implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "reelproof.limits", "src/test/resources/limits-guarded",
                    "reelproof.data", "target/test-data-guarded");
        }
    }

    @BeforeEach
    void register() {
        people = People.make();
        people.put(
                "/api/v1/products/" + PRODUCT,
                "{\"description\": \"invented\", \"limitSet\": \"guarded-cable\", \"pairs\": 1, \"gauge\": \"24 AWG\"}");
        people.put(
                "/api/v1/reels/" + reel,
                "{\"plant\": \"north\", \"product\": \"" + PRODUCT
                        + "\", \"length\": {\"value\": 300, \"unit\": \"m\"}}");
    }

    /** Two wires; 28.14 ohm of 300 m at 20 °C are the limit of 9.38 ohm/100 m. */
    private ValidatableResponse send(double ohms, String equipment) {
        String result =
                """
                {"product": "%s", "length": {"value": 300, "unit": "m"}, "temperature": {"value": 20, "unit": "°C"},
                 "finished": "2026-03-02T14:09:30Z", "equipment": [%s], "readings": [
                  {"property": "conductor-resistance", "pair": 1, "conductor": "a", "value": %s, "unit": "ohm"},
                  {"property": "conductor-resistance", "pair": 1, "conductor": "b", "value": %s, "unit": "ohm"},
                  {"property": "dielectric-withstand", "value": 0, "unit": "count"}]}"""
                        .formatted(PRODUCT, equipment, ohms, ohms);
        return people.station()
                .config(RestAssuredConfig.config()
                        .jsonConfig(JsonConfig.jsonConfig().numberReturnType(JsonPathConfig.NumberReturnType.DOUBLE)))
                .contentType("application/json")
                .body(result.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(201);
    }

    private static String finding(String property, String field) {
        return "findings.find { it.property == '" + property + "' }." + field;
    }

    @Test
    void aMarginWithinTheGuardBandPassesConditionally() throws Exception {
        double value = 28.08 / 3;
        double instrument = Math.hypot(0.01, 0.002 * 28.08) / 2 / 3;
        double temperature = 0.2 * 0.00393 * value;
        double length = 0.15 / 300 * value;
        double expanded = 2 * Math.sqrt(instrument * instrument + temperature * temperature + length * length);
        assertTrue(expanded > 9.38 - value, "the guard band is wider than the margin");

        String id = send(28.08, "")
                .body("verdict", equalTo("accepted"))
                .body("conditional", equalTo(true))
                .body("uncertaintyModel.id", equalTo("test-bay"))
                .body("uncertaintyModel.revision", equalTo(2))
                .body(finding("conductor-resistance", "outcome"), equalTo("conditional-pass"))
                .body(finding("conductor-resistance", "margin"), closeTo(9.38 - value, 1e-12))
                .body(finding("conductor-resistance", "uncertainty.value"), closeTo(expanded, 1e-12))
                .body(finding("conductor-resistance", "uncertainty.unit"), equalTo("ohm/100 m"))
                .body(finding("conductor-resistance", "uncertainty.coverageFactor"), equalTo(2.0))
                .body(finding("conductor-resistance", "decisionRule"), equalTo("guard band of 1 × U, four outcomes"))
                .body(finding("dielectric-withstand", "outcome"), equalTo("pass"))
                .body(finding("dielectric-withstand", "decisionRule"), equalTo("simple acceptance"))
                .body(finding("dielectric-withstand", "uncertainty"), nullValue())
                .body(finding("dielectric-withstand", "probabilityOfConformity"), nullValue())
                .extract()
                .path("id");

        people.station()
                .get("/api/v1/reels?query=" + reel)
                .then()
                .body("reels[0].verdict", equalTo("accepted"))
                .body("reels[0].verdictText", equalTo("accepted, conditionally"))
                .body("reels[0].look", equalTo("conditional"));
        people.station()
                .get("/api/v1/records/" + id + "/findings/conductor-resistance")
                .then()
                .statusCode(200)
                .body(
                        "explanation.title",
                        hasItems("uncertainty", "expanded uncertainty", "guard band", "probability of conformity"))
                .body("explanation.findAll { it.title == 'uncertainty' }.size()", equalTo(3))
                .body("explanation.findAll { it.title == 'uncertainty' }.source", hasItems("meter, invented (read)"));

        String number = people.station()
                .post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
        byte[] bytes =
                people.station().get("/api/v1/certificates/" + number + ".pdf").asByteArray();
        try (PDDocument document = Loader.loadPDF(bytes)) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            for (String expected : new String[] {
                "ACCEPTED, CONDITIONALLY",
                "Conditional pass, met by less than the guard band of the decision rule below: Conductor resistance.",
                "conditional pass",
                "U = 0.026 ohm/100 m, probability of conformity",
                "ILAC-G8:09/2019, 4.2.3",
                "simple acceptance (ILAC-G8:09/2019, 4.2.1)",
                "uncertainty model test-bay revision 2"
            }) {
                assertTrue(text.contains(expected), () -> "missing: " + expected + " in " + text);
            }
        }
    }

    @Test
    void theFourOutcomesAndABetterInstrument() {
        send(27.9, "").body("conditional", equalTo(false)).body("verdict", equalTo("accepted"));
        send(28.2, "")
                .body("verdict", equalTo("rejected"))
                .body("conditional", equalTo(false))
                .body(finding("conductor-resistance", "outcome"), equalTo("conditional-fail"));
        people.station()
                .post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(409)
                .body("detail", containsString("1 requirement fails conditionally: conductor-resistance"));
        send(28.5, "").body(finding("conductor-resistance", "outcome"), equalTo("fail"));
        send(28.08, "{\"id\": \"rb-1\", \"class\": \"bridge\"}")
                .body("equipment[0].class", equalTo("bridge"))
                .body(finding("conductor-resistance", "outcome"), equalTo("pass"));
        send(28.09, "{\"id\": \"rb-1\", \"class\": \"unheard-of\"}")
                .body("verdict", equalTo("incomplete"))
                .body(finding("conductor-resistance", "outcome"), equalTo("not-tested"))
                .body(
                        finding("conductor-resistance", "reason"),
                        containsString("uncertainty model test-bay revision 2 has no class 'unheard-of'"));
    }

    @Test
    void theLimitSetShowsItsDecisionRules() {
        people.station()
                .get("/api/v1/limit-sets/guarded-cable")
                .then()
                .statusCode(200)
                .body("decisionRule", equalTo("guard band of 1 × U, four outcomes"))
                .body("requirements[0].decisionRule", equalTo("guard band of 1 × U, four outcomes"))
                .body("requirements[2].decisionRule", equalTo("simple acceptance"));
        people.station()
                .get("/api/v1/limit-sets/category-6a-cable")
                .then()
                .body("decisionRule", equalTo("simple acceptance"));
        people.station()
                .get("/api/v1/schemas/uncertainty-model")
                .then()
                .statusCode(200)
                .contentType("application/schema+json")
                .body("title", equalTo("Uncertainty model"));
    }

    @Test
    void thePageSaysSoInPlainWords() {
        send(28.08, "");
        try (Browser browser = Browser.open()) {
            browser.signIn(page, people.named(Role.TECHNICIAN), People.PASSWORD, "/#/reel/" + reel);
            browser.says("verdict-word", "ACCEPTED, CONDITIONALLY");
            assertTrue(browser.shown("verdict").getAttribute("class").contains("conditional"));
            assertTrue(
                    browser.shown("reasons")
                            .getText()
                            .contains(
                                    "met by 0.020 ohm/100 m, less than the decision rule's band (guard band of 1 × U, four outcomes)"),
                    browser.shown("reasons").getText());
            String row = browser.shown("requirements")
                    .findElement(By.cssSelector("tr.conditional-pass"))
                    .getText();
            assertTrue(row.contains("(✓) conditional pass") && row.contains("± 0.0"), row);
            assertTrue(row.contains("conforms: "), row);
            assertEquals(
                    "✓ pass",
                    browser.shown("requirements")
                            .findElement(By.cssSelector("tr.pass .tag"))
                            .getText());
            browser.assertNoConsoleErrors();
        }
    }
}
