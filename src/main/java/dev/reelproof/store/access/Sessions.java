package dev.reelproof.store.access;

import dev.reelproof.access.AccessSettings;
import dev.reelproof.access.CompanySettings;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.hibernate.Session;

/** Sign-ins that last: each a row with the digest of the secret that lies in the browser's cookie. */
@ApplicationScoped
public class Sessions {
    /** The cookie that holds a session's secret. */
    public static final String COOKIE = "reelproof-session";

    // So that not every request writes: a session may end a sixtieth of the idle time early, never late.
    private static final int SEEN_STEPS = 60;
    private static final Duration KEPT = Duration.ofDays(1);

    private final Session session;
    private final AccessSettings settings;
    private final CompanySettings company;
    private final Clock clock;

    Sessions(Session session, AccessSettings settings, CompanySettings company, Clock clock) {
        this.session = session;
        this.settings = settings;
        this.company = company;
        this.clock = clock;
    }

    /** Who a session belongs to: as the account stands now, or as the company's identity provider said at sign-in. */
    public record Found(String digest, String csrf, String name, String displayName, Set<Role> roles, boolean demo) {}

    /** Opens a session under a new secret and gives the secret. */
    @Transactional
    public String open(String accountKey) {
        return open(accountKey, null, null);
    }

    /** Opens a session of a company's person, with these roles for as long as it lasts, and gives its secret. */
    @Transactional
    public String openOfCompany(String personKey, Set<Role> roles) {
        return open(null, personKey, Role.joined(roles));
    }

    private String open(String accountKey, String personKey, String roles) {
        Instant now = clock.instant();
        session.createNativeMutationQuery("delete from web_session where expires < :old")
                .setParameter("old", now.minus(KEPT))
                .executeUpdate();
        String secret = Secrets.random();
        session.createNativeMutationQuery(
                        """
                        insert into web_session (secret_sha256, account, company_person, roles, csrf, created, last_seen, expires)
                        values (:secret, cast(:account as text), cast(:person as text),
                                string_to_array(cast(:roles as text), ','), :csrf, :now, :now, :expires)""")
                .setParameter("secret", Sha256.hex(secret))
                .setParameter("account", accountKey)
                .setParameter("person", personKey)
                .setParameter("roles", roles)
                .setParameter("csrf", Secrets.random())
                .setParameter("now", now)
                .setParameter("expires", now.plus(settings.session().longest()))
                .executeUpdate();
        return secret;
    }

    /** The session of a secret, when it still lasts and its account may sign in; it counts as used by that. */
    @Transactional
    public Optional<Found> find(String secret) {
        Instant now = clock.instant();
        Duration idle = settings.session().idle();
        Optional<Object[]> row = session.createNativeQuery(
                        """
                        select s.secret_sha256, s.csrf, coalesce(a.name, p.name), coalesce(a.display_name, p.display_name),
                            array_to_string(coalesce(a.roles, s.roles), ','), coalesce(a.demo, false), s.last_seen
                        from web_session s
                            left join account a on a.key = s.account
                            left join company_person p on p.key = s.company_person
                        where s.secret_sha256 = :secret and s.ended is null and s.expires > :now and s.last_seen > :idle
                            and ((a.active and (not a.demo or :demo)) or (p.key is not null and :company))""",
                        Object[].class)
                .setParameter("secret", Sha256.hex(secret))
                .setParameter("now", now)
                .setParameter("idle", now.minus(idle))
                .setParameter("demo", settings.demo())
                .setParameter("company", company.oidc().on())
                .uniqueResultOptional();
        row.filter(found -> ((Instant) found[6]).isBefore(now.minus(idle.dividedBy(SEEN_STEPS))))
                .ifPresent(found -> session.createNativeMutationQuery(
                                "update web_session set last_seen = :now where secret_sha256 = :secret")
                        .setParameter("now", now)
                        .setParameter("secret", found[0])
                        .executeUpdate());
        return row.map(found -> new Found(
                (String) found[0],
                (String) found[1],
                (String) found[2],
                (String) found[3],
                Role.read((String) found[4]),
                (Boolean) found[5]));
    }

    /** Ends the session of a secret's digest, if there is one. */
    @Transactional
    public void end(String digest) {
        session.createNativeMutationQuery(
                        "update web_session set ended = :now where secret_sha256 = :secret and ended is null")
                .setParameter("now", clock.instant())
                .setParameter("secret", digest)
                .executeUpdate();
    }

    /** Ends all sessions of an account but one; null spares none. */
    @Transactional
    void endOthers(String accountKey, String digest) {
        session.createNativeMutationQuery(
                        """
                        update web_session set ended = :now
                        where account = :account and ended is null and secret_sha256 <> coalesce(cast(:spared as text), '')""")
                .setParameter("now", clock.instant())
                .setParameter("account", accountKey)
                .setParameter("spared", digest)
                .executeUpdate();
    }
}
