package dev.reelproof.store.certificate;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.oneOf;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.app.certificate.NumberCertificates;
import dev.reelproof.app.certificate.SignCollective;
import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.store.seal.Sealing;
import dev.reelproof.store.search.SearchIndex;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusMock;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import org.hibernate.Session;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A certificate over several reels that gets its signature while another request looks for it is seen by that request. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class CollectiveCompletedMeanwhileTest {
    @Inject
    Session session;

    @Inject
    SearchIndex searched;

    @Inject
    Sealing sealing;

    @Inject
    SignCollective completion;

    @Inject
    NumberCertificates numbers;

    private final AtomicBoolean mayBeKept = new AtomicBoolean();
    private final AtomicBoolean hasComeBetween = new AtomicBoolean();

    /** Keeps nothing of the first request; completes what waits after the first look of the second, before its other look. */
    private final class ComingBetween extends CollectiveCertificates {
        ComingBetween() {
            super(session, searched, sealing);
        }

        @Override
        public boolean remove(ToSign waiting) {
            if (!mayBeKept.get()) {
                throw new IllegalStateException("the first request dies before it keeps what it signed");
            }
            return super.remove(waiting);
        }

        @Override
        public Optional<IssuedCollective> ofNames(String plant, String names) {
            Optional<IssuedCollective> read = super.ofNames(plant, names);
            comeBetween(plant, names);
            return read;
        }

        @Override
        public Optional<ToSign> waitingOfNames(String plant, String names) {
            Optional<ToSign> read = super.waitingOfNames(plant, names);
            comeBetween(plant, names);
            return read;
        }

        private void comeBetween(String plant, String names) {
            if (mayBeKept.get() && hasComeBetween.compareAndSet(false, true)) {
                ToSign waits = super.waitingOfNames(plant, names).orElseThrow();
                assertTrue(QuarkusTransaction.requiringNew()
                        .call(() -> completion.complete(waits))
                        .isPresent());
            }
        }
    }

    private static Response ask(String order) {
        return given().contentType("application/json").post("/api/v1/orders/" + order + "/collective-certificate");
    }

    @Test
    void getsNoSecondNumber() {
        String order = "SO-" + UUID.randomUUID();
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4).statusCode(oneOf(200, 201));
        TestPlant.putReel(
                        "A-" + order,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"" + order + "\"}")
                .statusCode(201);
        TestPlant.test("A-" + order, new SampleResult().json()).statusCode(201);
        given().post("/api/v1/reels/A-" + order + "/certificates").then().statusCode(201);
        QuarkusMock.installMockForType(new ComingBetween(), CollectiveCertificates.class);
        assertEquals(500, ask(order).statusCode());
        mayBeKept.set(true);
        Response second = ask(order);
        assertTrue(hasComeBetween.get(), "nothing came between");
        assertEquals(200, second.statusCode(), second.asString());
        given().get("/api/v1/orders/" + order).then().body("collectiveCertificates", hasSize(1));
        assertEquals(List.of(), numbers.misfits());
    }
}
