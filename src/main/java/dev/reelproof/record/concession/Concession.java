package dev.reelproof.record.concession;

import dev.reelproof.quantity.Length;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A concession: what one person asks to do with a reel that its test did not accept without conditions, and what another decided.
 *
 * @param id its number within its plant
 * @param reel the reel's number
 * @param record the record that it concedes
 * @param terms what it concedes
 * @param requirements the ids of the requirements that the record does not pass, or passes only conditionally
 * @param before what the reel was registered as when it was asked for
 * @param reason why, as the requester put it
 * @param requestedBy who asked
 * @param requested when, in UTC
 * @param decision what was decided; null while nobody decided
 */
public record Concession(
        long id,
        String reel,
        UUID record,
        Terms terms,
        List<String> requirements,
        Registration before,
        String reason,
        Person requestedBy,
        OffsetDateTime requested,
        @Nullable Decision decision) {

    /**
     * A person who asks or decides.
     *
     * @param name the name of the account
     * @param role the word of the role that gives the right
     */
    public record Person(String name, String role) {
        public Person {
            if (name == null || name.isBlank() || role == null || role.isBlank()) {
                throw new IllegalArgumentException(
                        "who concedes has a name and a role, not '" + name + "', '" + role + "'");
            }
        }
    }

    /**
     * What a reel is registered as, as far as a concession changes it.
     *
     * @param product the code of its product
     * @param length its length, in {@code unit}
     * @param unit a unit of length
     */
    public record Registration(String product, double length, String unit) {
        /** The length. */
        public Length metric() {
            return Length.of(length, unit);
        }
    }

    /**
     * What was decided.
     *
     * @param approved whether it was approved
     * @param by who decided
     * @param at when, in UTC
     * @param reason why so
     * @param newRecord the record of the same upload, judged as the new product; null unless the reel was regraded
     */
    public record Decision(boolean approved, Person by, OffsetDateTime at, String reason, @Nullable UUID newRecord) {
        public Decision {
            Objects.requireNonNull(by, "a decision has a person");
            Objects.requireNonNull(at, "a decision has a time");
            if (reason == null || reason.isBlank()) {
                throw new IllegalArgumentException("a decision has a reason");
            }
            if (!(approved || newRecord == null)) {
                throw new IllegalArgumentException("a refused concession changes nothing, and makes no record");
            }
        }
    }

    /** How a concession stands. */
    public enum State {
        OPEN,
        APPROVED,
        REFUSED,
        /** Nobody decided before the reel was tested again; nobody can any more. */
        LAPSED;

        /** The word in the HTTP contract. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Concession {
        requireText("reel", reel);
        requireText("reason", reason);
        Objects.requireNonNull(record, "a concession names the record that it concedes");
        Objects.requireNonNull(terms, "a concession says what it concedes");
        Objects.requireNonNull(before, "a concession says what the reel was before");
        Objects.requireNonNull(requestedBy, "a concession says who asked for it");
        Objects.requireNonNull(requested, "a concession says when it was asked for");
        requirements = List.copyOf(requirements);
        if (requirements.isEmpty()) {
            throw new IllegalArgumentException("a concession of reel " + reel + " concedes no requirement");
        }
        if (decision != null) {
            boolean isRegrade = terms.kind() == Terms.Kind.REGRADE;
            if (decision.approved() && isRegrade != (decision.newRecord() != null)) {
                throw new IllegalArgumentException(
                        "concession " + id + ": an approved regrade, and nothing else, makes a new record");
            }
        }
    }

    private static void requireText(String what, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException("a concession needs a " + what);
        }
    }

    /** The concession as it was decided. */
    public Concession decided(Decision made) {
        return new Concession(id, reel, record, terms, requirements, before, reason, requestedBy, requested, made);
    }

    /** Whether it was approved. */
    public boolean isApproved() {
        return decision != null && decision.approved();
    }

    /** The decision of a concession that was approved. */
    public Decision approval() {
        if (decision == null || !decision.approved()) {
            throw new IllegalStateException("concession " + id + " was not approved");
        }
        return decision;
    }

    /**
     * How it stands.
     *
     * @param newest the newest record of its reel
     */
    public State state(UUID newest) {
        if (decision != null) {
            return decision.approved() ? State.APPROVED : State.REFUSED;
        }
        return record.equals(newest) ? State.OPEN : State.LAPSED;
    }
}
