package dev.reelproof.app.access;

import dev.reelproof.access.AccessSettings;
import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Password;
import dev.reelproof.access.PasswordHashing;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.digest.Sha256;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.SignInThrottle;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hibernate.Session;

/** The first administrator, by a link that opens once, for a day, while nobody can sign in. There is no default password. */
@ApplicationScoped
public class SetUp {
    static final Duration LASTS = Duration.ofHours(24);
    static final int LEAST_SECRET = 32;

    private final Session session;
    private final Accounts accounts;
    private final PasswordHashing hashing;
    private final SignInThrottle guesses;
    private final AccessSettings settings;
    private final AuditTrail audit;
    private final Clock clock;

    public SetUp(
            Session session,
            Accounts accounts,
            PasswordHashing hashing,
            SignInThrottle guesses,
            AccessSettings settings,
            AuditTrail audit,
            Clock clock) {
        this.session = session;
        this.accounts = accounts;
        this.hashing = hashing;
        this.guesses = guesses;
        this.settings = settings;
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
        Optional<String> given = settings.setupToken().filter(secret -> !secret.isBlank());
        if (given.isPresent() && given.get().length() < LEAST_SECRET) {
            throw new IllegalStateException(
                    "REELPROOF_SETUP_TOKEN has " + given.get().length() + " characters; give it at least "
                            + LEAST_SECRET + " random ones, such as from 'openssl rand -hex 32'");
        }
        if (settings.demo() || !accounts.isEmpty()) {
            return Optional.empty();
        }
        String secret = given.orElseGet(Secrets::random);
        Instant now = clock.instant();
        session.createNativeMutationQuery(
                        """
                        insert into set_up_link (secret_sha256, expires) values (:secret, :expires)
                        on conflict (secret_sha256) do update set expires = excluded.expires""")
                .setParameter("secret", Sha256.hex(secret))
                .setParameter("expires", now.plus(LASTS))
                .executeUpdate();
        return given.isPresent() ? Optional.empty() : Optional.of(secret);
    }

    /**
     * Makes the first administrator.
     *
     * @param trail the plant whose audit trail tells of it
     * @param from the network address
     */
    public SignIn.Outcome use(
            String trail, String secret, AccountName name, String displayName, Password password, String from) {
        Instant now = clock.instant();
        Optional<Duration> wait = guesses.countAddress(from, now);
        if (wait.isPresent()) {
            return new SignIn.Later(wait.get());
        }
        String hash = hashing.hash(password);
        return QuarkusTransaction.joiningExisting().call(() -> {
            accounts.takeTurn();
            if (!isOpen(secret, now) || !accounts.isEmpty()) {
                return new SignIn.Wrong();
            }
            Set<Role> roles = Set.of(Role.ADMINISTRATOR);
            Optional<Account> made = accounts.insert(name, displayName, roles, hash, false);
            if (made.isEmpty()) {
                // The name of one of the demo's accounts, left in a data folder that was once the demo's.
                return new SignIn.Wrong();
            }
            session.createNativeMutationQuery("delete from set_up_link").executeUpdate();
            audit.write(
                    new Caller(Caller.Kind.PERSON, name.text(), null, roles, from),
                    trail,
                    "set-up",
                    Accounts.subject(made.get()),
                    null,
                    Map.of("displayName", displayName, "roles", Role.joined(roles)));
            return new SignIn.Right("");
        });
    }

    private boolean isOpen(String secret, Instant now) {
        return session.createNativeQuery(
                                "select count(*) from set_up_link where secret_sha256 = :secret and expires > :now",
                                Long.class)
                        .setParameter("secret", Sha256.hex(secret))
                        .setParameter("now", now)
                        .getSingleResult()
                > 0;
    }
}
