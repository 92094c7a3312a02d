package dev.reelproof.access;

import java.time.Duration;
import java.util.Optional;

/** How wrong passwords are throttled: by the name that is tried, and by the address that tries. */
public final class LockoutPolicy {
    /** From this many wrong passwords in a row a name is locked. */
    public static final int FAILURES_IN_A_ROW = 5;

    /** So many wrong attempts of one address are looked at within a minute. */
    public static final int FAILURES_A_MINUTE = 60;

    /** The longest time for which a name is locked. */
    public static final Duration LONGEST = Duration.ofMinutes(15);

    private static final Duration FIRST = Duration.ofMinutes(1);

    private LockoutPolicy() {}

    /**
     * How long a name is locked after its latest failure: not at all, then a minute, two, four, eight, and from then on
     * {@link #LONGEST}.
     *
     * @param failures wrong passwords in a row, the latest one included
     */
    public static Optional<Duration> lockedFor(int failures) {
        if (!(failures >= FAILURES_IN_A_ROW)) {
            return Optional.empty();
        }
        Duration locked = FIRST;
        for (int more = FAILURES_IN_A_ROW; more < failures && locked.compareTo(LONGEST) < 0; more++) {
            locked = locked.multipliedBy(2);
        }
        return Optional.of(locked.compareTo(LONGEST) < 0 ? locked : LONGEST);
    }
}
