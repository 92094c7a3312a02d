package dev.reelproof.api.access;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.smallrye.jwt.build.Jwt;
import io.smallrye.jwt.build.JwtClaimsBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.interfaces.RSAPublicKey;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/**
 * An identity provider for tests: discovery, keys, authorization with PKCE, tokens. Who signs in is what the test adds to the
 * authorization's address, in place of a form: as, subject, groups, and a flaw of the token that is given out.
 */
public final class TestProvider implements QuarkusTestResourceLifecycleManager {
    static final String CLIENT = "reelproof";
    private static final String SECRET = "a secret of the tests, of forty characters";
    private static final int KEY_BITS = 2048;
    private static final Duration LASTS = Duration.ofMinutes(5);

    private final Map<String, Map<String, String>> given = new ConcurrentHashMap<>();
    private HttpServer server;
    private KeyPair published;
    private KeyPair unknown;
    private String issuer;

    @Override
    public Map<String, String> start() {
        try {
            KeyPairGenerator keys = KeyPairGenerator.getInstance("RSA");
            keys.initialize(KEY_BITS);
            published = keys.generateKeyPair();
            unknown = keys.generateKeyPair();
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
        issuer = "http://127.0.0.1:" + server.getAddress().getPort();
        server.createContext(
                "/.well-known/openid-configuration",
                exchange -> answer(
                        exchange,
                        """
                        {"issuer":"%1$s","authorization_endpoint":"%1$s/authorize","token_endpoint":"%1$s/token",
                        "jwks_uri":"%1$s/keys","response_types_supported":["code"],"subject_types_supported":["public"],
                        "id_token_signing_alg_values_supported":["RS256"]}"""
                                .formatted(issuer)));
        server.createContext("/keys", exchange -> answer(exchange, keys()));
        server.createContext("/authorize", this::authorize);
        server.createContext("/token", this::token);
        server.start();
        return Map.of(
                "quarkus.oidc.auth-server-url", issuer,
                "quarkus.oidc.client-id", CLIENT,
                "quarkus.oidc.credentials.secret", SECRET);
    }

    @Override
    public void stop() {
        if (server != null) {
            server.stop(0);
        }
    }

    private void authorize(HttpExchange exchange) throws IOException {
        Map<String, String> asked = parameters(exchange.getRequestURI().getRawQuery());
        String back = asked.get("redirect_uri") + "?state=" + asked.get("state");
        if ("denied".equals(asked.get("flaw"))) {
            redirect(exchange, back + "&error=access_denied");
            return;
        }
        String code = UUID.randomUUID().toString();
        given.put(code, asked);
        redirect(exchange, back + "&code=" + code);
    }

    /** Gives a token for a code once, to the client that knows its secret and what the code was asked for with. */
    private void token(HttpExchange exchange) throws IOException {
        String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        Map<String, String> sent = parameters(body);
        Map<String, String> asked = given.remove(sent.getOrDefault("code", ""));
        String basic = "Basic " + base64(Base64.getEncoder(), (CLIENT + ":" + SECRET).getBytes(StandardCharsets.UTF_8));
        if (asked == null
                || !basic.equals(exchange.getRequestHeaders().getFirst("Authorization"))
                || !asked.get("code_challenge").equals(challenge(sent.getOrDefault("code_verifier", "")))
                || !asked.get("redirect_uri").equals(sent.get("redirect_uri"))) {
            exchange.sendResponseHeaders(400, -1);
            exchange.close();
            return;
        }
        String flaw = asked.getOrDefault("flaw", "");
        Instant now = Instant.now();
        Instant issued = flaw.equals("expired") ? now.minus(LASTS).minus(LASTS) : now;
        JwtClaimsBuilder claims = Jwt.issuer(flaw.equals("issuer") ? "http://127.0.0.1:1" : issuer)
                .subject(asked.get("subject"))
                .audience(flaw.equals("audience") ? "another" : CLIENT)
                .issuedAt(issued)
                .expiresAt(issued.plus(LASTS))
                .claim("nonce", flaw.equals("nonce") ? "another" : asked.get("nonce"))
                .preferredUserName(asked.get("as"))
                .claim("name", "Someone at the company")
                .groups(groups(asked.getOrDefault("groups", "")));
        String token = claims.jws().keyId("1").sign((flaw.equals("signature") ? unknown : published).getPrivate());
        answer(
                exchange,
                """
                {"id_token":"%1$s","access_token":"%1$s","token_type":"Bearer","expires_in":300}"""
                        .formatted(token));
    }

    private static Set<String> groups(String joined) {
        Set<String> groups = new TreeSet<>(Arrays.asList(joined.split(",")));
        groups.remove("");
        return groups;
    }

    private String keys() {
        RSAPublicKey key = (RSAPublicKey) published.getPublic();
        return """
                {"keys":[{"kty":"RSA","kid":"1","use":"sig","alg":"RS256","n":"%s","e":"%s"}]}"""
                .formatted(
                        base64(
                                Base64.getUrlEncoder().withoutPadding(),
                                unsigned(key.getModulus().toByteArray())),
                        base64(
                                Base64.getUrlEncoder().withoutPadding(),
                                unsigned(key.getPublicExponent().toByteArray())));
    }

    private static byte[] unsigned(byte[] number) {
        return number[0] == 0 ? Arrays.copyOfRange(number, 1, number.length) : number;
    }

    /** RFC 7636, 4.6 (from memory). */
    private static String challenge(String verifier) {
        try {
            return base64(
                    Base64.getUrlEncoder().withoutPadding(),
                    MessageDigest.getInstance("SHA-256").digest(verifier.getBytes(StandardCharsets.US_ASCII)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String base64(Base64.Encoder encoder, byte[] bytes) {
        return encoder.encodeToString(bytes);
    }

    private static Map<String, String> parameters(String query) {
        Map<String, String> parameters = new HashMap<>();
        for (String pair : query.split("&")) {
            String[] parts = pair.split("=", 2);
            parameters.put(parts[0], URLDecoder.decode(parts.length == 2 ? parts[1] : "", StandardCharsets.UTF_8));
        }
        return parameters;
    }

    private static void redirect(HttpExchange exchange, String to) throws IOException {
        exchange.getResponseHeaders().set("Location", to);
        exchange.sendResponseHeaders(302, -1);
        exchange.close();
    }

    private static void answer(HttpExchange exchange, String json) throws IOException {
        byte[] body = json.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", "application/json");
        exchange.sendResponseHeaders(200, body.length);
        exchange.getResponseBody().write(body);
        exchange.close();
    }
}
