package dev.reelproof.api.certificate;

import static dev.reelproof.api.access.TestSignIn.person;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What becomes of a certificate: in question by itself, issued again, withdrawn by two persons; and what verification says of it. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class CertificateLifeRoutesTest {
    private static final String CERTIFICATES = "/api/v1/certificates/";
    private static final double FAILING = 12;

    private static RequestSpecification anna() {
        return person("anna", Role.QUALITY_MANAGER);
    }

    private static RequestSpecification ben() {
        return person("Ben", Role.ENGINEER);
    }

    private static RequestSpecification carla() {
        return person("carla", Role.CUSTOMER_SERVICE);
    }

    private static ValidatableResponse post(RequestSpecification caller, String path, String body) {
        return caller.contentType("application/json").body(body).post(path).then();
    }

    private static String reel() {
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return reel;
    }

    private static String issued(String reel) {
        return certify(reel)
                .statusCode(201)
                .body("state", equalTo("current"))
                .extract()
                .path("number");
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    private static String hold(String reel) {
        return post(ben(), "/api/v1/holds", "{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static byte[] pdf(String number) {
        return get(CERTIFICATES + number + ".pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    private static String words(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    private static ValidatableResponse verify(String number) {
        return SignedIn.nobody()
                .get(CERTIFICATES + number + "/verification")
                .then()
                .statusCode(200);
    }

    private static ValidatableResponse verifyFile(byte[] file) {
        return SignedIn.nobody()
                .contentType("application/pdf")
                .body(file)
                .post(CERTIFICATES + "verification")
                .then()
                .statusCode(200)
                .header("Cache-Control", "no-store");
    }

    private static void decide(RequestSpecification person, int approval, int status) {
        post(person, "/api/v1/approvals/" + approval + "/decision", "{\"approve\": true, \"reason\": \"seen\"}")
                .statusCode(status);
    }

    private static void stateIs(String reel, String number, String state) {
        boolean isCurrent = state.equals("current");
        verify(number)
                .body("genuine", equalTo(true))
                .body("state", equalTo(state))
                .body("current", equalTo(isCurrent));
        get(CERTIFICATES + "?query=" + number).then().body("certificates.state", hasItem(state));
        get("/api/v1/reels/" + reel)
                .then()
                .body("certificates.find { it.number == '" + number + "' }.state", equalTo(state));
    }

    private static ValidatableResponse audit(String action, String subject) {
        return get("/api/v1/audit?action=" + action + "&subject=" + subject)
                .then()
                .statusCode(200);
    }

    @Test
    void aHoldPutsACertificateInQuestionUntilItIsReleased() {
        String reel = reel();
        String number = issued(reel);
        byte[] file = pdf(number);
        String id = hold(reel);
        stateIs(reel, number, "in-question");
        verifyFile(file)
                .body("genuine", equalTo(true))
                .body("current", equalTo(false))
                .body("state", equalTo("in-question"))
                .body("matches", equalTo(true))
                .body("reasons", contains("the plant holds the reel back"))
                .body(not(containsString("bare spots")));
        get("/api/v1/reels/" + reel)
                .then()
                .body("certificates[0].questions[0].kind", equalTo("hold"))
                .body("certificates[0].reasons[0]", allOf(containsString("hold " + id), containsString("bare spots")));
        audit("hold-placed", "hold/" + id).body("entries[0].details.questionedCertificates", contains(number));
        post(anna(), "/api/v1/holds/" + id + "/release", "{\"reason\": \"measured again\"}")
                .statusCode(200);
        stateIs(reel, number, "current");
        verifyFile(file).body("current", equalTo(true)).body("reasons", empty());
    }

    @Test
    void aNewerTestThatIsNotPassedPutsACertificateInQuestion() {
        String reel = reel();
        String number = issued(reel);
        TestPlant.test(reel, later(new SampleResult().resistance(FAILING).json()))
                .statusCode(201);
        stateIs(reel, number, "in-question");
        verify(number).body("reasons", contains("a newer test of the reel was not passed"));
        audit("test-taken", "reel/" + reel).body("entries[0].details.questionedCertificates", contains(number));
        audit("test-taken", "reel/" + reel).body("entries[1].details.questionedCertificates", nullValue());
        reissue(number, "{\"reason\": \"another customer\"}").statusCode(409);
        String passed = later(later(new SampleResult().json()));
        TestPlant.test(reel, passed).statusCode(201);
        stateIs(reel, number, "current");
        String next = issued(reel);
        stateIs(reel, number, "superseded");
        stateIs(reel, next, "current");
        verify(number).body("stateSentence", containsString(next));
        reissue(number, "{\"reason\": \"another customer\"}")
                .statusCode(409)
                .body("detail", containsString("earlier test"));
    }

    /** The same result of a test a day later, so that it is the newest by any rule. */
    private static String later(String result) {
        return result.contains("2026-03-02T")
                ? result.replace("2026-03-02T", "2026-03-03T")
                : result.replace("2026-03-03T", "2026-03-04T");
    }

    private static ValidatableResponse reissue(String number, String body) {
        return post(carla(), CERTIFICATES + number + "/reissues", body);
    }

    @Test
    void aReissueChangesWhomItIsForAndNeverWhatItSays() throws IOException {
        String reel = reel();
        String number = issued(reel);
        byte[] first = pdf(number);
        reissue(number, "{\"reason\": \"sold anew\", \"customer\": \"Another (invented)\", \"consignee\": \"Yard 3\"}")
                .statusCode(201)
                .body("number", equalTo(number))
                .body("issue", equalTo(2))
                .body("state", equalTo("current"))
                .body("customer", equalTo("Another (invented)"))
                .body("order", equalTo("SO-4711"))
                .body("consignee", equalTo("Yard 3"))
                .body("reissueReason", equalTo("sold anew"))
                .body("reissuedBy", equalTo("carla"));
        byte[] second = pdf(number);
        String paper = words(second);
        assertTrue(paper.contains("Consignee Yard 3"), paper);
        assertTrue(paper.contains("This issue replaces issue 1"), paper);
        assertTrue(paper.contains("Reason: sold anew"), paper);
        assertFalse(words(first).contains("Consignee"));
        verifyFile(first)
                .body("genuine", equalTo(true))
                .body("state", equalTo("superseded"))
                .body("issue", equalTo(1))
                .body("stateSentence", containsString("issue 2"));
        verifyFile(second).body("state", equalTo("current")).body("issue", equalTo(2));
        certify(reel).statusCode(200).body("issue", equalTo(2));
        get("/api/v1/reels/" + reel).then().body("certificates.state", contains("current", "superseded"));
        audit("certificate-reissued", "certificate/" + number)
                .body("entries[0].reason", equalTo("sold anew"))
                .body("entries[0].actor", equalTo("carla"))
                .body("entries[0].details.issue", equalTo(2));
        reissue(number, "{\"reason\": \"the order was wrong\", \"order\": \"SO-4712\"}")
                .statusCode(201)
                .body("issue", equalTo(3))
                .body("customer", equalTo("Another (invented)"))
                .body("consignee", equalTo("Yard 3"))
                .body("order", equalTo("SO-4712"));
        String next = issued(reel());
        assertEquals(serial(number) + 1, serial(next), "a reissue takes no number");
    }

    @Test
    void aCertificateSaysWhatTheTestsOfItsReelCameTo() throws IOException {
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().resistance(FAILING).json()).statusCode(201);
        TestPlant.test(reel, later(new SampleResult().json())).statusCode(201);
        String paper = words(pdf(issued(reel)));
        assertTrue(paper.contains("accepted at attempt 2; rejected once"), paper);
        assertFalse(words(pdf(issued(reel()))).contains("at attempt"), "of a first test nothing is said");
    }

    @Test
    void aNameThatCannotBePrintedIsRefusedBeforeANumberIsTaken() {
        String before = issued(reel());
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        String registered =
                "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                        + " \"customer\": \"%s\"}";
        given().contentType("application/json")
                .body(registered.formatted("東京"))
                .put("/api/v1/reels/" + reel)
                .then()
                .statusCode(200);
        certify(reel).statusCode(409).body("detail", allOf(containsString("the customer"), containsString("U+6771")));
        given().contentType("application/json")
                .body(registered.formatted("Ελλάδα Дніпро " + "ń".repeat(80)))
                .put("/api/v1/reels/" + reel)
                .then()
                .statusCode(200);
        assertEquals(serial(before) + 1, serial(issued(reel)));
    }

    private static int serial(String number) {
        return Integer.parseInt(number.substring(number.lastIndexOf('-') + 1));
    }

    @Test
    void aReissueNeedsAReasonACertificateAndAReelThatMayShip() {
        String reel = reel();
        String number = issued(reel);
        reissue(number, "{}").statusCode(422).body("errors[0].where", containsString("reason"));
        reissue(number, "{\"reason\": \"r\", \"verdict\": \"accepted\"}").statusCode(422);
        reissue("NORTH-2026-999999", "{\"reason\": \"r\"}").statusCode(404);
        reissue("nothing", "{\"reason\": \"r\"}").statusCode(404);
        hold(reel);
        reissue(number, "{\"reason\": \"r\"}").statusCode(409).body("title", equalTo("The reel is on hold"));
        get("/api/v1/reels/" + reel).then().body("certificates", hasSize(1));
    }

    @Test
    void twoPersonsWithdraw() {
        String reel = reel();
        String number = issued(reel);
        String path = CERTIFICATES + number + "/withdrawals";
        post(carla(), path, "{\"reason\": \"r\"}").statusCode(403);
        given().contentType("application/json")
                .body("{\"reason\": \"r\"}")
                .post(path)
                .then()
                .statusCode(403);
        post(anna(), path, "{}").statusCode(422);
        post(anna(), CERTIFICATES + "NORTH-2026-999999/withdrawals", "{\"reason\": \"r\"}")
                .statusCode(404);
        int approval = post(anna(), path, "{\"reason\": \"wrong customer\"}")
                .statusCode(201)
                .body("subject", equalTo("certificate/" + number))
                .extract()
                .path("id");
        post(anna(), path, "{\"reason\": \"again\"}").statusCode(409).body("detail", containsString("is open"));
        stateIs(reel, number, "current");
        decide(anna(), approval, 409);
        stateIs(reel, number, "current");
        decide(ben(), approval, 200);
        stateIs(reel, number, "withdrawn");
        verifyFile(pdf(number))
                .body("state", equalTo("withdrawn"))
                .body("genuine", equalTo(true))
                .body("current", equalTo(false))
                .body(not(containsString("wrong customer")));
        get("/api/v1/reels/" + reel)
                .then()
                .body("certificates[0].reasons[0]", allOf(containsString("anna"), containsString("Ben")));
        audit("certificate-withdrawn", "certificate/" + number)
                .body("entries", hasSize(1))
                .body("entries[0].actor", equalTo("Ben"))
                .body("entries[0].details.askedBy", equalTo("anna"));
        post(anna(), path, "{\"reason\": \"again\"}").statusCode(409).body("detail", containsString("withdrawn"));
        reissue(number, "{\"reason\": \"r\"}").statusCode(409);
        certify(reel).statusCode(409).body("detail", containsString("was withdrawn"));
    }

    @Test
    void anApprovalOfAWithdrawalThatNamesNothingIsRefused() {
        String body = "{\"action\": \"withdraw\", \"subject\": \"%s\", \"reason\": \"r\"}";
        post(anna(), "/api/v1/approvals", body.formatted("certificate/NORTH-2026-999999"))
                .statusCode(404);
        post(anna(), "/api/v1/approvals", body.formatted("reel/R-1")).statusCode(404);
        post(ben(), "/api/v1/approvals", body.formatted("certificate/" + issued(reel())))
                .statusCode(403);
    }

    @Test
    void limitsFoundWrongPutInQuestionWhatWasJudgedByThemAndNothingElse() {
        String reel = reel();
        String number = issued(reel);
        String other = "X-" + UUID.randomUUID();
        TestPlant.putProduct(other, "category-6-cable", 4).statusCode(201);
        String path = "/api/v1/limit-sets/category-6-cable/revisions/";
        post(carla(), path + "1/found-wrong", "{\"reason\": \"r\"}").statusCode(403);
        post(anna(), path + "99/found-wrong", "{\"reason\": \"r\"}").statusCode(404);
        post(anna(), path + "x/found-wrong", "{\"reason\": \"r\"}").statusCode(422);
        post(anna(), path + "1/found-wrong", "{}").statusCode(422);
        int approval = post(anna(), path + "1/found-wrong", "{\"reason\": \"a digit was lost\"}")
                .statusCode(201)
                .extract()
                .path("id");
        decide(anna(), approval, 409);
        decide(ben(), approval, 200);
        post(anna(), path + "1/found-wrong", "{\"reason\": \"again\"}").statusCode(409);
        get("/api/v1/limit-sets")
                .then()
                .body(
                        "limitSets.find { it.id == 'category-6-cable' && it.revision == 1 }.foundWrong",
                        equalTo("a digit was lost"));
        stateIs(reel, number, "current");
    }

    @Test
    void anAlteredFileIsToldFromTheIssuedOneWithWhatNoLongerMatches() throws IOException {
        String number = issued(reel());
        byte[] issued = pdf(number);
        byte[] oneByte = issued.clone();
        oneByte[issued.length / 2] ^= 1;
        verifyFile(oneByte)
                .body("genuine", equalTo(false))
                .body("current", equalTo(false))
                .body("state", equalTo("altered"))
                .body("matches", equalTo(false))
                .body("number", equalTo(number))
                .body("differences", not(empty()));
        byte[] appended = Arrays.copyOf(issued, issued.length + 10);
        verifyFile(appended)
                .body("state", equalTo("altered"))
                .body("differences[0]", startsWith("10 bytes were appended"));
        try (PDDocument document = Loader.loadPDF(issued)) {
            int pages = document.getNumberOfPages();
            document.removePage(pages - 1);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            document.save(out);
            verifyFile(out.toByteArray())
                    .body("state", equalTo("altered"))
                    .body("number", equalTo(number))
                    .body("differences", contains("the file has " + (pages - 1) + " pages; " + pages + " were issued"));
        }
    }

    @Test
    void whatIsNoCertificateOfOursIsUnknown() {
        for (String file : List.of(
                "no PDF at all",
                "%PDF-1.7 <dc:title>Test certificate NORTH-2026-999999</dc:title>",
                "%PDF-1.7 <dc:title>")) {
            verifyFile(file.getBytes(StandardCharsets.UTF_8))
                    .body("genuine", equalTo(false))
                    .body("current", equalTo(false))
                    .body("state", equalTo("unknown"))
                    .body("issue", nullValue());
        }
        SignedIn.nobody()
                .contentType("application/pdf")
                .post(CERTIFICATES + "verification")
                .then()
                .statusCode(422);
    }

    @Test
    void aFileThatIsTooLargeIsNotRead() {
        SignedIn.nobody()
                .contentType("application/pdf")
                .body(new byte[(16 << 20) + 1])
                .post(CERTIFICATES + "verification")
                .then()
                .statusCode(413);
    }

    @Test
    void aScrappedReelHasNoCurrentCertificate() {
        String reel = reel();
        String number = issued(reel);
        post(given(), "/api/v1/reels/" + reel + "/disposition", "{\"state\": \"scrapped\", \"reason\": \"crushed\"}")
                .statusCode(201);
        stateIs(reel, number, "in-question");
        verify(number).body("reasons", contains("the reel was scrapped"));
    }
}
