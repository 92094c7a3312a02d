package dev.reelproof.api.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountChange;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.access.Token;
import dev.reelproof.access.TokenSecret;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.app.access.ManageAccounts;
import dev.reelproof.app.access.PasswordHashing;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import dev.reelproof.store.access.Tokens;
import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import java.time.Clock;
import java.time.Duration;
import java.util.Set;

/** Accounts, sessions and tokens for tests, made as by an administrator. */
public final class TestAccounts {
    private static final Caller ADMINISTRATOR =
            new Caller(Caller.Kind.PERSON, "test", null, Set.of(Role.ADMINISTRATOR), null);

    private TestAccounts() {}

    private static <T> T bean(Class<T> type) {
        return Arc.container().instance(type).get();
    }

    private static ManageAccounts accounts() {
        return new ManageAccounts(
                bean(Accounts.class),
                bean(Sessions.class),
                bean(PasswordHashing.class),
                bean(Settings.class),
                new Callers(() -> ADMINISTRATOR),
                bean(Plants.class),
                bean(AuditTrail.class),
                bean(Clock.class));
    }

    /** A new account. */
    public static Account make(String name, String displayName, Set<Role> roles, String password) {
        return QuarkusTransaction.requiringNew()
                .call(() -> accounts().make(AccountName.of(name), displayName, roles, Password.of(password)));
    }

    static Account change(String name, AccountChange change) {
        return QuarkusTransaction.requiringNew().call(() -> accounts().change(name, change, "test"));
    }

    /** The secret of a new session of an account. */
    static String session(String accountKey) {
        Clock clock = bean(Clock.class);
        return QuarkusTransaction.requiringNew().call(() -> bean(Sessions.class)
                .open(accountKey, clock.instant(), clock.instant().plus(Duration.ofHours(1))));
    }

    /**
     * The secret of a new token, of any roles.
     *
     * @param plant the one plant that it may act at; null for every plant
     */
    public static String token(String name, Set<Role> roles, String plant) {
        TokenSecret secret = TokenSecret.random();
        Token token = new Token(
                secret.tokenId(), name, roles, plant, false, bean(Clock.class).instant(), null, null);
        QuarkusTransaction.requiringNew().run(() -> bean(Tokens.class).insert(token, secret));
        return secret.text();
    }
}
