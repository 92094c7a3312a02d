package dev.reelproof.store.access;

import dev.reelproof.access.AccessSettings;
import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.LastAdministratorException;
import dev.reelproof.access.Password;
import dev.reelproof.access.PasswordHashing;
import dev.reelproof.access.Role;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.hibernate.Session;

/** The persons who may sign in, at every plant of the installation. */
@ApplicationScoped
public class Accounts {
    private static final String COLUMNS =
            "name, display_name, array_to_string(roles, ','), active, demo, created, password_hash, key";

    private final Session session;
    private final Sessions sessions;
    private final PasswordHashing hashing;
    private final AccessSettings settings;
    private final AuditTrail audit;
    private final Clock clock;

    Accounts(
            Session session,
            Sessions sessions,
            PasswordHashing hashing,
            AccessSettings settings,
            AuditTrail audit,
            Clock clock) {
        this.session = session;
        this.sessions = sessions;
        this.hashing = hashing;
        this.settings = settings;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What is to change of an account; null leaves as it is.
     *
     * @param displayName how others read of the person
     * @param roles the roles held
     * @param active whether the person may sign in
     * @param password the password
     */
    public record Change(String displayName, Set<Role> roles, Boolean active, Password password) {}

    /** An account with what signing in needs. */
    public record Login(Account account, String key, String passwordHash) {}

    /** All accounts, by name. */
    @Transactional
    public List<Account> all() {
        return session
                .createNativeQuery("select " + COLUMNS + " from account order by key", Object[].class)
                .getResultList()
                .stream()
                .map(row -> login(row).account())
                .toList();
    }

    /** Whether nobody can sign in here yet; the demo's accounts do not count outside the demo. */
    @Transactional
    public boolean isEmpty() {
        return session.createNativeQuery("select count(*) from account where not demo or :demo", Long.class)
                        .setParameter("demo", settings.demo())
                        .getSingleResult()
                == 0;
    }

    @Transactional
    public Optional<Login> login(String key) {
        return session.createNativeQuery("select " + COLUMNS + " from account where key = :key", Object[].class)
                .setParameter("key", key)
                .uniqueResultOptional()
                .map(Accounts::login);
    }

    /**
     * Makes an account.
     *
     * @param trail the plant whose audit trail tells of it
     * @return the account; empty when one of this name is there
     */
    @Transactional
    public Optional<Account> make(
            String trail, AccountName name, String displayName, Set<Role> roles, Password password) {
        return insert(name, displayName, roles, hashing.hash(password), false).map(account -> {
            audit.write(
                    trail,
                    "account-made",
                    subject(account),
                    null,
                    Map.of("displayName", displayName, "roles", Role.joined(roles)));
            return account;
        });
    }

    public Optional<Account> insert(
            AccountName name, String displayName, Set<Role> roles, String passwordHash, boolean demo) {
        // A company's person may sign in at this moment under the same name.
        takeTurn();
        Instant now = clock.instant();
        int made = session.createNativeMutationQuery(
                        """
                        insert into account (key, name, display_name, password_hash, roles, active, demo, created)
                        select :key, :name, :display, :hash, string_to_array(:roles, ','), true, :demo, :now
                        where not exists (select from company_person where key = :key)
                        on conflict (key) do nothing""")
                .setParameter("key", name.key())
                .setParameter("name", name.text())
                .setParameter("display", displayName)
                .setParameter("hash", passwordHash)
                .setParameter("roles", Role.joined(roles))
                .setParameter("demo", demo)
                .setParameter("now", now)
                .executeUpdate();
        return made == 0
                ? Optional.empty()
                : Optional.of(new Account(name.text(), displayName, roles, true, demo, now));
    }

    /**
     * Changes an account. A new password, or an account that may sign in no more, ends its sessions; roles count from the next
     * request on.
     *
     * @param trail the plant whose audit trail tells of it
     * @return the account as it stands now; empty when there is none of this name
     * @throws LastAdministratorException when nobody could manage accounts any more
     */
    @Transactional
    public Optional<Account> change(String trail, String name, Change change, String reason) {
        // One after the other: two changes at once could each leave the other's account as the last administrator.
        takeTurn();
        Optional<Login> before = login(AccountName.fold(name));
        return before.map(login -> {
            Account old = login.account();
            Account account = new Account(
                    old.name(),
                    change.displayName() == null ? old.displayName() : change.displayName(),
                    change.roles() == null ? old.roles() : change.roles(),
                    change.active() == null ? old.active() : change.active(),
                    old.demo(),
                    old.created());
            session.createNativeMutationQuery(
                            """
                            update account set display_name = :display, roles = string_to_array(:roles, ','),
                                active = :active, password_hash = :hash where key = :key""")
                    .setParameter("display", account.displayName())
                    .setParameter("roles", Role.joined(account.roles()))
                    .setParameter("active", account.active())
                    .setParameter(
                            "hash", change.password() == null ? login.passwordHash() : hashing.hash(change.password()))
                    .setParameter("key", login.key())
                    .executeUpdate();
            if (isAdministrator(old) && !isAdministrator(account)) {
                requireAnAdministrator();
            }
            if (!account.active() || change.password() != null) {
                sessions.endOthers(login.key(), null);
            }
            audit.write(
                    trail,
                    "account-changed",
                    subject(account),
                    reason,
                    changes(old, account, change.password() != null));
            return account;
        });
    }

    /** Changes the password of who is signed in; its other sessions end. */
    @Transactional
    public void changePassword(String trail, Login login, Password password, String sparedSession) {
        session.createNativeMutationQuery("update account set password_hash = :hash where key = :key")
                .setParameter("hash", hashing.hash(password))
                .setParameter("key", login.key())
                .executeUpdate();
        sessions.endOthers(login.key(), sparedSession);
        audit.write(trail, "password-changed", subject(login.account()), null, Map.of());
    }

    /** Waits until no other transaction makes a first account or changes one. */
    public void takeTurn() {
        session.createNativeQuery(
                        "select count(pg_advisory_xact_lock(hashtextextended('reelproof accounts', 0)))", Long.class)
                .getSingleResult();
    }

    private boolean isAdministrator(Account account) {
        return account.active() && account.roles().contains(Role.ADMINISTRATOR) && (!account.demo() || settings.demo());
    }

    private void requireAnAdministrator() {
        long administrators = session.createNativeQuery(
                        """
                        select count(*) from account
                        where active and :administrator = any (roles) and (not demo or :demo)""",
                        Long.class)
                .setParameter("administrator", Role.ADMINISTRATOR.word())
                .setParameter("demo", settings.demo())
                .getSingleResult();
        if (administrators == 0) {
            throw new LastAdministratorException();
        }
    }

    private static Map<String, Object> changes(Account before, Account after, boolean password) {
        Map<String, Object> changes = new TreeMap<>();
        put(changes, "displayName", before.displayName(), after.displayName());
        put(changes, "roles", Role.joined(before.roles()), Role.joined(after.roles()));
        put(changes, "active", before.active(), after.active());
        if (password) {
            changes.put("password", "changed");
        }
        return changes;
    }

    private static void put(Map<String, Object> changes, String what, Object before, Object after) {
        if (!before.equals(after)) {
            changes.put(what, Map.of("from", before, "to", after));
        }
    }

    public static String subject(Account account) {
        return "account/" + account.name();
    }

    private static Login login(Object[] row) {
        return new Login(
                new Account(
                        (String) row[0],
                        (String) row[1],
                        Role.read((String) row[2]),
                        (Boolean) row[3],
                        (Boolean) row[4],
                        (Instant) row[5]),
                (String) row[7],
                (String) row[6]);
    }
}
