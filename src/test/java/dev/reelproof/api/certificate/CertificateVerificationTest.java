package dev.reelproof.api.certificate;

import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.intake.Part;
import dev.reelproof.store.DatabaseOwner;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Anyone who has a certificate's number may ask whether it is genuine, and learns no more. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class CertificateVerificationTest {

    private static String issued(String reel) {
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
    }

    private static ValidatableResponse verify(String number, String sha256) {
        return SignedIn.nobody()
                .queryParam("sha256", sha256)
                .get("/api/v1/certificates/" + number + "/verification")
                .then();
    }

    @Test
    void saysWhatAnyoneMayKnowAndNoMore() {
        String reel = TestPlant.newReel(100);
        String number = issued(reel);
        SignedIn.nobody()
                .get("/api/v1/certificates/" + number + "/verification")
                .then()
                .statusCode(200)
                .header("Cache-Control", "no-store")
                .body(
                        "keySet()",
                        containsInAnyOrder(
                                "number",
                                "genuine",
                                "current",
                                "state",
                                "stateText",
                                "stateSentence",
                                "reasons",
                                "differences",
                                "issue",
                                "issued",
                                "reel",
                                "product",
                                "certificates",
                                "pdfSha256",
                                "matches"))
                .body("number", equalTo(number))
                .body("genuine", equalTo(true))
                .body("current", equalTo(true))
                .body("state", equalTo("current"))
                .body("issue", equalTo(1))
                .body("reel", equalTo(reel))
                .body("product", equalTo("HD6A-4P"))
                .body("certificates", empty())
                .body("matches", nullValue())
                .body(not(containsString("SO-4711")))
                .body(not(containsString("invented")));
    }

    @Test
    void tellsTheIssuedPdfFromAnother() {
        String number = issued(TestPlant.newReel(100));
        byte[] pdf = get("/api/v1/certificates/" + number + ".pdf").asByteArray();
        String sha256 = new Part("pdf", "application/pdf", pdf).sha256();
        verify(number, sha256).statusCode(200).body("matches", equalTo(true)).body("pdfSha256", equalTo(sha256));
        verify(number, sha256.toUpperCase(Locale.ROOT)).body("matches", equalTo(true));
        pdf[pdf.length / 2] ^= 1;
        verify(number, new Part("pdf", "application/pdf", pdf).sha256())
                .statusCode(200)
                .body("matches", equalTo(false))
                .body("genuine", equalTo(false))
                .body("current", equalTo(false))
                .body("state", equalTo("altered"));
    }

    @Test
    void anEarlierIssueIsGenuineAndNotCurrent() throws SQLException {
        String number = issued(TestPlant.newReel(100));
        String first = get("/api/v1/certificates/" + number + "/verification").path("pdfSha256");
        String second = "f".repeat(64);
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            statement.execute(
                    "insert into certificate (plant, number, issue, record_id, reel, issued, content, pdf, pdf_sha256,"
                            + " reissue_reason, reissued_by)"
                            + " select plant, number, 2, record_id, reel, now(), content, pdf, '" + second
                            + "', 'another order', 'anna' from certificate where number = '" + number + "'");
        }
        verify(number, first)
                .body("matches", equalTo(true))
                .body("current", equalTo(false))
                .body("issue", equalTo(1));
        verify(number, second)
                .body("matches", equalTo(true))
                .body("current", equalTo(true))
                .body("issue", equalTo(2));
        verify(number, "0".repeat(64))
                .body("matches", equalTo(false))
                .body("issue", equalTo(2))
                .body("pdfSha256", equalTo(second));
    }

    @ParameterizedTest
    @ValueSource(strings = {"NORTH-2026-999999", "SOUTH-2026-000001", "north-2026-000001", "%00", "x", "%25"})
    void aNumberThatWasNotIssuedIsNotFound(String number) {
        SignedIn.nobody()
                .urlEncodingEnabled(false)
                .get("/api/v1/certificates/" + number + "/verification")
                .then()
                .statusCode(404)
                .contentType("application/problem+json")
                .body("detail", equalTo("No certificate of this number was issued here."))
                .body("errors.size()", equalTo(1));
    }

    @ParameterizedTest
    @ValueSource(strings = {"NORTH-2026-999999", "north-2026-000001", "%00", "x"})
    void aPdfOfANumberThatWasNotIssuedIsNotFound(String number) {
        given().urlEncodingEnabled(false)
                .get("/api/v1/certificates/" + number + ".pdf")
                .then()
                .statusCode(404)
                .contentType("application/problem+json")
                .body("detail", containsString("issued no certificate"));
    }

    @Test
    void aSearchForAControlCharacterIsRefused() {
        given().urlEncodingEnabled(false)
                .get("/api/v1/certificates?query=%00")
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo("query"))
                .body("errors[0].message", equalTo("holds a control character"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"abc", "+", "' or 1=1"})
    void aDigestThatIsNoneIsRefused(String sha256) {
        verify("NORTH-2026-999999", sha256).statusCode(422).body("errors[0].where", equalTo("sha256"));
    }
}
