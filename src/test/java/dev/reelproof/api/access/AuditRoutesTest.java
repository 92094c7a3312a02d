package dev.reelproof.api.access;

import static dev.reelproof.api.access.TestSignIn.person;
import static dev.reelproof.api.access.TestSignIn.personOf;
import static dev.reelproof.api.access.TestSignIn.token;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.measurement.Product;
import dev.reelproof.store.DatabaseOwner;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.reel.Products;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.transaction.TransactionalException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Who did what is written with each change, once, and told to those who may know. */
@QuarkusTest
class AuditRoutesTest {
    private static final String ROUTE = "/api/v1/audit";

    @Inject
    AuditTrail audit;

    @Inject
    Products products;

    private final String own = UUID.randomUUID().toString();

    private static ValidatableResponse of(String subject) {
        return reader().queryParam("subject", subject).get(ROUTE).then().statusCode(200);
    }

    private static RequestSpecification reader() {
        return person("reader", Role.QUALITY_MANAGER);
    }

    private static RequestSpecification engineer() {
        return person("Ærø Jäger", Role.ENGINEER).contentType("application/json");
    }

    private static void putProduct(String id, String description, int status) {
        engineer()
                .body("{\"description\": \"" + description + "\", \"limitSet\": \"category-6a-cable\", \"pairs\": 4,"
                        + " \"nominalVelocity\": 0.681,"
                        + " \"lays\": [{\"pair\": 1, \"lay\": {\"value\": 9.1, \"unit\": \"mm\"}}]}")
                .put("/api/v1/products/" + id)
                .then()
                .statusCode(status);
    }

    @Test
    void aProductsEntriesSayWhatChanged() {
        String id = "P-" + own;
        putProduct(id, "first", 201);
        putProduct(id, "first", 200);
        putProduct(id, "second", 200);
        putProduct(id, "second", 200);
        of("product/" + id)
                .body("entries.action", contains("product-changed", "product-registered"))
                .body("entries.actor", everyItem(equalTo("Ærø Jäger")))
                .body("entries.actorKind", everyItem(equalTo("person")))
                .body("entries.from", everyItem(equalTo("127.0.0.1")))
                .body("entries.at", everyItem(notNullValue()))
                .body("entries[0].reason", nullValue())
                .body("entries[0].details.keySet()", contains("description"))
                .body("entries[0].details.description.from", equalTo("first"))
                .body("entries[0].details.description.to", equalTo("second"))
                .body("entries[1].details.pairs.from", nullValue())
                .body("entries[1].details.pairs.to", equalTo(4));
    }

    @Test
    void aReelsEntriesTellItsStoryOnce() {
        putProduct("AUDITED", "audited", oneOfPutStatuses("AUDITED"));
        String reel = "R-" + own;
        for (String customer : List.of("A (invented)", "A (invented)", "B (invented)")) {
            engineer()
                    .body("{\"product\": \"AUDITED\", \"length\": {\"value\": 100, \"unit\": \"m\"}, \"customer\": \""
                            + customer + "\"}")
                    .put("/api/v1/reels/" + reel);
        }
        String sent = new SampleResult().json().replace("HD6A-4P", "AUDITED");
        String record = null;
        for (int status : List.of(201, 200)) {
            record = token("bay-1", Role.TECHNICIAN)
                    .contentType("application/json")
                    .body(sent)
                    .post("/api/v1/reels/" + reel + "/tests")
                    .then()
                    .statusCode(status)
                    .extract()
                    .path("id");
        }
        String number = null;
        for (int status : List.of(201, 200)) {
            number = person("desk", Role.CUSTOMER_SERVICE)
                    .post("/api/v1/reels/" + reel + "/certificates")
                    .then()
                    .statusCode(status)
                    .extract()
                    .path("number");
        }
        of("reel/" + reel)
                .body("entries.action", contains("test-taken", "reel-changed", "reel-registered"))
                .body("entries[0].actor", equalTo("bay-1"))
                .body("entries[0].actorKind", equalTo("token"))
                .body("entries[0].details.record", equalTo(record))
                .body("entries[0].details.verdict", equalTo("accepted"))
                .body("entries[0].details.sha256.length()", equalTo(64))
                .body("entries[1].details.keySet()", contains("customer"))
                .body("entries[1].details.customer.to", equalTo("B (invented)"));
        of("certificate/" + number)
                .body("entries.action", contains("certificate-issued"))
                .body("entries[0].actor", equalTo("desk"))
                .body("entries[0].details.reel", equalTo(reel))
                .body("entries[0].details.record", equalTo(record));
    }

    private static int oneOfPutStatuses(String product) {
        return engineer().get("/api/v1/products/" + product).statusCode() == 404 ? 201 : 200;
    }

    @Test
    void aLotsEntryIsWrittenOnce() {
        String lot = "L-" + own;
        for (int status : List.of(201, 200)) {
            person("store", Role.TECHNICIAN)
                    .contentType("application/json")
                    .body("{\"id\": \"" + lot
                            + "\", \"kind\": \"rod\", \"quantity\": {\"value\": 5000, \"unit\": \"kg\"},"
                            + " \"made\": \"2026-02-11T09:00:00Z\"}")
                    .post("/api/v1/lots")
                    .then()
                    .statusCode(status);
        }
        of("lot/" + lot)
                .body("entries.action", contains("lot-registered"))
                .body("entries[0].details.kind", equalTo("rod"))
                .body("entries[0].actor", equalTo("store"));
    }

