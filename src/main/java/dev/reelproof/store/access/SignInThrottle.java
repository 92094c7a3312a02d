package dev.reelproof.store.access;

import dev.reelproof.access.Caller;
import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.hibernate.Session;

/**
 * Wrong passwords, counted in the database so that several copies of the service count together.
 *
 * <p>Each attempt is counted as wrong before it is looked at, and forgiven when it was right: attempts sent at once are then no
 * more than attempts sent in a row, and no row is locked while a password is hashed.
 */
@ApplicationScoped
public class SignInThrottle {
    /** From this many in a row a name is closed for a minute, then two, four, eight, and from then on fifteen. */
    public static final int IN_A_ROW = 5;

    static final int LONGEST_MINUTES = 15;

    /** So many wrong attempts of one address are looked at within a minute. */
    public static final int A_MINUTE = 60;

    private static final int MOST_DOUBLINGS = 10;
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
    @Transactional
    public Optional<Duration> countAddress(String address, Instant now) {
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
                .setParameter("address", words(address))
                .setParameter("minute", minute)
                .setParameter("most", A_MINUTE)
                .getResultList()
                .isEmpty();
        return counted ? Optional.empty() : Optional.of(Duration.between(now, minute.plus(1, ChronoUnit.MINUTES)));
    }

    /** Counts an attempt for a name; as {@link #countAddress}. */
    @Transactional
    public Optional<Duration> countName(String key, Instant now) {
        session.createNativeMutationQuery("delete from guessed_name where last < :old")
                .setParameter("old", now.minus(NAMES_KEPT))
                .executeUpdate();
        String digest = Sha256.hex(key);
        boolean counted = !session.createNativeQuery(
                        """
                        insert into guessed_name as g (key_sha256, failures, last) values (:key, 1, :now)
                        on conflict (key_sha256) do update set failures = g.failures + 1, last = excluded.last,
                            closed = case when g.failures + 1 >= :most then excluded.last + make_interval(mins =>
                                cast(least(:longest, power(2, least(g.failures + 1 - :most, :doublings))) as int)) end
                        where g.closed is null or g.closed <= excluded.last
                        returning failures""",
                        Integer.class)
                .setParameter("key", digest)
                .setParameter("now", now)
                .setParameter("most", IN_A_ROW)
                .setParameter("longest", LONGEST_MINUTES)
                .setParameter("doublings", MOST_DOUBLINGS)
                .getResultList()
                .isEmpty();
        if (counted) {
            return Optional.empty();
        }
        return session.createNativeQuery("select closed from guessed_name where key_sha256 = :key", Instant.class)
                .setParameter("key", digest)
                .uniqueResultOptional()
                .map(closed -> Duration.between(now, closed));
    }

    /** Takes back what was counted: the attempt was right. */
    @Transactional
    public void forgive(String key, String address, Instant counted) {
        session.createNativeMutationQuery("delete from guessed_name where key_sha256 = :key")
                .setParameter("key", Sha256.hex(key))
                .executeUpdate();
        session.createNativeMutationQuery(
                        """
                        update guessing_address set failures = failures - 1
                        where address = :address and minute = :minute and failures > 0""")
                .setParameter("address", words(address))
                .setParameter("minute", minute(counted))
                .executeUpdate();
    }

    private static Instant minute(Instant now) {
        return now.truncatedTo(ChronoUnit.MINUTES);
    }

    private static String words(String address) {
        return address == null ? Caller.UNKNOWN : address;
    }
}
