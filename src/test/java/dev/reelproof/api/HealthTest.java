package dev.reelproof.api;

import static io.restassured.RestAssured.get;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.junit.QuarkusTest;
import org.junit.jupiter.api.Test;

@QuarkusTest
class HealthTest {

    @Test
    void isReadyWhenTheDatabaseIsMigrated() {
        get("/q/health/ready").then().statusCode(200).body("status", equalTo("UP"));
    }
}