    @Test
    void whatIsRefusedWritesNothing() {
        engineer()
                .body("{\"pairs\": 4}")
                .put("/api/v1/products/P-" + own)
                .then()
                .statusCode(422);
        of("product/P-" + own).body("entries", empty());
    }

    @Test
    void aChangeThatFailsTakesItsEntryWithIt() {
        Product product = new Product("P-" + own, "d", "category-6a-cable", 4, "", null, Map.of(), List.of());
        assertThrows(IllegalStateException.class, () -> QuarkusTransaction.requiringNew()
                .run(() -> {
                    register(product);
                    throw new IllegalStateException("fails after the change");
                }));
        of("product/P-" + own).body("entries", empty());
        assertTrue(products.byId("north", "P-" + own).isEmpty());
        assertThrows(TransactionalException.class, () -> audit.write("north", "tried", "s/" + own, null, Map.of()));
        QuarkusTransaction.requiringNew().run(() -> register(product));
        of("product/P-" + own)
                .body("entries.actor", contains("reelproof"))
                .body("entries.actorKind", contains("service"))
                .body("entries.from", contains(nullValue()));
    }

    private void register(Product product) {
        products.put("north", product, Instant.EPOCH);
        audit.write("north", "product-registered", "product/" + product.id(), null, Map.of());
    }

    @Test
    void aChangeWhoseEntryCannotBeWrittenIsNotMade() throws SQLException {
        run("alter table audit_entry add constraint no_entry check (subject <> 'product/P-" + own + "')");
        try {
            putProduct("P-" + own, "audited", 500);
        } finally {
            run("alter table audit_entry drop constraint no_entry");
        }
        assertTrue(products.byId("north", "P-" + own).isEmpty());
        putProduct("P-" + own, "audited", 201);
        of("product/P-" + own).body("entries.action", contains("product-registered"));
    }

    private static void run(String sql) throws SQLException {
        try (Connection connection = DatabaseOwner.connect();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void filtersAndPagesWithoutGapOrRepeat() {
        String subject = "s/" + own;
        QuarkusTransaction.requiringNew().run(() -> {
            for (int i = 0; i < 7; i++) {
                audit.write("north", i % 2 == 0 ? "even" : "odd", subject, "no. " + i, Map.of("i", i));
            }
        });
        List<Integer> seen = new ArrayList<>();
        Long before = null;
        for (int page = 0; page < 4; page++) {
            RequestSpecification request =
                    reader().queryParam("subject", subject).queryParam("limit", 2);
            if (before != null) {
                request.queryParam("before", before);
            }
            List<Map<String, Object>> entries =
                    request.get(ROUTE).then().statusCode(200).extract().path("entries");
            entries.forEach(entry -> seen.add((Integer) ((Map<?, ?>) entry.get("details")).get("i")));
            before = ((Number) entries.get(entries.size() - 1).get("id")).longValue();
        }
        assertEquals(List.of(6, 5, 4, 3, 2, 1, 0), seen);
        assertEquals(seen.stream().sorted(Comparator.reverseOrder()).toList(), seen);
        reader().queryParam("subject", subject)
                .queryParam("action", "odd")
                .queryParam("actor", "reelproof")
                .get(ROUTE)
                .then()
                .body("entries", hasSize(3))
                .body("entries[0].reason", equalTo("no. 5"));
        reader().queryParam("subject", subject)
                .queryParam("actor", "reel")
                .get(ROUTE)
                .then()
                .body("entries", empty());
        reader().queryParam("action", "odd' or '1'='1").get(ROUTE).then().body("entries", empty());
        reader().get(ROUTE).then().body("entries", not(empty()));
    }

    @Test
    void anIdentifierAloneFindsItsEntriesOfEveryKind() {
        QuarkusTransaction.requiringNew().run(() -> {
            audit.write("north", "tried", "reel/" + own, null, Map.of());
            audit.write("north", "tried", "lot/" + own, null, Map.of());
            audit.write("north", "tried", "account/" + own + "/more", null, Map.of());
            audit.write("north", "tried", own, null, Map.of());
        });
        of(own).body("entries.subject", contains(own, "lot/" + own, "reel/" + own));
        of("reel/" + own).body("entries.subject", contains("reel/" + own));
        of("account/" + own + "/more").body("entries.subject", contains("account/" + own + "/more"));
        of(own.substring(1)).body("entries", empty());
    }

    @Test
    void isForThoseWhoMayReadIt() {
        given().get(ROUTE)
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .body("status", equalTo(401))
                .body("errors[0].where", equalTo(ROUTE))
                .body("entries", nullValue());
        personOf("south", "q", Role.QUALITY_MANAGER)
                .queryParam("plant", "north")
                .get(ROUTE)
                .then()
                .statusCode(403)
                .body("detail", equalTo("You may act at plant south, not at plant north."));
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void isForQualityManagersAndAdministrators(Role role) {
        boolean may = role == Role.QUALITY_MANAGER || role == Role.ADMINISTRATOR;
        person("somebody", role)
                .get(ROUTE)
                .then()
                .statusCode(may ? 200 : 403)
                .contentType(may ? "application/json" : "application/problem+json")
                .body("errors", may ? nullValue() : hasSize(1));
    }

    @ParameterizedTest
    @CsvSource({"limit, 0", "limit, 501", "limit, many", "before, 0", "before, x", "subject, 'a\u0000b'", "plant, east"
    })
    void refusesWhatCannotBeAskedFor(String parameter, String value) {
        reader().queryParam(parameter, value)
                .get(ROUTE)
                .then()
                .statusCode(422)
                .body("errors[0].where", equalTo(parameter));
    }
}
