package dev.reelproof.store.access;

import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Optional;
import org.hibernate.Session;

/** The set-up links that were made, by the digests of their secrets. */
@ApplicationScoped
public class SetUpLinks {
    private final Session session;

    SetUpLinks(Session session) {
        this.session = session;
    }

    /** Keeps the link of a secret, until then. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void put(String secret, Instant expires) {
        session.createNativeMutationQuery(
                        """
                        insert into set_up_link (secret_sha256, expires) values (:secret, :expires)
                        on conflict (secret_sha256) do update set expires = excluded.expires""")
                .setParameter("secret", Sha256.hex(secret))
                .setParameter("expires", expires)
                .executeUpdate();
    }

    /** When the link of a secret ends; empty when there is no such link. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Instant> expiryOf(String secret) {
        return session.createNativeQuery("select expires from set_up_link where secret_sha256 = :secret", Instant.class)
                .setParameter("secret", Sha256.hex(secret))
                .uniqueResultOptional();
    }

    /** Removes all links. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void clear() {
        session.createNativeMutationQuery("delete from set_up_link").executeUpdate();
    }
}
