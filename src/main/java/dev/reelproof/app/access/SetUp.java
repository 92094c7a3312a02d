package dev.reelproof.app.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.SetUpLinks;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Makes the first administrator, by a link that works once, for a day, while nobody can sign in. There is no default password.
 */
@ApplicationScoped
public class SetUp {
    /** How long a link works. */
    public static final Duration LASTS = Duration.ofHours(24);

    static final int LEAST_SECRET = 32;

    private final Accounts accounts;
    private final SetUpLinks links;
    private final PasswordHashing hashing;
    private final CountAttempt attempts;
    private final Settings settings;
    private final AccessSettings access;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    public SetUp(
            Accounts accounts,
            SetUpLinks links,
            PasswordHashing hashing,
            CountAttempt attempts,
            Settings settings,
            AccessSettings access,
            Plants plants,
            AuditTrail audit,
            Clock clock) {
        this.accounts = accounts;
        this.links = links;
        this.hashing = hashing;
        this.attempts = attempts;
        this.settings = settings;
        this.access = access;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Makes a link when nobody can sign in yet.
     *
     * @return the secret to print; empty when none is needed, or when the environment gave it
     * @throws IllegalStateException when the environment's is too short
     */
    @Transactional
    public Optional<String> makeLink() {
        Optional<String> given = access.setupToken().filter(secret -> !secret.isBlank());
        if (given.isPresent() && given.get().length() < LEAST_SECRET) {
            throw new IllegalStateException(
                    "REELPROOF_SETUP_TOKEN has " + given.get().length() + " characters; give it at least "
                            + LEAST_SECRET + " random ones, such as from 'openssl rand -hex 32'");
        }
        if (settings.demo() || hasAccounts()) {
            return Optional.empty();
        }
        String secret = given.orElseGet(Secrets::random);
        links.put(secret, clock.instant().plus(LASTS));
        return given.isPresent() ? Optional.empty() : Optional.of(secret);
    }

    /**
     * Makes the first administrator. No transaction is open while the password is hashed.
     *
     * @param from the network address
     */
    public Attempt use(String secret, AccountName name, String displayName, Password password, String from) {
        Instant now = clock.instant();
        Optional<Duration> wait = attempts.ofAddress(from, now);
        if (wait.isPresent()) {
            return new Attempt.TooMany(wait.get());
        }
        String hash = hashing.hash(password);
        return QuarkusTransaction.joiningExisting().call(() -> {
            accounts.lock();
            boolean isOpen = links.expiryOf(secret).filter(now::isBefore).isPresent();
            if (!isOpen || hasAccounts()) {
                return new Attempt.Wrong();
            }
            Set<Role> roles = Set.of(Role.ADMINISTRATOR);
            Optional<Account> made = accounts.insert(name, displayName, roles, hash, false, now);
            if (made.isEmpty()) {
                // One of the demo's accounts has this name, left in a data folder that was once the demo's.
                return new Attempt.Wrong();
            }
            links.clear();
            audit.write(
                    new Caller(Caller.Kind.PERSON, name.text(), null, roles, from),
                    plants.home(),
                    "set-up",
                    made.get().subject(),
                    null,
                    Map.of("displayName", displayName, "roles", Role.joined(roles)));
            return new Attempt.Right("");
        });
    }

    private boolean hasAccounts() {
        return accounts.all().stream().anyMatch(account -> account.countsIn(settings.demo()));
    }
}
