package dev.reelproof.api.access;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;

import dev.reelproof.access.Role;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.restassured.specification.RequestSpecification;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;

/** In tests alone: believes what a request says of its caller, in the header X-Test-Caller: kind;name, percent-encoded;plant;role,role. */
@ApplicationScoped
public class TestSignIn implements HttpAuthenticationMechanism {
    private static final String HEADER = "X-Test-Caller";
    private static final int UNAUTHORIZED = 401;

    /** A request by a person of these roles. */
    public static RequestSpecification person(String name, Role... roles) {
        return caller("person", name, "", roles);
    }

    /** A request with a token of these roles. */
    public static RequestSpecification token(String name, Role... roles) {
        return caller("token", name, "", roles);
    }

    /** A request by a caller who may act at one plant alone. */
    public static RequestSpecification personOf(String plant, String name, Role... roles) {
        return caller("person", name, plant, roles);
    }

    private static RequestSpecification caller(String kind, String name, String plant, Role... roles) {
        String words = Arrays.stream(roles).map(Role::word).collect(Collectors.joining(","));
        return given().header(HEADER, String.join(";", kind, URLEncoder.encode(name, UTF_8), plant, words));
    }

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        String header = context.request().getHeader(HEADER);
        if (header == null) {
            return Uni.createFrom().nullItem();
        }
        String[] parts = header.split(";", -1);
        QuarkusSecurityIdentity.Builder identity = QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(URLDecoder.decode(parts[1], UTF_8)))
                .addAttribute(CallerIdentity.KIND, parts[0])
                .addRoles(Set.of(parts[3].split(",")));
        if (!parts[2].isEmpty()) {
            identity.addAttribute(CallerIdentity.PLANT, parts[2]);
        }
        return Uni.createFrom().item(identity.build());
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return Uni.createFrom().item(new ChallengeData(UNAUTHORIZED));
    }
}
