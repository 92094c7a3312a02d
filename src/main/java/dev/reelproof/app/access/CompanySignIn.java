package dev.reelproof.app.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.CompanyPerson;
import dev.reelproof.access.Role;
import dev.reelproof.app.Plants;
import dev.reelproof.digest.Sha256;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.CompanyPersons;
import dev.reelproof.store.access.Sessions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Opens sessions for persons whom the company's identity provider authenticated. They need no account here. */
@ApplicationScoped
public class CompanySignIn {
    private static final String NOBODY = Account.subject(Caller.UNKNOWN);

    private final Accounts accounts;
    private final CompanyPersons persons;
    private final Sessions sessions;
    private final AccessSettings access;
    private final CompanySettings settings;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    CompanySignIn(
            Accounts accounts,
            CompanyPersons persons,
            Sessions sessions,
            AccessSettings access,
            CompanySettings settings,
            Plants plants,
            AuditTrail audit,
            Clock clock) {
        this.accounts = accounts;
        this.persons = persons;
        this.sessions = sessions;
        this.access = access;
        this.settings = settings;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /** What came of it. */
    public sealed interface Outcome {}

    /**
     * Signed in.
     *
     * @param secret of the session opened
     */
    public record SignedIn(String secret) implements Outcome {
        @Override
        public String toString() {
            return "SignedIn";
        }
    }

    /** Not signed in, and why. */
    public enum Refused implements Outcome {
        NO_ROLE("no-role"),
        NAME_TAKEN("name-taken"),
        NO_NAME("no-name");

        private final String word;

        Refused(String word) {
            this.word = word;
        }

        /** The reason as addresses and the audit trail spell it. */
        public String word() {
            return word;
        }
    }

    /**
     * Opens a session with the roles that the person's groups give.
     *
     * @param from the network address
     * @param brought the secret that the browser brought along, whose session ends
     */
    @Transactional
    public Outcome open(CompanyPerson person, @Nullable String from, @Nullable String brought) {
        accounts.lock();
        Set<Role> roles = settings.oidc().roles().of(person.groups());
        if (roles.isEmpty()) {
            return refused(person, from, Refused.NO_ROLE);
        }
        Optional<AccountName> known = persons.nameOf(person);
        Optional<AccountName> name =
                known.or(() -> name(person.preferredName())).or(() -> name(person.subject()));
        if (name.isEmpty()) {
            return refused(person, from, Refused.NO_NAME);
        }
        if (known.isEmpty() && isTaken(name.get())) {
            return refused(person, from, Refused.NAME_TAKEN);
        }
        Instant now = clock.instant();
        persons.put(person, name.get(), displayName(person).orElse(name.get()).text(), now);
        if (brought != null) {
            sessions.end(Sha256.hex(brought), now);
        }
        String secret = sessions.openOfCompany(
                name.get(), roles, now, now.plus(access.session().longest()));
        audit.write(
                new Caller(Caller.Kind.PERSON, name.get().text(), null, roles, from),
                plants.home(),
                "signed-in",
                Account.subject(name.get().text()),
                null,
                Map.of("issuer", person.issuer(), "subject", person.subject(), "roles", Role.joined(roles)));
        return new SignedIn(secret);
    }

    private Refused refused(CompanyPerson person, @Nullable String from, Refused why) {
        audit.write(
                Caller.nobody(from),
                plants.home(),
                "sign-in-failed",
                NOBODY,
                null,
                Map.of("issuer", person.issuer(), "subject", person.subject(), "why", why.word()));
        return why;
    }

    private static Optional<AccountName> displayName(CompanyPerson person) {
        return Optional.ofNullable(person.displayName()).flatMap(CompanySignIn::name);
    }

    private static Optional<AccountName> name(String text) {
        try {
            return Optional.of(AccountName.of(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private boolean isTaken(AccountName name) {
        return accounts.login(name.key()).isPresent() || persons.has(name);
    }
}
