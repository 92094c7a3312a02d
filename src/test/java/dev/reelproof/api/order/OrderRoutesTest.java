package dev.reelproof.api.order;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.access.TestSignIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** An order: what its reels lack, its certificates together, and what the customer gets. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class OrderRoutesTest {
    private static final double FAILING = 12;

    private final String order = "SO-" + UUID.randomUUID();

    private String reel(String name) {
        String reel = name + "-" + order;
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        TestPlant.putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"" + order + "\", \"customer\": \"Blåbær & Sons (invented)\"}")
                .statusCode(201);
        return reel;
    }

    private String passed(String name) {
        String reel = reel(name);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return reel;
    }

    private Response issueAll() {
        return given().post("/api/v1/orders/" + order + "/certificates");
    }

    private static void hold(String reel) {
        TestSignIn.person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201);
    }

    @Test
    void issuesWhatMayBeIssuedAndSaysWhyTheRestWasNot() throws Exception {
        String good = passed("A");
        String rejected = reel("B");
        TestPlant.test(rejected, new SampleResult().resistance(FAILING).json()).statusCode(201);
        String held = passed("C");
        hold(held);
        String untested = reel("D");
        String before = passed("E");
        given().post("/api/v1/reels/" + before + "/certificates").then().statusCode(201);

        given().get("/api/v1/orders/" + order)
                .then()
                .statusCode(200)
                .body("reelCount", equalTo(5))
                .body("ready", equalTo(1))
                .body("customers", contains("Blåbær & Sons (invented)"))
                .body("batch", nullValue())
                .body("reels.reel.reel", contains(good, rejected, held, untested, before))
                .body("reels[0].needs", contains("certificate"))
                .body("reels[1].needs", contains("passed-test", "certificate"))
                .body("reels[2].needs", contains("release", "certificate"))
                .body("reels[3].needs", contains("test", "certificate"))
                .body("reels[3].needsText", equalTo("not tested; no certificate"))
                .body("reels[4].needs", empty())
                .body("reels[4].certificate.state", equalTo("current"));

        Response asked = issueAll();
        assertEquals(202, asked.statusCode());
        JsonPath batch = Batches.finished(asked.path("id"));
        assertEquals(5, batch.getInt("reels"));
        assertEquals(1, batch.getInt("issued"));
        assertEquals(1, batch.getInt("issuedBefore"));
        assertEquals(List.of(rejected, held, untested), batch.getList("notIssued.reel"));
        assertTrue(batch.getString("notIssued[0].reason").contains("only an accepted reel"), batch.prettify());
        assertTrue(batch.getString("notIssued[1].reason").contains("bare spots"), batch.prettify());
        assertTrue(batch.getString("notIssued[2].reason").contains("never tested"), batch.prettify());
        assertEquals("Finished: 1 issued, 1 had one already, 3 not issued.", batch.getString("sentence"));

        given().get("/api/v1/orders/" + order)
                .then()
                .body("ready", equalTo(2))
                .body("batch.finished", equalTo(true))
                .body("reels[0].certificate.state", equalTo("current"));
    }

    @Test
    void whatIsIssuedIsInTheNameOfWhoAsked() throws Exception {
        String reel = passed("A");
        String batch = TestSignIn.person("carla", Role.CUSTOMER_SERVICE)
                .post("/api/v1/orders/" + order + "/certificates")
                .then()
                .statusCode(202)
                .extract()
                .path("id");
        Batches.finished(batch);
        String number = given().get("/api/v1/orders/" + order).path("reels[0].certificate.number");
        given().queryParam("subject", "certificate/" + number)
                .get("/api/v1/audit")
                .then()
                .body("entries[0].action", equalTo("certificate-issued"))
                .body("entries[0].actor", equalTo("carla"))
                .body("entries[0].details.reel", equalTo(reel));
        given().queryParam("subject", "order/" + order)
                .get("/api/v1/audit")
                .then()
                .body("entries.action", contains("certificates-asked"));
    }

    @Test
    void twoPeopleAtOnceIssueNothingTwice() throws Exception {
        List<String> reels = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            reels.add(passed("R" + i));
        }
        ExecutorService people = Executors.newFixedThreadPool(4);
        try {
            Callable<Response> ask = this::issueAll;
            List<String> batches = new ArrayList<>();
            for (Future<Response> asked : people.invokeAll(List.of(ask, ask, ask, ask))) {
                assertTrue(
                        List.of(200, 202).contains(asked.get().statusCode()),
                        asked.get().asString());
                batches.add(asked.get().path("id"));
            }
            for (String batch : batches) {
                Batches.finished(batch);
            }
        } finally {
            people.shutdownNow();
        }
        given().queryParam("order", order)
                .get("/api/v1/certificates")
                .then()
                .body("certificates.reel", containsInAnyOrder(reels.toArray()));
    }

    @Test
    void whatWasWithdrawnIsNotIssuedAgainAndSaysSo() throws Exception {
        String reel = passed("A");
        Batches.finished(issueAll().path("id"));
        String number = given().get("/api/v1/orders/" + order).path("reels[0].certificate.number");
        int approval = TestSignIn.person("anna", Role.QUALITY_MANAGER)
                .contentType("application/json")
                .body("{\"reason\": \"wrong drum\"}")
                .post("/api/v1/certificates/" + number + "/withdrawals")
                .path("id");
        TestSignIn.person("Ben", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"approve\": true, \"reason\": \"seen\"}")
                .post("/api/v1/approvals/" + approval + "/decision")
                .then()
                .statusCode(200);

        given().get("/api/v1/orders/" + order)
                .then()
                .body("ready", equalTo(0))
                .body("reels[0].certificate.state", equalTo("withdrawn"))
                .body("reels[0].needs", contains("new-test"));
        JsonPath batch = Batches.finished(issueAll().path("id"));
        assertEquals(List.of(reel), batch.getList("notIssued.reel"));
        assertTrue(batch.getString("notIssued[0].reason").contains("was withdrawn (wrong drum)"), batch.prettify());
        given().get("/api/v1/orders/" + order + "/certificates.txt")
                .then()
                .body(containsString("Certificates: 0"))
                .body(containsString("Reel " + reel + ": certificate withdrawn, a new test is needed"));

        TestPlant.test(reel, new SampleResult().json().replace("2026-03-02T", "2026-03-03T"))
                .statusCode(201);
        given().get("/api/v1/orders/" + order).then().body("reels[0].needs", contains("certificate"));
        assertEquals(1, Batches.finished(issueAll().path("id")).getInt("issued"));
        given().get("/api/v1/orders/" + order)
                .then()
                .body("ready", equalTo(1))
                .body("reels[0].certificate.state", equalTo("current"));
    }

    @Test
    void theZipHasTheCertificatesThatMayBeReliedOnAndTheText() throws Exception {
        String good = passed("A");
        String doubtful = passed("B");
        Batches.finished(issueAll().path("id"));
        hold(doubtful);

        Response zip = given().get("/api/v1/orders/" + order + "/certificates.zip");
        assertEquals(200, zip.statusCode());
        assertTrue(zip.header("Content-Disposition").contains("certificates-SO-"), zip.header("Content-Disposition"));
        Map<String, byte[]> entries = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip.asByteArray()))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                entries.put(entry.getName(), in.readAllBytes());
            }
        }
        String number =
                given().queryParam("reel", good).get("/api/v1/certificates").path("certificates[0].number");
        assertEquals(List.of("certificates.txt", number + ".pdf"), List.copyOf(entries.keySet()));
        assertArrayEquals(
                given().get("/api/v1/certificates/" + number + ".pdf").asByteArray(), entries.get(number + ".pdf"));
        String text = given().get("/api/v1/orders/" + order + "/certificates.txt")
                .then()
                .statusCode(200)
                .contentType(containsString("text/plain"))
                .body(containsString("Test certificates of order " + order))
                .body(containsString("Customer: Blåbær & Sons (invented)"))
                .body(containsString("Certificate " + number))
                .body(containsString("Reel: " + good))
                .body(containsString("States: accepted by "))
                .body(containsString("/verify.html?number=" + number))
                .body(containsString("Reel " + doubtful + ": on hold"))
                .body(not(containsString("{")))
                .extract()
                .asString();
        assertEquals(text, new String(entries.get("certificates.txt"), StandardCharsets.UTF_8));
    }

    @Test
    void anOrderMayBeCalledAlmostAnything() {
        String odd = "Bestellung 12/7 ä%?#" + UUID.randomUUID();
        String reel = "ODD-" + UUID.randomUUID();
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        TestPlant.putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"" + odd + "\"}")
                .statusCode(201);
        given().pathParam("order", odd)
                .get("/api/v1/orders/{order}")
                .then()
                .statusCode(200)
                .body("reels.reel.reel", contains(reel));
        given().pathParam("order", odd)
                .get("/api/v1/orders/{order}/certificates.zip")
                .then()
                .statusCode(200);
    }

    @Test
    void anUnknownOrderIsRefused() {
        String unknown = "/api/v1/orders/UNKNOWN-" + UUID.randomUUID();
        for (String path : List.of("", "/certificates.zip", "/certificates.txt")) {
            given().get(unknown + path).then().statusCode(404).body("detail", containsString("No reel of plant north"));
        }
        given().post(unknown + "/certificates").then().statusCode(404);
        given().get("/api/v1/certificate-batches/999999999").then().statusCode(404);
        given().get("/api/v1/certificate-batches/none").then().statusCode(422);
    }
}
