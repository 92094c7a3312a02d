package dev.reelproof.app.order;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.certificate.IssueCertificate;
import dev.reelproof.certificate.CertificateBatch;
import dev.reelproof.store.order.CertificateBatches;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A batch outlives the copy of the service that worked on it, and several copies share it. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class IssueWaitingTest {
    private static final int SECONDS = 60;
    private static final Caller CARLA =
            new Caller(Caller.Kind.PERSON, "carla", null, Set.of(Role.CUSTOMER_SERVICE), "192.0.2.7");

    @Inject
    CertificateBatches batches;

    @Inject
    IssueCertificate issuing;

    @Inject
    Callers callers;

    @Inject
    Clock clock;

    private final String order = "WAIT-" + UUID.randomUUID();

    private List<String> passedReels(int count) {
        List<String> reels = new ArrayList<>();
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        for (int i = 0; i < count; i++) {
            String reel = "W" + i + "-" + order;
            TestPlant.putReel(
                            reel,
                            "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                    + " \"order\": \"" + order + "\"}")
                    .statusCode(201);
            TestPlant.test(reel, new SampleResult().json()).statusCode(201);
            reels.add(reel);
        }
        return reels;
    }

    private long ask() {
        return QuarkusTransaction.requiringNew()
                .call(() -> batches.ask("north", order, CARLA, OffsetDateTime.now(clock)));
    }

    private CertificateBatch batch(long id) {
        return batches.byId("north", id).orElseThrow();
    }

    private CertificateBatch finished(long id) throws InterruptedException {
        for (int i = 0; i < SECONDS * 10 && !batch(id).isFinished(); i++) {
            Thread.sleep(100);
        }
        return batch(id);
    }

    private IssueWaiting copy() {
        return new IssueWaiting(batches, issuing, callers, clock);
    }

    @Test
    void whatADeadCopyLeftIsTakenUp() throws Exception {
        passedReels(3);
        long id = ask();
        // The copy issued a certificate and died before it wrote it down: its transaction never ended well.
        CountDownLatch isTaken = new CountDownLatch(1);
        try {
            QuarkusTransaction.requiringNew().run(() -> {
                CertificateBatches.Task task = batches.takeNext().orElseThrow();
                while (task.batch() != id) {
                    task = batches.takeNext().orElseThrow();
                }
                CertificateBatches.Task mine = task;
                QuarkusTransaction.suspendingExisting()
                        .run(() -> callers.onBehalfOf(mine.caller(), () -> issuing.issue(mine.plant(), mine.reel())));
                isTaken.countDown();
                throw new IllegalStateException("dies here");
            });
        } catch (IllegalStateException e) {
            assertEquals("dies here", e.getMessage());
        }
        assertEquals(0, isTaken.getCount());
        // No one wakes the service: it looks for itself what was left.
        CertificateBatch done = finished(id);
        assertTrue(done.isFinished(), done.toString());
        assertEquals(3, done.issued(), "that of the dead copy counts as issued by the batch");
        given().queryParam("order", order)
                .get("/api/v1/certificates")
                .then()
                .body("certificates.size()", org.hamcrest.Matchers.equalTo(3));
    }

    @Test
    void severalCopiesShareABatchAndIssueEachOnce() throws Exception {
        List<String> reels = passedReels(6);
        long id = ask();
        ExecutorService copies = Executors.newFixedThreadPool(3);
        try {
            List<Future<?>> working = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                IssueWaiting copy = copy();
                working.add(copies.submit(copy::issueAll));
            }
            for (Future<?> one : working) {
                one.get(SECONDS, TimeUnit.SECONDS);
            }
        } finally {
            copies.shutdownNow();
        }
        CertificateBatch done = finished(id);
        assertEquals(6, done.issued());
        given().queryParam("order", order)
                .get("/api/v1/certificates")
                .then()
                .body("certificates.reel", containsInAnyOrder(reels.toArray()));
    }

    @Test
    void whoMayNotIssueGetsAReasonForEachReel() throws Exception {
        passedReels(1);
        Caller tom = new Caller(Caller.Kind.PERSON, "tom", null, Set.of(Role.TECHNICIAN), null);
        long id = QuarkusTransaction.requiringNew()
                .call(() -> batches.ask("north", order, tom, OffsetDateTime.now(clock)));
        copy().issueAll();
        CertificateBatch done = finished(id);
        assertEquals(1, done.notIssued().size());
        assertTrue(done.notIssued().get(0).reason().contains("customer-service"), done.toString());
        assertFalse(copy().issueNext(), "nothing waits any more");
    }
}
