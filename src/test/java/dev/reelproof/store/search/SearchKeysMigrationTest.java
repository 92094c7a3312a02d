package dev.reelproof.store.search;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.result.SampleResult;
import dev.reelproof.search.SearchKeys;
import dev.reelproof.store.DatabaseOwner;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What was kept before there was a search, or under keys of another rule, is found after the next start. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class SearchKeysMigrationTest {
    private static final String MARK = "from flyway_schema_history where description = 'search keys'";

    @Inject
    Flyway flyway;

    private static ValidatableResponse search(String q) {
        return given().queryParam("q", q).get("/api/v1/search").then().statusCode(200);
    }

    private static String ask(Statement statement, String question) throws SQLException {
        try (ResultSet answer = statement.executeQuery(question)) {
            return answer.next() ? answer.getString(1) : "";
        }
    }

    @Test
    void aNewRevisionOfTheRuleMakesAllKeysAnew() throws SQLException {
        String mark = UUID.randomUUID().toString().substring(0, 8);
        String reel = "M-" + mark;
        TestPlant.putProduct("HD6A-4P", "category-6a-cable", 4);
        TestPlant.putReel(
                        reel,
                        "{\"plant\": \"north\", \"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"},"
                                + " \"order\": \"MO-" + mark + "\", \"customer\": \"Moved " + mark + "\"}")
                .statusCode(201);
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        String number = given().post("/api/v1/reels/" + reel + "/certificates").path("number");
        try (Connection owner = DatabaseOwner.connect();
                Statement statement = owner.createStatement()) {
            assertEquals(
                    Integer.toString(SearchKeys.REVISION),
                    ask(statement, "select checksum " + MARK + " order by installed_rank desc limit 1"));
            statement.execute("truncate search_key");
            search(reel).body("hits", empty());
            statement.execute("update flyway_schema_history set checksum = 0 where description = 'search keys'");
            flyway.migrate();
            assertEquals("2", ask(statement, "select count(*) " + MARK));
        }
        search(reel).body("hits[0].name", equalTo(reel));
        search(number).body("hits[0].name", equalTo(number));
        search(mark).body("hits.name", hasItems(reel, "MO-" + mark, "Moved " + mark));
        search("hd6a 4p").body("hits.name", hasItems("HD6A-4P"));
    }
}
