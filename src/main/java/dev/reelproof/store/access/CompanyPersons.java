package dev.reelproof.store.access;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.CompanyPerson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import org.hibernate.Session;

/** The persons whom the company's identity provider signed in, each with the one name that it has here. */
@ApplicationScoped
public class CompanyPersons {
    private final Session session;

    CompanyPersons(Session session) {
        this.session = session;
    }

    /** The name that a person had at an earlier sign-in. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<AccountName> nameOf(CompanyPerson person) {
        return session.createNativeQuery(
                        "select name from company_person where issuer = :issuer and subject = :subject", String.class)
                .setParameter("issuer", person.issuer())
                .setParameter("subject", person.subject())
                .uniqueResultOptional()
                .map(AccountName::of);
    }

    /** Whether a person has this name. */
    @Transactional(Transactional.TxType.MANDATORY)
    public boolean has(AccountName name) {
        return session.createNativeQuery("select count(*) from company_person where key = :key", Long.class)
                        .setParameter("key", name.key())
                        .getSingleResult()
                > 0;
    }

    /** Keeps a person under a name, and how others read of the person now. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void put(CompanyPerson person, AccountName name, String displayName, Instant now) {
        session.createNativeMutationQuery(
                        """
                        insert into company_person (key, name, display_name, issuer, subject, first_seen)
                        values (:key, :name, :display, :issuer, :subject, :now)
                        on conflict (key) do update set display_name = excluded.display_name""")
                .setParameter("key", name.key())
                .setParameter("name", name.text())
                .setParameter("display", displayName)
                .setParameter("issuer", person.issuer())
                .setParameter("subject", person.subject())
                .setParameter("now", now)
                .executeUpdate();
    }
}
