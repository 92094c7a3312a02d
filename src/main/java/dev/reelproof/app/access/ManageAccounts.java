package dev.reelproof.app.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountChange;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Action;
import dev.reelproof.access.Caller;
import dev.reelproof.access.Callers;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.Settings;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.Accounts.Login;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.access.Sessions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Makes and changes accounts. They are the whole installation's: nobody of one plant alone manages them. */
@ApplicationScoped
public class ManageAccounts {
    private final Accounts accounts;
    private final Sessions sessions;
    private final PasswordHashing hashing;
    private final Settings settings;
    private final Callers callers;
    private final Plants plants;
    private final AuditTrail audit;
    private final Clock clock;

    public ManageAccounts(
            Accounts accounts,
            Sessions sessions,
            PasswordHashing hashing,
            Settings settings,
            Callers callers,
            Plants plants,
            AuditTrail audit,
            Clock clock) {
        this.accounts = accounts;
        this.sessions = sessions;
        this.hashing = hashing;
        this.settings = settings;
        this.callers = callers;
        this.plants = plants;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Refuses a caller who may not manage accounts.
     *
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     */
    public void requirePermission() {
        Caller caller = callers.current();
        caller.require(Action.MANAGE_USERS);
        caller.requireEveryPlant();
    }

    /** All accounts, by name. */
    public List<Account> all() {
        requirePermission();
        return accounts.all();
    }

    /**
     * Makes an account.
     *
     * @throws ConflictException when there is one of this name, or a person of the company has it
     */
    @Transactional
    public Account make(AccountName name, String displayName, Set<Role> roles, Password password) {
        requirePermission();
        String hash = hashing.hash(password);
        accounts.lock();
        Account made = accounts.insert(name, displayName, roles, hash, false, clock.instant())
                .orElseThrow(() -> new ConflictException("There is an account '" + name
                        + "' already, or one whose name reads the same; accounts are closed with 'active': false and"
                        + " never removed."));
        audit.write(
                plants.home(),
                "account-made",
                made.subject(),
                null,
                Map.of("displayName", displayName, "roles", Role.joined(roles)));
        return made;
    }

    /**
     * Changes an account. A new password, or an account that may sign in no more, ends its sessions; roles count from the next
     * request on.
     *
     * @return the account as it stands now
     * @throws NothingThereException when there is none of this name
     * @throws dev.reelproof.access.LastAdministratorException when nobody could manage accounts any more
     */
    @Transactional
    public Account change(String name, AccountChange change, String reason) {
        requirePermission();
        Optional<String> newHash = Optional.ofNullable(change.password()).map(hashing::hash);
        accounts.lock();
        Login login = accounts.login(AccountName.fold(name))
                .orElseThrow(() -> new NothingThereException("There is no account '" + name + "'."));
        Account before = login.account();
        Account after = change.of(before);
        before.requireAdministratorAfter(after, accounts.all(), settings.demo());
        accounts.update(after, newHash.orElse(login.passwordHash()));
        if (change.endsSessionsOf(before)) {
            sessions.endAllOf(after.key(), null, clock.instant());
        }
        audit.write(plants.home(), "account-changed", after.subject(), reason, change.differences(before));
        return after;
    }
}
