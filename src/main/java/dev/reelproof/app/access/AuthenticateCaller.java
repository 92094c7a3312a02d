package dev.reelproof.app.access;

import dev.reelproof.access.Token;
import dev.reelproof.access.TokenSecret;
import dev.reelproof.access.WebSession;
import dev.reelproof.app.Settings;
import dev.reelproof.store.access.Sessions;
import dev.reelproof.store.access.Tokens;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;

/** Finds out whose secret a request brings: that of a token, or that of a session. */
@ApplicationScoped
public class AuthenticateCaller {
    private final Sessions sessions;
    private final Tokens tokens;
    private final Settings settings;
    private final AccessSettings access;
    private final CompanySettings company;
    private final Clock clock;

    public AuthenticateCaller(
            Sessions sessions,
            Tokens tokens,
            Settings settings,
            AccessSettings access,
            CompanySettings company,
            Clock clock) {
        this.sessions = sessions;
        this.tokens = tokens;
        this.settings = settings;
        this.access = access;
        this.company = company;
        this.clock = clock;
    }

    /** The token of a secret; empty when there is none, or it may not be used. */
    public Optional<Token> byToken(String secret) {
        return TokenSecret.read(secret)
                .flatMap(tokens::find)
                .filter(token -> token.isValid(clock.instant(), settings.demo()));
    }

    /** The session of a secret; empty when there is none, or it may not be used. It counts as used now. */
    @Transactional
    public Optional<WebSession> bySession(String secret) {
        Instant now = clock.instant();
        Optional<WebSession> found = sessions.find(secret)
                .filter(session -> session.isValid(
                        now,
                        access.session().idle(),
                        settings.demo(),
                        company.oidc().on()));
        found.filter(session -> session.isSeenAnew(now, access.session().idle()))
                .ifPresent(session -> sessions.seen(session, now));
        return found;
    }
}
