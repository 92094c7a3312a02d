package dev.reelproof.store.result;

import java.security.SecureRandom;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Ids of records: UUID version 7 (RFC 9562 section 5.7, from memory), whose first 48 bits are the time of receipt in
 * milliseconds since 1970.
 *
 * <p>An id therefore says in which partition its record lies.
 */
final class RecordIds {
    private static final int VERSION = 7;
    private static final int VERSION_SHIFT = 12;
    private static final int TIME_SHIFT = 16;
    private static final long RANDOM_A_MASK = 0x0FFFL;
    private static final long RANDOM_B_MASK = 0x3FFF_FFFF_FFFF_FFFFL;
    private static final long VARIANT = 0x8000_0000_0000_0000L;
    private static final SecureRandom RANDOM = new SecureRandom();

    private RecordIds() {}

    static UUID at(Instant received) {
        long high = received.toEpochMilli() << TIME_SHIFT
                | (long) VERSION << VERSION_SHIFT
                | RANDOM.nextLong() & RANDOM_A_MASK;
        return new UUID(high, VARIANT | RANDOM.nextLong() & RANDOM_B_MASK);
    }

    /** The time of receipt that an id carries; empty when it is no id of a record. */
    static Optional<Instant> received(UUID id) {
        return id.version() == VERSION
                ? Optional.of(Instant.ofEpochMilli(id.getMostSignificantBits() >>> TIME_SHIFT))
                : Optional.empty();
    }
}
