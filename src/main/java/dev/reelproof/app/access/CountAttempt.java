package dev.reelproof.app.access;

import dev.reelproof.store.access.SignInThrottle;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** Counts an attempt, in a transaction of its own: it counts also while a password is hashed, and whatever comes of it. */
@ApplicationScoped
public class CountAttempt {
    private final SignInThrottle throttle;

    public CountAttempt(SignInThrottle throttle) {
        this.throttle = throttle;
    }

    /**
     * Counts an attempt of an address.
     *
     * @return how long to wait; empty when the attempt may be looked at
     */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<Duration> ofAddress(String address, Instant now) {
        return throttle.countAddress(address, now);
    }

    /**
     * Counts an attempt of an address for a name.
     *
     * @return how long to wait; empty when the attempt may be looked at
     */
    @Transactional(Transactional.TxType.REQUIRES_NEW)
    public Optional<Duration> ofName(String key, String address, Instant now) {
        return throttle.countAddress(address, now).or(() -> throttle.countName(key, now));
    }
}
