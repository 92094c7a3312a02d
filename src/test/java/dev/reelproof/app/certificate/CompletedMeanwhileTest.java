package dev.reelproof.app.certificate;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.Settings;
import dev.reelproof.app.hold.HoldCheck;
import dev.reelproof.app.result.TestRules;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.certificate.Withdrawals;
import dev.reelproof.store.concession.Concessions;
import dev.reelproof.store.limits.WrongRevisions;
import dev.reelproof.store.result.AttemptHistories;
import io.quarkus.test.junit.QuarkusMock;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/**
 * A certificate that gets its signature while another request looks whether the reel has one or is about to have one is seen by that
 * request. It once got a second number, which could never be kept and stood in the way of all issues at the plant after it.
 */
@QuarkusTest
@ExtendWith(SignedIn.class)
class CompletedMeanwhileTest {
    private static final int SECONDS = 60;

    private final ExecutorService other = Executors.newSingleThreadExecutor();
    private final AtomicBoolean isFirst = new AtomicBoolean(true);
    private final CountDownLatch isSigning = new CountDownLatch(1);
    private final CountDownLatch mayEnd = new CountDownLatch(1);

    @Inject
    PaperSettings paper;

    @Inject
    Settings settings;

    @Inject
    Clock clock;

    @Inject
    HoldCheck holds;

    @Inject
    WrongRevisions wrongRevisions;

    @Inject
    FindQuestions questions;

    @Inject
    Withdrawals withdrawals;

    @Inject
    AttemptHistories histories;

    @Inject
    Concessions concessions;

    @Inject
    TestRules rules;

    @AfterEach
    void letGo() {
        mayEnd.countDown();
        other.shutdownNow();
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    private static ValidatableResponse reissue(String number) {
        return given().contentType("application/json")
                .body("{\"reason\": \"misspelt\", \"customer\": \"Another (invented)\"}")
                .post("/api/v1/certificates/" + number + "/reissues")
                .then();
    }

    private static String testedReel() {
        String reel = TestPlant.newReel(100);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        return reel;
    }

    /**
     * Lets another request come in between: it takes its number while the next one draws, and gets its signature between what that one
     * reads first and what it reads last before it would take a number itself.
     */
    private void letComeBetween(Callable<ValidatableResponse> request) {
        AtomicReference<Future<ValidatableResponse>> signing = new AtomicReference<>();
        QuarkusMock.installMockForType(
                new SigningOfPlant(paper, settings, clock) {
                    @Override
                    public void requireReady() {
                        if (isFirst.getAndSet(false)) {
                            signing.set(other.submit(request));
                            await(isSigning);
                        }
                        super.requireReady();
                    }

                    @Override
                    public byte[] sign(byte[] pdf) {
                        isSigning.countDown();
                        await(mayEnd);
                        return super.sign(pdf);
                    }
                },
                SigningOfPlant.class);
        QuarkusMock.installMockForType(
                new MayBeCertified(holds, wrongRevisions, questions, withdrawals, histories, concessions, rules) {
                    @Override
                    Certifiable requireCertifiable(
                            RegisteredReel reel, Optional<TestRecord> newest, Optional<IssuedCertificate> certificate) {
                        if (isSigning.getCount() == 0 && mayEnd.getCount() > 0) {
                            mayEnd.countDown();
                            answerOf(signing.get()).statusCode(201);
                        }
                        return super.requireCertifiable(reel, newest, certificate);
                    }
                },
                MayBeCertified.class);
    }

    private static ValidatableResponse answerOf(Future<ValidatableResponse> request) {
        try {
            return request.get(SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(SECONDS, TimeUnit.SECONDS), "the other did not come so far");
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void nothingWaits() throws SQLException {
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement();
                ResultSet count = statement.executeQuery("select count(*) from certificate_to_sign")) {
            count.next();
            assertEquals(0, count.getInt(1), "certificates that wait for their signature");
        }
    }

    @Test
    void aSecondRequestGetsTheCertificateOfTheFirst() throws Exception {
        String reel = testedReel();
        letComeBetween(() -> certify(reel));
        certify(reel).statusCode(200);
        given().get("/api/v1/reels/" + reel).then().body("certificates", hasSize(1));
        nothingWaits();
    }

    @Test
    void aSecondReissueIsRefusedWhileTheFirstIsMade() throws Exception {
        String number = certify(testedReel()).statusCode(201).extract().path("number");
        letComeBetween(() -> reissue(number));
        reissue(number).statusCode(409);
        reissue(number).statusCode(201).body("issue", equalTo(3));
        nothingWaits();
    }
}
