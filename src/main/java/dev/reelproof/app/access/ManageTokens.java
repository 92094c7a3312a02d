package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Role;
import dev.reelproof.access.Token;
import dev.reelproof.access.TokenSecret;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Tokens;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Makes and revokes the tokens of stations and scripts. A secret is shown once, when its token is made. */
@ApplicationScoped
public class ManageTokens {
    private final Tokens tokens;
    private final Callers callers;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    public ManageTokens(Tokens tokens, Callers callers, Plants plants, AuditTrail audit, Clock clock) {
        this.tokens = tokens;
        this.callers = callers;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /** A token and its secret, which is not to be had again. */
    public record Made(Token token, String secret) {
        @Override
        public String toString() {
            return token.toString();
        }
    }

    /**
     * Refuses a caller who may not manage tokens.
     *
     * @return the caller
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     */
    public Caller requirePermission() {
        Caller caller = callers.current();
        caller.require(Action.MANAGE_USERS);
        return caller;
    }

    /** The tokens that the caller manages, newest first, those that ended too. */
    public List<Token> all() {
        Caller caller = requirePermission();
        return tokens.all().stream().filter(token -> token.isManagedBy(caller)).toList();
    }

    /**
     * Makes a token.
     *
     * @param plantNamed the one plant that it may act at; the caller's, else the home plant, when none is named
     * @param expires when it ends, if it does
     * @throws IntakeException when the plant is not served here, or the end lies in the past
     */
    @Transactional
    public Made make(String name, Role role, @Nullable String plantNamed, @Nullable Instant expires) {
        requirePermission();
        if (!Token.mayEnd(expires, clock.instant())) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT, "/expires", "lies in the past; a token ends in the future or never");
        }
        String plant = plants.named(plantNamed, "/plant");
        TokenSecret secret = TokenSecret.random();
        Token token = new Token(secret.tokenId(), name, Set.of(role), plant, false, clock.instant(), expires, null);
        keep(token, secret, plant);
        return new Made(token, secret.text());
    }

    /** Makes the demo's token, of all roles at every plant. */
    @Transactional(Transactional.TxType.MANDATORY)
    Made makeOfDemo(String name) {
        TokenSecret secret = TokenSecret.random();
        Token token = new Token(secret.tokenId(), name, Set.of(Role.values()), null, true, clock.instant(), null, null);
        keep(token, secret, plants.home());
        return new Made(token, secret.text());
    }

    private void keep(Token token, TokenSecret secret, String trail) {
        tokens.insert(token, secret);
        audit.write(
                trail,
                "token-made",
                token.subject(),
                null,
                Map.of(
                        "name",
                        token.name(),
                        "roles",
                        Role.joined(token.roles()),
                        "plant",
                        token.plant() == null ? "every" : token.plant(),
                        "expires",
                        token.expires() == null ? "never" : token.expires().toString()));
    }

    /**
     * Revokes a token, at once and for good; one that was revoked stays so.
     *
     * @throws NothingThereException when the caller manages none of this id
     */
    @Transactional
    public void revoke(String id, String reason) {
        Caller caller = requirePermission();
        Token token = tokens.byId(id)
                .filter(found -> found.isManagedBy(caller))
                .orElseThrow(() -> new NothingThereException("There is no token '" + id + "'."));
        if (tokens.revoke(token, clock.instant())) {
            String trail = token.plant() == null ? plants.home() : token.plant();
            audit.write(trail, "token-revoked", token.subject(), reason, Map.of("name", token.name()));
        }
    }
}
