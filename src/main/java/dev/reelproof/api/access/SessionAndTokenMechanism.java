package dev.reelproof.api.access;

import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import dev.reelproof.access.Token;
import dev.reelproof.store.access.Sessions;
import dev.reelproof.store.access.Tokens;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.identity.request.BaseAuthenticationRequest;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.smallrye.mutiny.Uni;
import io.vertx.core.http.Cookie;
import io.vertx.core.http.HttpHeaders;
import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.util.Set;
import java.util.stream.Collectors;

/** Lets in by a token in the header Authorization, else by a session's cookie. Roles are read anew at every request. */
@Singleton
class SessionAndTokenMechanism implements HttpAuthenticationMechanism, IdentityProvider<SessionAndTokenMechanism.Key> {
    private static final String BEARER = "Bearer ";
    private static final int UNAUTHORIZED = 401;

    private final Sessions sessions;
    private final Tokens tokens;

    SessionAndTokenMechanism(Sessions sessions, Tokens tokens) {
        this.sessions = sessions;
        this.tokens = tokens;
    }

    /** What somebody holds out to be let in. */
    static final class Key extends BaseAuthenticationRequest {
        private final boolean isToken;
        private final String secret;

        private Key(boolean isToken, String secret) {
            this.isToken = isToken;
            this.secret = secret;
        }
    }

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        String authorization = context.request().getHeader(HttpHeaders.AUTHORIZATION);
        if (authorization != null) {
            // Whoever holds out a token is not let in by a cookie instead.
            return authorization.startsWith(BEARER + Tokens.PREFIX)
                    ? providers.authenticate(new Key(
                            true, authorization.substring(BEARER.length()).strip()))
                    : Uni.createFrom().nullItem();
        }
        Cookie cookie = context.request().getCookie(Sessions.COOKIE);
        return cookie == null
                ? Uni.createFrom().nullItem()
                // A session that ended is nobody signed in, and no error of the browser that still sends its cookie.
                : providers
                        .authenticate(new Key(false, cookie.getValue()))
                        .onFailure(AuthenticationFailedException.class)
                        .recoverWithNull();
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return Uni.createFrom().item(new ChallengeData(UNAUTHORIZED));
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(Key.class);
    }

    @Override
    public Class<Key> getRequestType() {
        return Key.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(Key key, AuthenticationRequestContext context) {
        return context.runBlocking(() -> key.isToken ? byToken(key.secret) : bySession(key.secret));
    }

    private SecurityIdentity byToken(String secret) {
        Token token = tokens.find(secret).orElseThrow(AuthenticationFailedException::new);
        QuarkusSecurityIdentity.Builder identity = identity(token.name(), token.name(), token.roles(), token.demo())
                .addAttribute(Callers.KIND, Caller.Kind.TOKEN.word());
        if (token.plant() != null) {
            identity.addAttribute(Callers.PLANT, token.plant());
        }
        return identity.build();
    }

    private SecurityIdentity bySession(String secret) {
        Sessions.Found session = sessions.find(secret).orElseThrow(AuthenticationFailedException::new);
        return identity(session.name(), session.displayName(), session.roles(), session.demo())
                .addAttribute(Callers.KIND, Caller.Kind.PERSON.word())
                .addAttribute(Callers.SESSION, session.digest())
                .addAttribute(Callers.CSRF, session.csrf())
                .build();
    }

    private static QuarkusSecurityIdentity.Builder identity(
            String name, String displayName, Set<Role> roles, boolean demo) {
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(name))
                .addRoles(roles.stream().map(Role::word).collect(Collectors.toSet()))
                .addAttribute(Callers.DISPLAY_NAME, displayName)
                .addAttribute(Callers.DEMO, demo);
    }
}
