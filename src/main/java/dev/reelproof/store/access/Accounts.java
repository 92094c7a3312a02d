package dev.reelproof.store.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Role;
import dev.reelproof.store.AdvisoryLocks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hibernate.Session;

/** The accounts of persons who may sign in, at every plant of the installation. */
@ApplicationScoped
public class Accounts {
    private static final String SELECT =
            """
            select name, display_name, array_to_string(roles, ','), active, demo, created, password_hash
            from account""";

    private final Session session;

    Accounts(Session session) {
        this.session = session;
    }

    /** An account with the hash of its password. */
    public record Login(Account account, String passwordHash) {
        @Override
        public String toString() {
            return account.toString();
        }
    }

    record AccountRow(
            String name,
            String displayName,
            String roles,
            boolean active,
            boolean demo,
            Instant created,
            String passwordHash) {
        Account account() {
            return new Account(name, displayName, Role.read(roles), active, demo, created);
        }

        Login login() {
            return new Login(account(), passwordHash);
        }
    }

    /** All accounts, by name. */
    @Transactional
    public List<Account> all() {
        return session.createNativeQuery(SELECT + " order by key", AccountRow.class).getResultList().stream()
                .map(AccountRow::account)
                .toList();
    }

    /** The account of that key. */
    @Transactional
    public Optional<Login> login(String key) {
        return session.createNativeQuery(SELECT + " where key = :key", AccountRow.class)
                .setParameter("key", key)
                .uniqueResultOptional()
                .map(AccountRow::login);
    }

    /**
     * Keeps a new account.
     *
     * @return the account; empty when an account, or a person of the company, has this name
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Account> insert(
            AccountName name, String displayName, Set<Role> roles, String passwordHash, boolean demo, Instant now) {
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

    /** Keeps what changed of an account. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void update(Account account, String passwordHash) {
        session.createNativeMutationQuery(
                        """
                        update account set display_name = :display, roles = string_to_array(:roles, ','),
                            active = :active, password_hash = :hash where key = :key""")
                .setParameter("display", account.displayName())
                .setParameter("roles", Role.joined(account.roles()))
                .setParameter("active", account.active())
                .setParameter("hash", passwordHash)
                .setParameter("key", account.key())
                .executeUpdate();
    }

    /**
     * Waits until no other transaction makes or changes an account. Two changes at once could each leave the other's account as the
     * last administrator; and a person of the company may sign in at this moment under the same name.
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void lock() {
        AdvisoryLocks.take(session, "reelproof accounts");
    }
}
