package dev.reelproof.api.access;

import dev.reelproof.access.Caller;
import dev.reelproof.access.Role;
import dev.reelproof.access.Token;
import dev.reelproof.access.TokenSecret;
import dev.reelproof.access.WebSession;
import dev.reelproof.app.access.AuthenticateCaller;
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

/** Authenticates by a token in the header Authorization, else by a session's cookie. Roles are read anew at every request. */
@Singleton
class SessionAndTokenMechanism
        implements HttpAuthenticationMechanism, IdentityProvider<SessionAndTokenMechanism.Credential> {
    private static final String BEARER = "Bearer ";
    private static final int UNAUTHORIZED = 401;

    private final AuthenticateCaller authenticate;

    SessionAndTokenMechanism(AuthenticateCaller authenticate) {
        this.authenticate = authenticate;
    }

    /** The secret that a request brings. */
    static final class Credential extends BaseAuthenticationRequest {
        private final boolean isToken;
        private final String secret;

        private Credential(boolean isToken, String secret) {
            this.isToken = isToken;
            this.secret = secret;
        }
    }

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager providers) {
        String authorization = context.request().getHeader(HttpHeaders.AUTHORIZATION);
        if (authorization != null) {
            // A request that brings a token is not authenticated by its cookie instead.
            return authorization.startsWith(BEARER + TokenSecret.PREFIX)
                    ? providers.authenticate(new Credential(
                            true, authorization.substring(BEARER.length()).strip()))
                    : Uni.createFrom().nullItem();
        }
        Cookie cookie = context.request().getCookie(SessionCookie.NAME);
        return cookie == null
                ? Uni.createFrom().nullItem()
                // A session that ended is nobody signed in, and no error of the browser that still sends its cookie.
                : providers
                        .authenticate(new Credential(false, cookie.getValue()))
                        .onFailure(AuthenticationFailedException.class)
                        .recoverWithNull();
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return Uni.createFrom().item(new ChallengeData(UNAUTHORIZED));
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(Credential.class);
    }

    @Override
    public Class<Credential> getRequestType() {
        return Credential.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(Credential credential, AuthenticationRequestContext context) {
        return context.runBlocking(
                () -> credential.isToken ? byToken(credential.secret) : bySession(credential.secret));
    }

    private SecurityIdentity byToken(String secret) {
        Token token = authenticate.byToken(secret).orElseThrow(AuthenticationFailedException::new);
        QuarkusSecurityIdentity.Builder identity = identity(token.name(), token.name(), token.roles(), token.demo())
                .addAttribute(CallerIdentity.KIND, Caller.Kind.TOKEN.word());
        if (token.plant() != null) {
            identity.addAttribute(CallerIdentity.PLANT, token.plant());
        }
        return identity.build();
    }

    private SecurityIdentity bySession(String secret) {
        WebSession session = authenticate.bySession(secret).orElseThrow(AuthenticationFailedException::new);
        return identity(session.name(), session.displayName(), session.roles(), session.demo())
                .addAttribute(CallerIdentity.KIND, Caller.Kind.PERSON.word())
                .addAttribute(CallerIdentity.SESSION, session.digest())
                .addAttribute(CallerIdentity.CSRF, session.csrf())
                .build();
    }

    private static QuarkusSecurityIdentity.Builder identity(
            String name, String displayName, Set<Role> roles, boolean demo) {
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(name))
                .addRoles(roles.stream().map(Role::word).collect(Collectors.toSet()))
                .addAttribute(CallerIdentity.DISPLAY_NAME, displayName)
                .addAttribute(CallerIdentity.DEMO, demo);
    }
}
