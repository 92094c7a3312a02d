package dev.reelproof.app.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.digest.Sha256;
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
import org.jspecify.annotations.Nullable;

/** Signs a person in by name and password. */
@Singleton
public class SignIn {
    private static final String NOBODY = Account.subject(Caller.UNKNOWN);

    private final Accounts accounts;
    private final Sessions sessions;
    private final CountAttempt attempts;
    private final SignInThrottle throttle;
    private final PasswordHashing hashing;
    private final Settings settings;
    private final AccessSettings access;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    public SignIn(
            Accounts accounts,
            Sessions sessions,
            CountAttempt attempts,
            SignInThrottle throttle,
            PasswordHashing hashing,
            Settings settings,
            AccessSettings access,
            Plants plants,
            AuditTrail audit,
            Clock clock) {
        this.accounts = accounts;
        this.sessions = sessions;
        this.attempts = attempts;
        this.throttle = throttle;
        this.hashing = hashing;
        this.settings = settings;
        this.access = access;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Signs in. No transaction is open while the password is hashed.
     *
     * @param from the network address
     * @param brought the secret that the browser brought along, whose session ends
     */
    public Attempt signIn(String name, String password, String from, @Nullable String brought) {
        Instant now = clock.instant();
        String key = AccountName.fold(name);
        Optional<Duration> wait = attempts.ofName(key, from, now);
        if (wait.isPresent()) {
            return new Attempt.TooMany(wait.get());
        }
        Optional<Login> login = accounts.login(key);
        boolean isRight =
                hashing.matches(password, login.map(Login::passwordHash).orElse(null))
                        && login.filter(found -> found.account().maySignIn(settings.demo()))
                                .isPresent();
        return QuarkusTransaction.joiningExisting()
                .call(() -> isRight
                        ? opened(login.orElseThrow().account(), from, brought, now)
                        : refused(login.map(Login::account), from));
    }

    private Attempt opened(Account account, String from, @Nullable String brought, Instant now) {
        throttle.forgive(account.key(), from, now);
        if (brought != null) {
            sessions.end(Sha256.hex(brought), now);
        }
        String secret =
                sessions.open(account.key(), now, now.plus(access.session().longest()));
        Caller person = new Caller(Caller.Kind.PERSON, account.name(), null, account.roles(), from);
        audit.write(person, plants.home(), "signed-in", account.subject(), null, Map.of());
        return new Attempt.Right(secret);
    }

    private Attempt refused(Optional<Account> account, String from) {
        audit.write(
                Caller.nobody(from),
                plants.home(),
                "sign-in-failed",
                account.map(Account::subject).orElse(NOBODY),
                null,
                Map.of());
        return new Attempt.Wrong();
    }
}
