package dev.reelproof.api.access;

import static io.restassured.RestAssured.given;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.Sessions;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.inject.spi.CDI;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** A person at a browser, in tests: an account of its own, a cookie, and the session's secret against forged requests. */
final class Visitor {
    static final String PASSWORD = "correct horse battery";

    final String name;
    final String cookie;
    final String csrf;

    private Visitor(String name, String cookie, String csrf) {
        this.name = name;
        this.cookie = cookie;
        this.csrf = csrf;
    }

    static String account(Role... roles) {
        return account("person " + UUID.randomUUID(), roles);
    }

    static String account(String name, Role... roles) {
        Accounts accounts = CDI.current().select(Accounts.class).get();
        QuarkusTransaction.requiringNew().call(() -> accounts.make(
                        "north", AccountName.of(name), "A Person", Set.of(roles), Password.of(PASSWORD))
                .orElseThrow());
        return name;
    }

    static Response signIn(String name, String password) {
        return given().contentType(ContentType.JSON)
                .body(Map.of("name", name, "password", password))
                .post("/api/v1/session");
    }

    static Visitor signedIn(Role... roles) {
        return signedIn(account(roles));
    }

    static Visitor signedIn(String account) {
        Response answer = signIn(account, PASSWORD);
        answer.then().statusCode(204);
        String cookie = answer.getCookie(Sessions.COOKIE);
        String csrf = with(cookie)
                .get("/api/v1/session")
                .then()
                .statusCode(200)
                .extract()
                .path("csrf");
        return new Visitor(account, cookie, csrf);
    }

    static RequestSpecification with(String cookie) {
        return given().cookie(Sessions.COOKIE, cookie).contentType(ContentType.JSON);
    }

    /** A request by a page of ours. */
    RequestSpecification asks() {
        return with(cookie).header(CrossSiteRequestFilter.HEADER, csrf);
    }
}
