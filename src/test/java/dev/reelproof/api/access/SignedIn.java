package dev.reelproof.api.access;

import dev.reelproof.access.Role;
import io.restassured.RestAssured;
import io.restassured.filter.Filter;
import io.restassured.specification.RequestSpecification;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** Sends a token of all roles at every plant with each request of a test that names no caller; stands after @QuarkusTest. */
public final class SignedIn implements BeforeEachCallback, AfterEachCallback {
    private static final String AUTHORIZATION = "Authorization";
    private static final String TEST_CALLER = "X-Test-Caller";

    private static String authorization;

    /** The header's value, for requests by other clients. */
    public static String authorization() {
        return authorization;
    }

    /** A new token of these roles, as the header's value. */
    public static String authorization(String plant, Role... roles) {
        return "Bearer " + TestAccounts.token("test", Set.of(roles), plant);
    }

    /** A request by nobody. */
    public static RequestSpecification nobody() {
        return RestAssured.given().noFilters();
    }

    @Override
    public void beforeEach(ExtensionContext context) {
        authorization = "Bearer " + TestAccounts.token("test", EnumSet.allOf(Role.class), null);
        Filter filter = (request, response, chain) -> {
            if (!request.getHeaders().hasHeaderWithName(AUTHORIZATION)
                    && !request.getHeaders().hasHeaderWithName(TEST_CALLER)) {
                request.header(AUTHORIZATION, authorization);
            }
            return chain.next(request, response);
        };
        RestAssured.filters(filter);
    }

    @Override
    public void afterEach(ExtensionContext context) {
        RestAssured.replaceFiltersWith(List.of());
    }
}
