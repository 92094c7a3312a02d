package dev.reelproof.app.certificate;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.access.TestSignIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.Plants;
import dev.reelproof.app.seal.KeepLog;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.pdf.CertificateDraft;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.TestRecord;
import io.quarkus.test.junit.QuarkusMock;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Pages are laid out while nobody waits; numbers have neither gaps nor twins all the same. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class IssueCertificateTest {
    private static final double FAILING = 12;
    private static final int SECONDS = 60;

    @Inject
    PlantLogos logos;

    @Inject
    Plants plants;

    @Inject
    SigningOfPlant signing;

    @Inject
    PaperSettings settings;

    @Inject
    KeepLog log;

    @Inject
    Clock clock;

    private static String testedReel() {
        String reel = TestPlant.newReel(100);
        test(reel, new SampleResult());
        return reel;
    }

    private static void test(String reel, SampleResult result) {
        TestPlant.test(reel, result.json()).statusCode(201);
    }

    private static ValidatableResponse certify(String reel) {
        return given().post("/api/v1/reels/" + reel + "/certificates").then();
    }

    private static int serial(ValidatableResponse issued) {
        return CertificateNumber.parse(issued.statusCode(201).extract().path("number"))
                .serial();
    }

    private static void hold(String reel) {
        TestSignIn.person("anna", Role.ENGINEER)
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"bare spots\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201);
    }

    private static void sellTo(String customer, String reel) {
        TestPlant.putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"customer\": \"" + customer + "\"}")
                .statusCode(200);
    }

    /** Lets something happen to a draft of this reel once it is laid out. */
    private void whenDrawn(String reel, UnaryOperator<CertificateDraft> event) {
        QuarkusMock.installMockForType(
                new DraftCertificate(plants, logos, signing, settings, log, clock) {
                    @Override
                    public CertificateDraft draft(
                            RegisteredReel drawn,
                            @Nullable String consignee,
                            TestRecord record,
                            Circumstances circumstances,
                            List<CorrectedSweep> sweeps,
                            LimitSet limitSet) {
                        CertificateDraft draft = super.draft(drawn, consignee, record, circumstances, sweeps, limitSet);
                        return drawn.id().equals(reel) ? event.apply(draft) : draft;
                    }
                },
                DraftCertificate.class);
    }

    @Test
    void nobodyWaitsForTheLayoutOfAnother() throws Exception {
        String slow = testedReel();
        String quick = testedReel();
        CountDownLatch isDrawing = new CountDownLatch(1);
        CountDownLatch mayEnd = new CountDownLatch(1);
        whenDrawn(slow, draft -> {
            isDrawing.countDown();
            await(mayEnd);
            return draft;
        });
        ExecutorService other = Executors.newSingleThreadExecutor();
        try {
            Future<ValidatableResponse> drawing = other.submit(() -> certify(slow));
            await(isDrawing);
            int first = serial(certify(quick));
            hold(quick);
            test(slow, new SampleResult());
            sellTo("Another (invented)", slow);
            mayEnd.countDown();
            assertEquals(first + 1, serial(drawing.get(SECONDS, TimeUnit.SECONDS)));
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

    @Test
    void numbersHaveNeitherGapsNorTwinsThoughOneFails() throws Exception {
        int before = serial(certify(testedReel()));
        String failing = testedReel();
        whenDrawn(failing, draft -> {
            draft.finish(draft.content());
            return draft;
        });
        List<String> reels = Stream.concat(
                        Stream.of(failing), IntStream.range(0, 6).mapToObj(i -> testedReel()))
                .toList();
        TreeSet<Integer> serials = new TreeSet<>();
        ExecutorService others = Executors.newFixedThreadPool(4);
        try {
            List<Callable<ValidatableResponse>> requests = reels.stream()
                    .map(reel -> (Callable<ValidatableResponse>) () -> certify(reel))
                    .toList();
            List<Future<ValidatableResponse>> answers = others.invokeAll(requests);
            answers.get(0).get().statusCode(500);
            for (Future<ValidatableResponse> answer : answers.subList(1, answers.size())) {
                serials.add(serial(answer.get()));
            }
        } finally {
            others.shutdownNow();
        }
        assertEquals(IntStream.rangeClosed(before + 1, before + 6).boxed().toList(), List.copyOf(serials));
        given().get("/api/v1/reels/" + failing).then().body("certificates", empty());
    }

    @Test
    void aReelThatIsSoldAnewWhileItIsDrawnIsDrawnAgain() {
        String reel = testedReel();
        AtomicInteger drafts = new AtomicInteger();
        whenDrawn(reel, draft -> {
            if (drafts.incrementAndGet() == 1) {
                sellTo("Another (invented)", reel);
            }
            return draft;
        });
        certify(reel).statusCode(201).body("customer", equalTo("Another (invented)"));
        assertEquals(2, drafts.get());
    }

    @Test
    void aReelThatChangesEachTimeGetsNoneForNow() {
        String reel = testedReel();
        int before = serial(certify(testedReel()));
        AtomicInteger drafts = new AtomicInteger();
        whenDrawn(reel, draft -> {
            sellTo("Customer " + drafts.incrementAndGet() + " (invented)", reel);
            return draft;
        });
        certify(reel).statusCode(409).body("detail", containsString("ask once more"));
        assertEquals(before + 1, serial(certify(testedReel())));
    }

    @Test
    void aReelThatFailsWhileItIsDrawnGetsNone() {
        String reel = testedReel();
        whenDrawn(reel, draft -> {
            test(reel, new SampleResult().resistance(FAILING));
            return draft;
        });
        certify(reel).statusCode(409).body("detail", containsString("conductor-resistance"));
        given().get("/api/v1/reels/" + reel).then().body("certificates", empty());
    }

    @Test
    void aReelThatIsHeldWhileItIsDrawnGetsNone() {
        String reel = testedReel();
        whenDrawn(reel, draft -> {
            hold(reel);
            return draft;
        });
        certify(reel).statusCode(409).body("title", equalTo("The reel is on hold"));
        given().get("/api/v1/reels/" + reel).then().body("certificates", empty());
    }

    @Test
    void twoWhoAskForOneReelGetOneCertificate() throws Exception {
        String reel = testedReel();
        ExecutorService others = Executors.newFixedThreadPool(2);
        try {
            Callable<ValidatableResponse> request = () -> certify(reel);
            List<Future<ValidatableResponse>> answers = others.invokeAll(List.of(request, request));
            ValidatableResponse one = answers.get(0).get();
            ValidatableResponse other = answers.get(1).get();
            assertEquals(201 + 200, one.extract().statusCode() + other.extract().statusCode());
            assertEquals(one.extract().<String>path("number"), other.extract().<String>path("number"));
        } finally {
            others.shutdownNow();
        }
    }
}
