package dev.reelproof.api.access;

import static dev.reelproof.api.access.TestPerson.PASSWORD;
import static dev.reelproof.api.access.TestPerson.signIn;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.hibernate.Session;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class AccountRoutesTest {
    @Inject
    TestClock clock;

    @Inject
    Session session;

    private TestPerson administrator;

    @BeforeEach
    void bringInAnAdministrator() {
        clock.freshMinute();
        administrator = TestPerson.signedIn(Role.ADMINISTRATOR);
    }

    @AfterEach
    void timeGoesOn() {
        clock.run();
    }

    private static Map<String, Object> account(String name) {
        return new HashMap<>(
                Map.of("name", name, "displayName", "A Person", "roles", List.of("technician"), "password", PASSWORD));
    }

    private ValidatableResponse make(Map<String, Object> account) {
        return administrator.asks().body(account).post("/api/v1/accounts").then();
    }

    private ValidatableResponse change(String name, Map<String, Object> change) {
        return administrator
                .asks()
                .pathParam("name", name)
                .body(change)
                .patch("/api/v1/accounts/{name}")
                .then();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "فاطمة الزهراء",
                "王小明",
                "Þórdís O'Brien-Ñuñez",
                "Ιωάννης",
                "👩‍🔧 at bay 3",
                "नमस्ते",
                "می‌خواهم",
                "a/b?c#d%2F",
                "' or 1=1 --"
            })
    void namesOfAnyScriptSignIn(String start) {
        String name = start + " " + UUID.randomUUID().toString().substring(0, 8);
        make(account(name)).statusCode(201).body("name", equalTo(name));
        TestPerson person = TestPerson.signedIn(name);
        person.asks().get("/api/v1/session").then().body("name", equalTo(name));
        change(name, Map.of("displayName", start, "reason", "test")).statusCode(200);
        signIn(" " + name.toUpperCase() + " ", PASSWORD).then().statusCode(204);
    }

    @Test
    void namesThatReadAlikeAreOneAccount() {
        String mark = UUID.randomUUID().toString().substring(0, 8);
        make(account("José Straße ﬁn " + mark)).statusCode(201);
        for (String alike : List.of("JOSÉ STRASSE FIN ", "Jose\u0301 straße ﬁn ", "josé strasse ｆｉｎ ")) {
            make(account(alike + mark)).statusCode(409).contentType("application/problem+json");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "admin\u202Enimda",
                "\u2066x",
                "a\u200Fb",
                "a\u200Bb",
                "a\u0000b",
                "a\nb",
                "\u200D",
                "   ",
                "a\uD800",
                "aaaaaaaaaabbbbbbbbbbccccccccccddddddddddeeeeeeeeeeffffffffffggggg"
            })
    void namesThatDeceiveAreRefused(String name) {
        make(account(name)).statusCode(422).body("errors[0].where", equalTo("/name"));
        Map<String, Object> shown = account("x" + UUID.randomUUID());
        if (name.length() < 10 && !name.equals("\u200D") || name.contains("\u202E")) {
            shown.put("displayName", name);
            make(shown).statusCode(422).body("errors[0].where", equalTo("/displayName"));
        }
    }

    @Test
    void sixtyFourCharactersOutsideTheBasicPlaneAreAName() {
        make(account("😀".repeat(56) + UUID.randomUUID().toString().substring(0, 8)))
                .statusCode(201);
        make(account("😀".repeat(65))).statusCode(422);
    }

    @Test
    void passwordsAreNeitherShortNorCut() {
        Map<String, Object> account = account("p " + UUID.randomUUID());
        account.put("password", "x".repeat(73));
        make(account)
                .statusCode(422)
                .body("errors[0].where", equalTo("/password"))
                .body("errors[0].message", containsString("73"));
        account.put("password", "é".repeat(37));
        make(account).statusCode(422).body("errors[0].message", containsString("74"));
        account.put("password", "x".repeat(11));
        make(account).statusCode(422);
        account.put("password", "é".repeat(36));
        make(account).statusCode(201);
        signIn((String) account.get("name"), "é".repeat(36)).then().statusCode(204);
        signIn((String) account.get("name"), "e\u0301".repeat(36)).then().statusCode(204);
        signIn((String) account.get("name"), "é".repeat(36) + "x").then().statusCode(401);
    }

    @Test
    void whatAnAccountCannotBe() {
        make(Map.of("name", "x")).statusCode(422);
        Map<String, Object> account = account("r " + UUID.randomUUID());
        account.put("roles", List.of("king"));
        make(account).statusCode(422).body("errors[0].message", containsString("quality-manager"));
        account.put("roles", List.of());
        make(account).statusCode(422).body("errors[0].where", equalTo("/roles"));
        change(administrator.name, Map.of("displayName", "X"))
                .statusCode(422)
                .body("errors[0].where", equalTo("/reason"));
        change("nobody " + UUID.randomUUID(), Map.of("active", false, "reason", "r"))
                .statusCode(404);
    }

    @Test
    void accountsAreListedWithoutTheirPasswords() {
        String answer = administrator
                .asks()
                .get("/api/v1/accounts")
                .then()
                .statusCode(200)
                .body("accounts.name", hasItem(administrator.name))
                .header("Cache-Control", "no-store")
                .extract()
                .asString();
        assertEquals(-1, answer.indexOf("$2"), "a bcrypt hash");
        assertEquals(-1, answer.indexOf("password"));
    }

    @Test
    void onlyAnAdministratorOfEveryPlantManagesAccounts() {
        for (Role role : Role.values()) {
            if (role != Role.ADMINISTRATOR) {
                TestPerson.signedIn(role).asks().get("/api/v1/accounts").then().statusCode(403);
            }
        }
        io.restassured.RestAssured.given()
                .header("Authorization", SignedIn.authorization("north", Role.ADMINISTRATOR))
                .get("/api/v1/accounts")
                .then()
                .statusCode(403);
    }

    @Test
    void theLastAdministratorStays() {
        QuarkusTransaction.requiringNew()
                .run(() -> session.createNativeMutationQuery("update account set active = false where key <> :key")
                        .setParameter("key", AccountName.fold(administrator.name))
                        .executeUpdate());
        change(administrator.name, Map.of("active", false, "reason", "leaves")).statusCode(409);
        change(administrator.name, Map.of("roles", List.of("technician"), "reason", "moves"))
                .statusCode(409)
                .contentType("application/problem+json")
                .body("detail", containsString("last active administrator"));
        administrator.asks().get("/api/v1/session").then().statusCode(200).body("roles", hasItem("administrator"));
        String second = TestPerson.account(Role.ADMINISTRATOR);
        change(administrator.name, Map.of("roles", List.of("technician"), "reason", "moves"))
                .statusCode(200)
                .body("roles", not(hasItem("administrator")));
        TestPerson.signedIn(second).asks().get("/api/v1/accounts").then().statusCode(200);
    }

    @Test
    void theHashIsOfTheCostConfigured() {
        String hash = QuarkusTransaction.requiringNew().call(() -> session.createNativeQuery(
                        "select password_hash from account where key = :key", String.class)
                .setParameter("key", AccountName.fold(administrator.name))
                .getSingleResult());
        assertEquals("$2a$04$", hash.substring(0, 7));
        assertThrows(IllegalArgumentException.class, () -> Password.of("short"));
    }
}
