package dev.reelproof.api.order;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.access.TestSignIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.certificate.NumberCertificates;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.check.Conclusion;
import dev.reelproof.pdf.check.PaperCheck;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** One certificate over several reels of an order: issued only over current ones, and current only while they are. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class CollectiveCertificateTest {
    private static final double FAILING = 12;
    private static final int TOO_MANY = 201;

    @Inject
    NumberCertificates numbers;

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

    private String certified(String name) {
        String reel = reel(name);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        given().post("/api/v1/reels/" + reel + "/certificates").then().statusCode(201);
        return reel;
    }

    private String numberOf(String reel) {
        return given().get("/api/v1/reels/" + reel).path("certificates[0].number");
    }

    private Response ask() {
        return given().contentType("application/json").post("/api/v1/orders/" + order + "/collective-certificate");
    }

    private ValidatableResponse ask(String... reels) {
        return given().contentType("application/json")
                .body(Arrays.stream(reels).collect(Collectors.joining("\", \"", "{\"reels\": [\"", "\"]}")))
                .post("/api/v1/orders/" + order + "/collective-certificate")
                .then();
    }

    private static ValidatableResponse verify(String number) {
        return given().get("/api/v1/certificates/" + number + "/verification")
                .then()
                .statusCode(200);
    }

    private static ValidatableResponse verify(byte[] pdf) {
        return given().contentType("application/pdf")
                .body(pdf)
                .post("/api/v1/certificates/verification")
                .then()
                .statusCode(200);
    }

    private static byte[] pdf(String number) {
        return given().get("/api/v1/certificates/" + number + ".pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    private static String hold(String reel) {
        return TestSignIn.person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201)
                .extract()
                .jsonPath()
                .getString("id");
    }

    @Test
    void namesTheCertificatesOfTheOrderAndVerifiesByNumberByDigestAndByFile() throws Exception {
        String one = certified("A");
        String other = certified("B");
        ValidatableResponse issued = ask().then()
                .statusCode(201)
                .body("order", equalTo(order))
                .body("customer", equalTo("Blåbær & Sons (invented)"))
                .body("state", equalTo("current"))
                .body("reasons", empty())
                .body("certificates.reel", contains(one, other))
                .body("certificates.number", contains(numberOf(one), numberOf(other)))
                .body("certificates.state", contains("current", "current"));
        String number = issued.extract().path("number");
        byte[] pdf = pdf(number);
        issued.body("pdfSha256", equalTo(Sha256.hex(pdf)));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals(3, document.getNumberOfPages());
            String text = new PDFTextStripper().getText(document);
            for (String expected : List.of(number, numberOf(one), numberOf(other), "2 reels of order")) {
                assertTrue(text.contains(expected), expected + " in " + text);
            }
        }
        PaperCheck alone = PaperCheck.of(pdf, List.of());
        assertEquals(Conclusion.SIGNER_OPEN, alone.conclusion(), alone.toString());

        verify(number)
                .body("genuine", equalTo(true))
                .body("current", equalTo(true))
                .body("state", equalTo("current"))
                .body("stateSentence", containsString("each of the 2 certificates"))
                .body("issue", equalTo(1))
                .body("certificates.reel", contains(one, other));
        verify(pdf)
                .body("number", equalTo(number))
                .body("current", equalTo(true))
                .body("matches", equalTo(true));
        given().queryParam("sha256", Sha256.hex("another"))
                .get("/api/v1/certificates/" + number + "/verification")
                .then()
                .body("genuine", equalTo(false))
                .body("current", equalTo(false))
                .body("state", equalTo("altered"));
        verify(Arrays.copyOf(pdf, pdf.length + 9))
                .body("number", equalTo(number))
                .body("genuine", equalTo(false))
                .body("state", equalTo("altered"))
                .body("differences", not(empty()));
        given().get("/api/v1/orders/" + order)
                .then()
                .body("collectiveCertificates.number", contains(number))
                .body("collectiveCertificates[0].state", equalTo("current"));
        given().queryParam("q", number)
                .get("/api/v1/search")
                .then()
                .body("hits[0].name", equalTo(number))
                .body("hits[0].collective.order", equalTo(order));
        given().queryParam("subject", "certificate/" + number)
                .get("/api/v1/audit")
                .then()
                .body("entries.action", contains("collective-certificate-issued"))
                .body("entries[0].details.reels", equalTo(2));
        given().queryParam("kind", "collective-certificate")
                .queryParam("id", number)
                .get("/api/v1/log/proof")
                .then()
                .statusCode(200);
    }

    @Test
    void isCurrentOnlyWhileEachCertificateIsAndNamesTheReel() {
        String one = certified("A");
        String other = certified("B");
        String number = ask().then().statusCode(201).extract().path("number");
        String hold = hold(other);
        verify(number)
                .body("genuine", equalTo(true))
                .body("current", equalTo(false))
                .body("state", equalTo("in-question"))
                .body("stateSentence", containsString("1 of the 2 certificates"))
                .body("reasons", hasSize(1))
                .body("reasons[0]", containsString("Reel " + other))
                .body("reasons[0]", not(containsString("bare spots")))
                .body("certificates.state", contains("current", "in-question"));
        verify(pdf(number)).body("current", equalTo(false)).body("state", equalTo("in-question"));
        given().get("/api/v1/orders/" + order)
                .then()
                .body("collectiveCertificates[0].state", equalTo("in-question"))
                .body("collectiveCertificates[0].reasons[0]", containsString("bare spots"));
        release(hold);
        verify(number).body("state", equalTo("current"));

        given().contentType("application/json")
                .body("{\"reason\": \"consignee\", \"consignee\": \"Depot 7\"}")
                .post("/api/v1/certificates/" + numberOf(one) + "/reissues")
                .then()
                .statusCode(201);
        verify(number).body("state", equalTo("superseded")).body("reasons[0]", containsString("Reel " + one));
        ask().then().statusCode(201).body("number", not(equalTo(number))).body("state", equalTo("current"));

        TestPlant.test(other, new SampleResult().resistance(FAILING).json().replace("2026-03-02T", "2026-03-03T"))
                .statusCode(201);
        verify(number).body("current", equalTo(false)).body("reasons", hasSize(2));
    }

    private static void release(String hold) {
        TestSignIn.person("Ben", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reason\": \"looked at\"}")
                .post("/api/v1/holds/" + hold + "/release")
                .then()
                .statusCode(200);
    }

    @Test
    void aWithdrawnCertificateTakesTheCollectiveOneWithIt() {
        String one = certified("A");
        certified("B");
        String number = ask().then().statusCode(201).extract().path("number");
        int approval = TestSignIn.person("anna", Role.QUALITY_MANAGER)
                .contentType("application/json")
                .body("{\"reason\": \"wrong drum\"}")
                .post("/api/v1/certificates/" + numberOf(one) + "/withdrawals")
                .path("id");
        TestSignIn.person("Ben", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"approve\": true, \"reason\": \"seen\"}")
                .post("/api/v1/approvals/" + approval + "/decision")
                .then()
                .statusCode(200);
        verify(number)
                .body("state", equalTo("withdrawn"))
                .body("current", equalTo(false))
                .body("reasons[0]", containsString("Reel " + one));
        verify(pdf(number)).body("state", equalTo("withdrawn"));
    }

    @Test
    void refusesReelsWithoutACurrentCertificateAndSaysWhichAndWhy() {
        String good = certified("A");
        String rejected = reel("B");
        TestPlant.test(rejected, new SampleResult().resistance(FAILING).json()).statusCode(201);
        String held = certified("C");
        hold(held);
        String untested = reel("D");
        String uncertified = reel("E");
        TestPlant.test(uncertified, new SampleResult().json()).statusCode(201);
        ask().then()
                .statusCode(409)
                .contentType("application/problem+json")
                .body("detail", containsString("4 of 5 reels have no current certificate"))
                .body("errors.where", contains(rejected, held, untested, uncertified))
                .body("errors[0].message", containsString("rejected"))
                .body("errors[1].message", containsString("on hold"))
                .body("errors[2].message", containsString("not tested"))
                .body("errors[3].message", containsString("no certificate"));
        given().get("/api/v1/orders/" + order).then().body("collectiveCertificates", empty());

        ask(good, held).statusCode(409).body("errors.where", contains(held));
        ask(good, "OTHER").statusCode(409).body("errors[0].message", containsString("no reel of this order"));
        ask(good, good).statusCode(201).body("certificates.reel", contains(good));
    }

    @Test
    void oneSelectionHasOneCertificateAlsoWhenSeveralAskAtOnceAndNumbersHaveNoGap() throws Exception {
        certified("A");
        String other = certified("B");
        int before = CertificateNumber.parse(numberOf(other)).serial();
        ExecutorService people = Executors.newFixedThreadPool(4);
        Set<String> issued = new HashSet<>();
        List<Integer> statuses = new ArrayList<>();
        try {
            Callable<Response> ask = this::ask;
            for (Future<Response> asked : people.invokeAll(List.of(ask, ask, ask, ask))) {
                statuses.add(asked.get().statusCode());
                issued.add(asked.get().path("number"));
            }
        } finally {
            people.shutdownNow();
        }
        assertTrue(statuses.contains(201) && List.of(200, 201).containsAll(statuses), statuses.toString());
        assertEquals(1, issued.size(), issued.toString());
        assertEquals(
                before + 1, CertificateNumber.parse(issued.iterator().next()).serial());
        ask().then().statusCode(200).body("number", equalTo(issued.iterator().next()));
        given().get("/api/v1/orders/" + order).then().body("collectiveCertificates", hasSize(1));
        assertEquals(
                before + 2, CertificateNumber.parse(numberOf(certified("C"))).serial());
        assertEquals(List.of(), numbers.misfits());
    }

    @Test
    void refusesAnUnknownOrderAndMoreReelsThanOneCertificateMayHave() {
        ask().then().statusCode(404).body("detail", containsString("No reel of plant north"));
        ask("R-1").statusCode(404);
        String one = certified("A");
        given().contentType("application/json")
                .body("{\"reels\": []}")
                .post("/api/v1/orders/" + order + "/collective-certificate")
                .then()
                .statusCode(422)
                .body("errors.where", hasItem("/reels"));
        ask(IntStream.range(0, TOO_MANY).mapToObj(i -> "R-" + i).toArray(String[]::new))
                .statusCode(422)
                .body("detail", containsString("at most 200"));
        for (int i = 1; i < TOO_MANY; i++) {
            reel("M" + i);
        }
        ask().then().statusCode(409).body("detail", containsString("at most 200 reels, not 201"));
        ask(one).statusCode(201);
    }

    @Test
    void whoMayNotIssueMayNotIssueThis() {
        certified("A");
        TestSignIn.person("tom", Role.TECHNICIAN)
                .contentType("application/json")
                .post("/api/v1/orders/" + order + "/collective-certificate")
                .then()
                .statusCode(403);
        TestSignIn.person("carla", Role.CUSTOMER_SERVICE)
                .contentType("application/json")
                .post("/api/v1/orders/" + order + "/collective-certificate")
                .then()
                .statusCode(201);
    }
}
