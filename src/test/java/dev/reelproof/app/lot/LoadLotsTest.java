package dev.reelproof.app.lot;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Caller;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.AdmissionTerms;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.genealogy.admission.LotReport;
import dev.reelproof.intake.lot.LotReader;
import dev.reelproof.intake.lot.ReportLines;
import dev.reelproof.store.lot.Lots;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Loads that break off, and loads at the same time. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class LoadLotsTest {
    @Inject
    AdmitLots admit;

    @Inject
    RegisterLot registration;

    @Inject
    Lots lots;

    @Inject
    Plants plants;

    /** Makes the identifiers of one test its own: lots are kept for ever. */
    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private String material(String id) {
        return """
                {"id": "%s%s", "kind": "jacket-compound", "quantity": {"value": 1, "unit": "t"}, "made": "2026-02-11T08:00:00Z"}"""
                .formatted(id, own);
    }

    private String wire(String id) {
        return """
                {"id": "%s%s", "kind": "annealed-conductor", "quantity": {"value": 1, "unit": "km"}, "made": "2026-02-11T08:00:00Z"}"""
                .formatted(id, own);
    }

    private String made(String id, String parent, double metres) {
        return """
                {"id": "%1$s%2$s", "kind": "unit", "quantity": {"value": %4$s, "unit": "m"}, "made": "2026-02-11T09:00:00Z", "step": "stranding", "inputs": [{"lot": "%3$s%2$s", "quantity": {"value": %4$s, "unit": "m"}}]}"""
                .formatted(id, own, parent, metres);
    }

    private static ValidatableResponse load(String... lines) {
        return given().contentType("application/x-ndjson")
                .body((String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/lots/bulk")
                .then();
    }

    private static ValidatableResponse get(String path) {
        return given().urlEncodingEnabled(false).get("/api/v1" + path).then();
    }

    /** A body that ends in the middle, as when either side goes away. */
    private static final class Torn extends InputStream {
        private final InputStream whole;

        Torn(byte[] whole) {
            this.whole = new ByteArrayInputStream(whole);
        }

        @Override
        public int read() throws IOException {
            int next = whole.read();
            if (next < 0) {
                throw new IOException("torn");
            }
            return next;
        }
    }

    @Test
    void losesNothingThatItTookWhenALoadBreaksOff() {
        List<String> lines = new ArrayList<>(List.of(made("LATE", "NOT-YET", 1)));
        for (int i = 2; i <= 2_500; i++) {
            lines.add(material("M" + i));
        }
        byte[] bytes = (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8);
        LotLoad load = new LotLoad(admit, Caller.SERVICE, plants, Clock.systemUTC());
        LoadBrokeOffException broken =
                assertThrows(LoadBrokeOffException.class, () -> load.load(new ReportLines(new Torn(bytes))));
        assertTrue(
                broken.getMessage().contains("Up to line 2000 it is kept: 1999 registered, 1 waiting, 0 refused"),
                broken.getMessage());
        assertTrue(lots.byId("north", new LotId("M2000" + own)).isPresent());
        assertTrue(lots.byId("north", new LotId("M2001" + own)).isEmpty());
        load(lines.toArray(String[]::new))
                .statusCode(200)
                .body("accepted", equalTo(2_499))
                .body("waiting", equalTo(1))
                .body("refused", empty());
    }

    @Test
    void keepsAllOfOneTransactionOrNothing() {
        OffsetDateTime now = OffsetDateTime.parse("2026-02-11T10:00:00Z");
        assertThrows(IllegalStateException.class, () -> QuarkusTransaction.requiringNew()
                .run(() -> {
                    admit.many(
                            "north",
                            List.of(report(wire("A")), report(made("B", "NOWHERE", 1))),
                            AdmissionTerms.IN_BULK,
                            now);
                    throw new IllegalStateException("the service ends here");
                }));
        assertTrue(lots.byId("north", new LotId("A" + own)).isEmpty());
        get("/lots/waiting?limit=10000").body("waiting.id", not(hasItem("B" + own)));
        get("/audit?subject=lot/A" + own).body("entries", empty());
    }

    private LotReport report(String json) {
        return new LotReport(
                LotReader.readInBulk(json.getBytes(StandardCharsets.UTF_8), "north", List.of("north")), "0".repeat(64));
    }

    @Test
    void missesNoParentThatComesAtTheSameTime() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        OffsetDateTime now = OffsetDateTime.parse("2026-02-11T10:00:00Z");
        try {
            for (int round = 0; round < 20; round++) {
                String parent = "P" + round;
                String child = "C" + round;
                Callable<Boolean> parentComes =
                        () -> registration.take(report(wire(parent)), now).fate() == LotOutcome.Fate.REGISTERED;
                Callable<AdmitLots.Admission> childComes =
                        () -> admit.many("north", List.of(report(made(child, parent, 1))), AdmissionTerms.IN_BULK, now);
                Future<Boolean> one = threads.submit(parentComes);
                Future<AdmitLots.Admission> other = threads.submit(childComes);
                assertTrue(one.get(30, TimeUnit.SECONDS));
                other.get(30, TimeUnit.SECONDS);
                assertTrue(lots.byId("north", new LotId(child + own)).isPresent(), "round " + round);
            }
        } finally {
            threads.shutdownNow();
        }
    }

    @Test
    void letsLoadsAtTheSameTimeTakeNoMoreThanThereIs() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(2);
        OffsetDateTime now = OffsetDateTime.parse("2026-02-11T10:00:00Z");
        try {
            load(wire("A"));
            List<Future<AdmitLots.Admission>> loads = new ArrayList<>();
            for (String half : List.of("x", "y")) {
                List<LotReport> reports = new ArrayList<>();
                for (int i = 0; i < 60; i++) {
                    reports.add(report(made(half + i, "A", 10)));
                }
                loads.add(threads.submit(() -> admit.many("north", reports, AdmissionTerms.IN_BULK, now)));
            }
            long taken = 0;
            for (Future<AdmitLots.Admission> each : loads) {
                taken += each.get(60, TimeUnit.SECONDS).outcomes().stream()
                        .filter(outcome -> outcome.fate() == LotOutcome.Fate.REGISTERED)
                        .count();
            }
            // 1 km and the counters' 2 %
            assertEquals(102, taken);
        } finally {
            threads.shutdownNow();
        }
    }
}
