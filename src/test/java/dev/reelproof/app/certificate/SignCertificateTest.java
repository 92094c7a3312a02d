package dev.reelproof.app.certificate;

import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.Settings;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.check.Conclusion;
import dev.reelproof.pdf.check.PaperCheck;
import dev.reelproof.pdf.signature.CannotSignException;
import dev.reelproof.store.DatabaseOwner;
import io.quarkus.test.junit.QuarkusMock;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The signature follows the number: nobody waits for another's device, and a device that is silent costs no number. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class SignCertificateTest {
    private static final int SECONDS = 60;

    @Inject
    PaperSettings paper;

    @Inject
    Settings settings;

    @Inject
    Clock clock;

    @Inject
    NumberCertificates numbers;

    private static String testedReel() {
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return reel;
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    private static int serial(ValidatableResponse issued) {
        return CertificateNumber.parse(issued.statusCode(201).extract().path("number"))
                .serial();
    }

    /** Puts another hand in the place of the key. */
    private void signBy(UnaryOperator<byte[]> hand) {
        SigningOfPlant real = new SigningOfPlant(paper, settings, clock);
        QuarkusMock.installMockForType(
                new SigningOfPlant(paper, settings, clock) {
                    @Override
                    public byte[] sign(byte[] pdf) {
                        return real.sign(hand.apply(pdf));
                    }
                },
                SigningOfPlant.class);
    }

    private static byte[] silent(byte[] pdf) {
        throw new CannotBeSignedException("The device does not answer.", new CannotSignException("silent"));
    }

    @Test
    void whatIsHandedOutIsSignedAndIsWhatIsVerified() throws Exception {
        ValidatableResponse issued = certify(testedReel()).statusCode(201);
        byte[] pdf = get(issued.extract().<String>path("pdf")).asByteArray();
        issued.body("pdfSha256", equalTo(Sha256.hex(pdf)));
        PaperCheck check = PaperCheck.of(pdf, List.of());
        assertEquals(Conclusion.SIGNER_OPEN, check.conclusion(), check.toString());
        assertTrue(check.toString().contains("demonstration"), check.toString());
        given().queryParam("sha256", Sha256.hex(pdf))
                .get("/api/v1/certificates/" + issued.extract().path("number") + "/verification")
                .then()
                .body("matches", equalTo(true));
    }

    @Test
    void aSilentDeviceCostsNoNumber() {
        int before = serial(certify(testedReel()));
        String reel = testedReel();
        signBy(SignCertificateTest::silent);
        certify(reel)
                .statusCode(503)
                .contentType("application/problem+json")
                .body("detail", containsString("The device does not answer."));
        given().get("/api/v1/reels/" + reel).then().body("certificates", empty());
        signBy(UnaryOperator.identity());
        assertEquals(before + 2, serial(certify(testedReel())));
        assertEquals(before + 1, serial(certify(reel)));
        certify(reel).statusCode(200);
        given().get("/api/v1/reels/" + reel).then().body("certificates", hasSize(1));
    }

    private static String orderOfOneReel() {
        String order = "SO-" + UUID.randomUUID();
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4).statusCode(oneOf(200, 201));
        TestPlant.putReel(
                        "A-" + order,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"" + order + "\"}")
                .statusCode(201);
        TestPlant.test("A-" + order, new SampleResult().json()).statusCode(201);
        certify("A-" + order).statusCode(201);
        return order;
    }

    private static ValidatableResponse certifyOrder(String order) {
        return given().contentType("application/json")
                .post("/api/v1/orders/" + order + "/collective-certificate")
                .then();
    }

    @Test
    void aSilentDeviceCostsNoNumberOfACertificateOverSeveralReels() throws Exception {
        String order = orderOfOneReel();
        String left = orderOfOneReel();
        int before = serial(certify(testedReel()));
        signBy(SignCertificateTest::silent);
        certifyOrder(order).statusCode(503).body("detail", containsString("The device does not answer."));
        certifyOrder(left).statusCode(503);
        given().get("/api/v1/orders/" + order).then().body("collectiveCertificates", empty());
        signBy(UnaryOperator.identity());
        assertEquals(before + 1, serial(certifyOrder(order)));
        certifyOrder(order).statusCode(200);
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            statement.execute("update collective_to_sign set issued = issued - interval '1 hour'");
        }
        assertEquals(before + 3, serial(certify(testedReel())));
        given().get("/api/v1/orders/" + left).then().body("collectiveCertificates", hasSize(1));
        assertEquals(List.of(), numbers.misfits());
    }

    @Test
    void whatWasLeftBehindIsCompletedByTheNextIssue() throws Exception {
        String left = testedReel();
        signBy(SignCertificateTest::silent);
        certify(left).statusCode(503);
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            statement.execute("update certificate_to_sign set issued = issued - interval '1 hour'");
        }
        signBy(UnaryOperator.identity());
        certify(testedReel()).statusCode(201);
        given().get("/api/v1/reels/" + left).then().body("certificates", hasSize(1));
    }

    @Test
    void whatWasLeftBehindAndCannotBeKeptKeepsNobodyElseWaiting() throws Exception {
        String kept = certify(testedReel()).statusCode(201).extract().path("record");
        String left = testedReel();
        signBy(SignCertificateTest::silent);
        certify(left).statusCode(503);
        signBy(UnaryOperator.identity());
        String own = waiting("select record_id from certificate_to_sign");
        waiting("update certificate_to_sign set issued = issued - interval '1 hour', record_id = '" + kept
                + "' returning record_id");
        certify(testedReel()).statusCode(201);
        given().get("/api/v1/reels/" + left).then().body("certificates", empty());
        waiting("update certificate_to_sign set record_id = '" + own + "' returning record_id");
        certify(testedReel()).statusCode(201);
        given().get("/api/v1/reels/" + left).then().body("certificates", hasSize(1));
    }

    private static String waiting(String sql) throws SQLException {
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            assertTrue(rows.next(), "one waits");
            return rows.getString(1);
        }
    }

    @Test
    void nobodyWaitsForTheDeviceOfAnother() throws Exception {
        int before = serial(certify(testedReel()));
        CountDownLatch isSigning = new CountDownLatch(1);
        CountDownLatch mayEnd = new CountDownLatch(1);
        signBy(pdf -> {
            // The first waits, whoever comes after it does not.
            if (isSigning.getCount() > 0) {
                isSigning.countDown();
                await(mayEnd);
            }
            return pdf;
        });
        String slow = testedReel();
        ExecutorService other = Executors.newSingleThreadExecutor();
        try {
            Future<ValidatableResponse> signing = other.submit(() -> certify(slow));
            await(isSigning);
            assertEquals(before + 2, serial(certify(testedReel())));
            mayEnd.countDown();
            assertEquals(before + 1, serial(signing.get(SECONDS, TimeUnit.SECONDS)));
        } finally {
            mayEnd.countDown();
            other.shutdownNow();
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(SECONDS, TimeUnit.SECONDS), "the other did not come so far");
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
