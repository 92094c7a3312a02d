package dev.reelproof.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.access.TestAccounts;
import io.restassured.RestAssured;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** One person of each role, made for a test, and a station that does what has to be there before a page is opened. */
final class People {
    /** The password of each of them. */
    static final String PASSWORD = "invented passphrase 1";

    private static final String PLANT = "north";
    private static final String PRODUCT = "PAGE-6A";
    /** A result of the demo that is accepted. */
    static final Path GOOD_RESULT = Path.of("demo-data/results/R-26001.json");

    private final Map<Role, String> names = new EnumMap<>(Role.class);
    private final String station;

    private People(String mark) {
        for (Role role : Role.values()) {
            String name = role.word() + "-" + mark;
            TestAccounts.make(name, "Invented " + role.word(), Set.of(role), PASSWORD);
            names.put(role, name);
        }
        station = TestAccounts.token("station-" + mark, Set.of(Role.QUALITY_MANAGER), PLANT);
    }

    /** A certificate that was issued. */
    record Issued(String number, byte[] pdf) {}

    /** New people, of names that no other test has. */
    static People make() {
        return new People(UUID.randomUUID().toString().substring(0, 8));
    }

    /** The name of the person of that role. */
    String named(Role role) {
        return names.get(role);
    }

    /** A request by the station, which may do what the tests prepare. */
    RequestSpecification station() {
        return RestAssured.given().header("Authorization", "Bearer " + station);
    }

    void put(String path, String body) {
        int status =
                station().contentType("application/json").body(body).put(path).statusCode();
        assertTrue(status == 200 || status == 201, path + " answered " + status);
    }

    /** Registers a reel of its own product. */
    void register(String reel) {
        put(
                "/api/v1/products/" + PRODUCT,
                "{\"description\": \"page test\", \"limitSet\": \"category-6a-cable\", \"pairs\": 4, \"gauge\": \"23 AWG\"}");
        put(
                "/api/v1/reels/" + reel,
                "{\"plant\": \"north\", \"product\": \"" + PRODUCT
                        + "\", \"length\": {\"value\": 305, \"unit\": \"m\"}}");
    }

    /** Sends this result of the demo, as one of the product that {@link #register} gives; answers the verdict. */
    String send(String reel, Path result) throws IOException {
        return station()
                .contentType("application/json")
                .body(Files.readString(result).replace("HD6A-4P", PRODUCT))
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(201)
                .extract()
                .path("verdict");
    }

    /** Registers a reel and holds it; answers the hold as an approval names it. */
    String hold(String reel) {
        register(reel);
        String id = station()
                .contentType("application/json")
                .body("{\"reel\": \"" + reel + "\", \"reason\": \"test of the page\"}")
                .post("/api/v1/holds")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
        return "hold/" + id;
    }

    /** Registers a reel, sends a good result and has the certificate issued. */
    Issued issue(String reel) throws IOException {
        register(reel);
        assertEquals("accepted", send(reel, GOOD_RESULT));
        String number = station()
                .post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
        byte[] pdf = station()
                .get("/api/v1/certificates/" + number + ".pdf")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
        return new Issued(number, pdf);
    }
}
