package dev.reelproof.app.access;

import dev.reelproof.access.AccessSettings;
import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Password;
import dev.reelproof.access.PasswordHashing;
import dev.reelproof.digest.Sha256;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.Accounts.Login;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import dev.reelproof.store.access.SignInThrottle;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.security.ForbiddenException;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/** Signing in by name and password, and all else where a password could be guessed. */
@Singleton
public class SignIn {
    private static final String NOBODY = "account/" + Caller.UNKNOWN;

    private final Accounts accounts;
    private final Sessions sessions;
    private final SignInThrottle guesses;
    private final PasswordHashing hashing;
    private final AccessSettings settings;
    private final AuditTrail audit;
    private final Clock clock;

    public SignIn(
            Accounts accounts,
            Sessions sessions,
            SignInThrottle guesses,
            PasswordHashing hashing,
            AccessSettings settings,
            AuditTrail audit,
            Clock clock) {
        this.accounts = accounts;
        this.sessions = sessions;
        this.guesses = guesses;
        this.hashing = hashing;
        this.settings = settings;
        this.audit = audit;
        this.clock = clock;
    }

    /** What came of an attempt. */
    public sealed interface Outcome {}

    /**
     * It was right.
     *
     * @param secret of the session opened; empty where none was asked for
     */
    public record Right(String secret) implements Outcome {
        @Override
        public String toString() {
            return "Right";
        }
    }

    /** It was wrong; whether name, password or neither is not told. */
    public record Wrong() implements Outcome {}

    /** Too many were wrong: this one was not looked at. */
    public record Later(Duration left) implements Outcome {}

    /**
     * Signs in.
     *
     * @param trail the plant whose audit trail tells of it
     * @param from the network address
     * @param brought the secret that the browser brought along, whose session ends; null when it brought none
     */
    public Outcome attempt(String trail, String name, String password, String from, String brought) {
        Instant now = clock.instant();
        String key = AccountName.fold(name);
        Optional<Duration> wait = countBoth(key, from, now);
        if (wait.isPresent()) {
            return new Later(wait.get());
        }
        Optional<Login> login = accounts.login(key);
        boolean right = hashing.matches(password, login.map(Login::passwordHash).orElse(null))
                && login.map(Login::account).filter(this::maySignIn).isPresent();
        return QuarkusTransaction.joiningExisting()
                .call(() -> right
                        ? opened(trail, login.orElseThrow(), from, brought, now)
                        : refused(trail, login.map(Login::account), from));
    }

    private Outcome opened(String trail, Login login, String from, String brought, Instant counted) {
        guesses.forgive(login.key(), from, counted);
        if (brought != null) {
            sessions.end(Sha256.hex(brought));
        }
        String secret = sessions.open(login.key());
        Account account = login.account();
        Caller person = new Caller(Caller.Kind.PERSON, account.name(), null, account.roles(), from);
        audit.write(person, trail, "signed-in", Accounts.subject(account), null, Map.of());
        return new Right(secret);
    }

    private Outcome refused(String trail, Optional<Account> account, String from) {
        audit.write(
                Caller.nobody(from),
                trail,
                "sign-in-failed",
                account.map(Accounts::subject).orElse(NOBODY),
                null,
                Map.of());
        return new Wrong();
    }

    /** Signs out: ends the session of the current caller, who is told of in the audit trail. */
    public void out(String trail, Caller caller, String session) {
        QuarkusTransaction.joiningExisting().run(() -> {
            sessions.end(session);
            audit.write(caller, trail, "signed-out", "account/" + caller.name(), null, Map.of());
        });
    }

    /**
     * Changes the caller's own password; its other sessions end.
     *
     * @param current as it is now, to show that it is the person and not only the person's browser
     * @param session the caller's own
     */
    public Outcome changePassword(String trail, Caller caller, String current, Password password, String session) {
        Instant now = clock.instant();
        String key = AccountName.fold(caller.name());
        Login login = accounts.login(key)
                .orElseThrow(() -> new ForbiddenException(
                        "You signed in with your company account; its password is changed at your company's identity"
                                + " provider."));
        Optional<Duration> wait = countBoth(key, caller.from(), now);
        if (wait.isPresent()) {
            return new Later(wait.get());
        }
        if (!hashing.matches(current, login.passwordHash())) {
            QuarkusTransaction.joiningExisting()
                    .run(() -> audit.write(
                            caller,
                            trail,
                            "password-change-failed",
                            Accounts.subject(login.account()),
                            null,
                            Map.of()));
            return new Wrong();
        }
        QuarkusTransaction.joiningExisting().run(() -> {
            guesses.forgive(key, caller.from(), now);
            accounts.changePassword(trail, login, password, session);
        });
        return new Right("");
    }

    private boolean maySignIn(Account account) {
        return account.active() && (!account.demo() || settings.demo());
    }

    private Optional<Duration> countBoth(String key, String from, Instant now) {
        return QuarkusTransaction.joiningExisting()
                .call(() -> guesses.countAddress(from, now).or(() -> guesses.countName(key, now)));
    }
}
