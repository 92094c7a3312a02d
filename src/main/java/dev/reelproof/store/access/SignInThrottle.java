package dev.reelproof.store.access;

import dev.reelproof.access.Caller;
import dev.reelproof.access.LockoutPolicy;
import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/**
 * Counts wrong passwords, in the database, so that several copies of the service count together.
 *
 * <p>Each attempt counts as wrong before it is looked at, and is forgiven when it was right. So attempts that are sent at once gain
 * nothing over attempts that are sent in a row, and no row is locked while a password is hashed.
 */
@ApplicationScoped
public class SignInThrottle {
    private static final Duration NAMES_KEPT = Duration.ofDays(1);
    private static final Duration ADDRESSES_KEPT = Duration.ofHours(1);

    private final Session session;

    SignInThrottle(Session session) {
        this.session = session;
    }

    /**
     * Counts an attempt of an address.
     *
     * @return how long to wait; empty when the attempt may be looked at
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Duration> countAddress(@Nullable String address, Instant now) {
        session.createNativeMutationQuery("delete from guessing_address where minute < :old")
                .setParameter("old", now.minus(ADDRESSES_KEPT))
                .executeUpdate();
        Instant minute = minute(now);
        boolean counted = !session.createNativeQuery(
                        """
                        insert into guessing_address as a (address, minute, failures) values (:address, :minute, 1)
                        on conflict (address, minute) do update set failures = a.failures + 1 where a.failures < :most
                        returning failures""",
                        Integer.class)
                .setParameter("address", named(address))
                .setParameter("minute", minute)
                .setParameter("most", LockoutPolicy.FAILURES_A_MINUTE)
                .getResultList()
                .isEmpty();
        return counted ? Optional.empty() : Optional.of(Duration.between(now, minute.plus(1, ChronoUnit.MINUTES)));
    }

    /**
     * Counts an attempt for a name.
     *
     * @return how long to wait; empty when the attempt may be looked at
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Duration> countName(String key, Instant now) {
        session.createNativeMutationQuery("delete from guessed_name where last < :old")
                .setParameter("old", now.minus(NAMES_KEPT))
                .executeUpdate();
        String digest = Sha256.hex(key);
        Optional<Integer> failures = session.createNativeQuery(
                        """
                        insert into guessed_name as g (key_sha256, failures, last) values (:key, 1, :now)
                        on conflict (key_sha256) do update set failures = g.failures + 1, last = excluded.last
                        where g.closed is null or g.closed <= excluded.last
                        returning failures""",
                        Integer.class)
                .setParameter("key", digest)
                .setParameter("now", now)
                .uniqueResultOptional();
        if (failures.isEmpty()) {
            return session.createNativeQuery("select closed from guessed_name where key_sha256 = :key", Instant.class)
                    .setParameter("key", digest)
                    .uniqueResultOptional()
                    .map(closed -> Duration.between(now, closed));
        }
        LockoutPolicy.lockedFor(failures.get()).ifPresent(locked -> session.createNativeMutationQuery(
                        "update guessed_name set closed = :until where key_sha256 = :key")
                .setParameter("until", now.plus(locked))
                .setParameter("key", digest)
                .executeUpdate());
        return Optional.empty();
    }

    /** Takes back what was counted: the attempt was right. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void forgive(String key, @Nullable String address, Instant counted) {
        session.createNativeMutationQuery("delete from guessed_name where key_sha256 = :key")
                .setParameter("key", Sha256.hex(key))
                .executeUpdate();
        session.createNativeMutationQuery(
                        """
                        update guessing_address set failures = failures - 1
                        where address = :address and minute = :minute and failures > 0""")
                .setParameter("address", named(address))
                .setParameter("minute", minute(counted))
                .executeUpdate();
    }

    private static Instant minute(Instant now) {
        return now.truncatedTo(ChronoUnit.MINUTES);
    }

    private static String named(@Nullable String address) {
        return address == null ? Caller.UNKNOWN : address;
    }
}
