package dev.reelproof.store.access;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.access.WebSession;
import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** The sessions of persons, each a row with the digest of the secret that lies in the browser's cookie. */
@ApplicationScoped
public class Sessions {
    private static final Duration KEPT = Duration.ofDays(1);

    private final Session session;

    Sessions(Session session) {
        this.session = session;
    }

    record SessionRow(
            String digest,
            String csrf,
            String name,
            String displayName,
            String roles,
            boolean ofCompany,
            boolean active,
            boolean demo,
            Instant lastSeen,
            Instant expires,
            @Nullable Instant ended) {
        WebSession session() {
            return new WebSession(
                    digest,
                    csrf,
                    name,
                    displayName,
                    Role.read(roles),
                    ofCompany,
                    active,
                    demo,
                    lastSeen,
                    expires,
                    ended);
        }
    }

    /**
     * Opens a session of an account.
     *
     * @return its secret
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public String open(String accountKey, Instant now, Instant expires) {
        return insert(accountKey, null, null, now, expires);
    }

    /**
     * Opens a session of a company's person, with these roles for as long as it lasts.
     *
     * @return its secret
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public String openOfCompany(AccountName person, Set<Role> roles, Instant now, Instant expires) {
        return insert(null, person.key(), Role.joined(roles), now, expires);
    }

    private String insert(
            @Nullable String accountKey,
            @Nullable String personKey,
            @Nullable String roles,
            Instant now,
            Instant expires) {
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
                .setParameter("expires", expires)
                .executeUpdate();
        return secret;
    }

    /** The session of a secret, whether it may be used or not. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<WebSession> find(String secret) {
        return session.createNativeQuery(
                        """
                        select s.secret_sha256, s.csrf, coalesce(a.name, p.name), coalesce(a.display_name, p.display_name),
                            array_to_string(coalesce(a.roles, s.roles), ','), s.company_person is not null,
                            coalesce(a.active, true), coalesce(a.demo, false), s.last_seen, s.expires, s.ended
                        from web_session s
                            left join account a on a.key = s.account
                            left join company_person p on p.key = s.company_person
                        where s.secret_sha256 = :secret""",
                        SessionRow.class)
                .setParameter("secret", Sha256.hex(secret))
                .uniqueResultOptional()
                .map(SessionRow::session);
    }

    /** Keeps that a session was used. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void seen(WebSession used, Instant now) {
        session.createNativeMutationQuery("update web_session set last_seen = :now where secret_sha256 = :digest")
                .setParameter("now", now)
                .setParameter("digest", used.digest())
                .executeUpdate();
    }

    /** Ends the session of a secret's digest, if there is one. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void end(String digest, Instant now) {
        session.createNativeMutationQuery(
                        "update web_session set ended = :now where secret_sha256 = :digest and ended is null")
                .setParameter("now", now)
                .setParameter("digest", digest)
                .executeUpdate();
    }

    /**
     * Ends the sessions of an account.
     *
     * @param spared the digest of the secret of the one that goes on, if any
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void endAllOf(String accountKey, @Nullable String spared, Instant now) {
        session.createNativeMutationQuery(
                        """
                        update web_session set ended = :now
                        where account = :account and ended is null and secret_sha256 <> coalesce(cast(:spared as text), '')""")
                .setParameter("now", now)
                .setParameter("account", accountKey)
                .setParameter("spared", spared)
                .executeUpdate();
    }
}
