package dev.reelproof.app.access;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Caller;
import dev.reelproof.access.CompanySettings;
import dev.reelproof.access.Role;
import dev.reelproof.digest.Sha256;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hibernate.Session;

/** Opens sessions for persons whom the company's identity provider vouches for. They need no account here. */
@ApplicationScoped
public class CompanySignIn {
    /** Where the provider is asked, and where it sends the browser back to. */
    public static final String PATH = "/api/v1/session/identity-provider";

    private static final String NOBODY = "account/" + Caller.UNKNOWN;

    private final Session session;
    private final Accounts accounts;
    private final Sessions sessions;
    private final CompanySettings settings;
    private final AuditTrail audit;
    private final Clock clock;

    CompanySignIn(
            Session session,
            Accounts accounts,
            Sessions sessions,
            CompanySettings settings,
            AuditTrail audit,
            Clock clock) {
        this.session = session;
        this.accounts = accounts;
        this.sessions = sessions;
        this.settings = settings;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What the provider says of a person.
     *
     * @param issuer the provider
     * @param subject the person, at the provider; never another's
     * @param preferredName what the person is called at sign-in; the provider may let it change
     * @param displayName how others read of the person; null when not said
     * @param groups what the person belongs to
     */
    public record Vouched(String issuer, String subject, String preferredName, String displayName, Set<String> groups) {
        public Vouched {
            groups = Set.copyOf(groups);
        }

        @Override
        public String toString() {
            return "Vouched";
        }
    }

    /** What came of it. */
    public sealed interface Outcome {}

    /**
     * Signed in.
     *
     * @param secret of the session opened
     */
    public record In(String secret) implements Outcome {
        @Override
        public String toString() {
            return "In";
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
     * @param trail the plant whose audit trail tells of it
     * @param from the network address
     * @param brought the secret that the browser brought along, whose session ends; null when it brought none
     */
    @Transactional
    public Outcome open(String trail, Vouched person, String from, String brought) {
        // One after the other: two persons, or a person and a new account, could else take one name.
        accounts.takeTurn();
        Set<Role> roles = settings.oidc().roles().of(person.groups());
        if (roles.isEmpty()) {
            return refused(trail, person, from, Refused.NO_ROLE);
        }
        Optional<AccountName> known = known(person);
        Optional<AccountName> name =
                known.or(() -> name(person.preferredName())).or(() -> name(person.subject()));
        if (name.isEmpty()) {
            return refused(trail, person, from, Refused.NO_NAME);
        }
        if (known.isEmpty() && isTaken(name.get())) {
            return refused(trail, person, from, Refused.NAME_TAKEN);
        }
        keep(person, name.get());
        if (brought != null) {
            sessions.end(Sha256.hex(brought));
        }
        String secret = sessions.openOfCompany(name.get().key(), roles);
        audit.write(
                new Caller(Caller.Kind.PERSON, name.get().text(), null, roles, from),
                trail,
                "signed-in",
                "account/" + name.get().text(),
                null,
                Map.of("issuer", person.issuer(), "subject", person.subject(), "roles", Role.joined(roles)));
        return new In(secret);
    }

    private Refused refused(String trail, Vouched person, String from, Refused why) {
        audit.write(
                Caller.nobody(from),
                trail,
                "sign-in-failed",
                NOBODY,
                null,
                Map.of("issuer", person.issuer(), "subject", person.subject(), "why", why.word()));
        return why;
    }

    private static Optional<AccountName> name(String text) {
        try {
            return Optional.of(AccountName.of(text));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private Optional<AccountName> known(Vouched person) {
        return session.createNativeQuery(
                        "select name from company_person where issuer = :issuer and subject = :subject", String.class)
                .setParameter("issuer", person.issuer())
                .setParameter("subject", person.subject())
                .uniqueResultOptional()
                .map(AccountName::of);
    }

    private boolean isTaken(AccountName name) {
        return accounts.login(name.key()).isPresent()
                || session.createNativeQuery("select count(*) from company_person where key = :key", Long.class)
                                .setParameter("key", name.key())
                                .getSingleResult()
                        > 0;
    }

    private void keep(Vouched person, AccountName name) {
        session.createNativeMutationQuery(
                        """
                        insert into company_person (key, name, display_name, issuer, subject, first_seen)
                        values (:key, :name, :display, :issuer, :subject, :now)
                        on conflict (key) do update set display_name = excluded.display_name""")
                .setParameter("key", name.key())
                .setParameter("name", name.text())
                .setParameter(
                        "display",
                        Optional.ofNullable(person.displayName())
                                .flatMap(CompanySignIn::name)
                                .orElse(name)
                                .text())
                .setParameter("issuer", person.issuer())
                .setParameter("subject", person.subject())
                .setParameter("now", clock.instant())
                .executeUpdate();
    }
}
