package dev.reelproof.api.access;

import static io.restassured.RestAssured.given;

import dev.reelproof.access.Role;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** A person at a browser, in tests: an account of its own, a cookie, and the session's secret against forged requests. */
final class TestPerson {
    static final String PASSWORD = "correct horse battery";

    final String name;
    final String cookie;
    final String csrf;

    private TestPerson(String name, String cookie, String csrf) {
        this.name = name;
        this.cookie = cookie;
        this.csrf = csrf;
    }

    static String account(Role... roles) {
        return account("person " + UUID.randomUUID(), roles);
    }

    static String account(String name, Role... roles) {
        TestAccounts.make(name, "A Person", Set.of(roles), PASSWORD);
        return name;
    }

    static Response signIn(String name, String password) {
        return given().contentType(ContentType.JSON)
                .body(Map.of("name", name, "password", password))
                .post("/api/v1/session");
    }

    static TestPerson signedIn(Role... roles) {
        return signedIn(account(roles));
    }

    static TestPerson signedIn(String account) {
        Response answer = signIn(account, PASSWORD);
        answer.then().statusCode(204);
        String cookie = answer.getCookie(SessionCookie.NAME);
        String csrf = with(cookie)
                .get("/api/v1/session")
                .then()
                .statusCode(200)
                .extract()
                .path("csrf");
        return new TestPerson(account, cookie, csrf);
    }

    static RequestSpecification with(String cookie) {
        return given().cookie(SessionCookie.NAME, cookie).contentType(ContentType.JSON);
    }

    /** A request by a page of ours. */
    RequestSpecification asks() {
        return with(cookie).header(CrossSiteRequestFilter.HEADER, csrf);
    }
}
