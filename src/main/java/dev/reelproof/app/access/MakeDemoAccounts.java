package dev.reelproof.app.access;

import dev.reelproof.access.Account;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Password;
import dev.reelproof.store.access.Accounts;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Set;

/** Makes the demo's accounts and its token, or makes them again what they were. They are good for nothing outside the demo. */
@ApplicationScoped
public class MakeDemoAccounts {
    private static final String TOKEN_NAME = "demo";

    private final Accounts accounts;
    private final ManageTokens tokens;
    private final AuthenticateCaller authenticate;
    private final DemoTokenFile file;
    private final Clock clock;

    public MakeDemoAccounts(
            Accounts accounts, ManageTokens tokens, AuthenticateCaller authenticate, DemoTokenFile file, Clock clock) {
        this.accounts = accounts;
        this.tokens = tokens;
        this.authenticate = authenticate;
        this.file = file;
        this.clock = clock;
    }

    /** Makes them. */
    @Transactional
    public void make() {
        accounts.lock();
        for (DemoAccount demo : DemoAccount.ALL) {
            make(demo);
        }
        if (file.read().flatMap(authenticate::byToken).isEmpty()) {
            file.write(tokens.makeOfDemo(TOKEN_NAME).secret());
        }
    }

    private void make(DemoAccount demo) {
        AccountName name = AccountName.of(demo.name());
        String hash = PasswordHashing.hashPublic(Password.of(demo.password()));
        if (accounts.insert(name, demo.displayName(), Set.of(demo.role()), hash, true, clock.instant())
                .isPresent()) {
            return;
        }
        // Somebody of the company may have the name; and an account of this name may be a plant's own.
        accounts.login(name.key())
                .map(Accounts.Login::account)
                .filter(Account::demo)
                .ifPresent(found -> accounts.update(
                        new Account(
                                found.name(), found.displayName(), Set.of(demo.role()), true, true, found.created()),
                        hash));
    }
}
