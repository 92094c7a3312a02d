package dev.reelproof.app.access;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Password;
import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.app.Plants;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.Accounts.Login;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import dev.reelproof.store.access.SignInThrottle;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/** Changes the caller's own password. */
@Singleton
public class ChangePassword {
    private final Accounts accounts;
    private final Sessions sessions;
    private final CountAttempt attempts;
    private final SignInThrottle throttle;
    private final PasswordHashing hashing;
    private final Callers callers;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    ChangePassword(
            Accounts accounts,
            Sessions sessions,
            CountAttempt attempts,
            SignInThrottle throttle,
            PasswordHashing hashing,
            Callers callers,
            Plants plants,
            AuditTrail audit,
            Clock clock) {
        this.accounts = accounts;
        this.sessions = sessions;
        this.attempts = attempts;
        this.throttle = throttle;
        this.hashing = hashing;
        this.callers = callers;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Changes the password, and ends the caller's other sessions. No transaction is open while a password is hashed.
     *
     * @param present the password as it is now: it shows that this is the person, and not somebody else at the person's browser
     * @param session the digest of the secret of the caller's own session
     * @throws PermissionDeniedException when the person has no password here
     */
    public Attempt change(String present, Password next, String session) {
        Instant now = clock.instant();
        Caller caller = callers.current();
        String key = AccountName.fold(caller.name());
        Login login = accounts.login(key)
                .orElseThrow(() -> new PermissionDeniedException(
                        "You signed in with your company account; its password is changed at your company's identity"
                                + " provider."));
        Optional<Duration> wait = attempts.ofName(key, caller.address(), now);
        if (wait.isPresent()) {
            return new Attempt.TooMany(wait.get());
        }
        if (!hashing.matches(present, login.passwordHash())) {
            QuarkusTransaction.joiningExisting().run(() -> write("password-change-failed", login));
            return new Attempt.Wrong();
        }
        String hash = hashing.hash(next);
        QuarkusTransaction.joiningExisting().run(() -> {
            throttle.forgive(key, caller.address(), now);
            accounts.lock();
            accounts.update(accounts.login(key).orElseThrow().account(), hash);
            sessions.endAllOf(key, session, now);
            write("password-changed", login);
        });
        return new Attempt.Right("");
    }

    private void write(String action, Login login) {
        audit.write(plants.home(), action, login.account().subject(), null, Map.of());
    }
}
