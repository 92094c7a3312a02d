package dev.reelproof.genealogy.hold;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.RunId;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;

/**
 * What a hold names. All that descends from it is held with it.
 *
 * @param what what it is
 * @param name the lot's, reel's or run's identifier, or the machine's name
 * @param from the beginning of the machine's time, held in UTC to the microsecond; null for all else
 * @param to the end of the machine's time, likewise; not before {@code from}
 */
public record HoldTarget(What what, String name, OffsetDateTime from, OffsetDateTime to) {

    /** What can be held. */
    public enum What {
        LOT("lot"),
        REEL("reel"),
        RUN("run"),
        MACHINE("machine");

        private final String word;

        What(String word) {
            this.word = word;
        }

        /** As requests, answers and the database spell it. */
        public String word() {
            return word;
        }

        /**
         * What has that word.
         *
         * @throws IllegalArgumentException when nothing has
         */
        public static What named(String word) {
            for (What what : values()) {
                if (what.word.equals(word)) {
                    return what;
                }
            }
            throw new IllegalArgumentException(
                    "'" + word + "' cannot be held; a lot, a reel, a run or a machine within a time can");
        }
    }

    public HoldTarget {
        if (what == What.MACHINE) {
            if (name == null || from == null || to == null) {
                throw new IllegalArgumentException("a machine is held for a time: name it, and say from when to when");
            }
            Lot.checkName("machine", name);
            Lot.checkYear("a machine is held", from);
            Lot.checkYear("a machine is held", to);
            from = inUtc(from);
            to = inUtc(to);
            if (to.isBefore(from)) {
                throw new IllegalArgumentException(
                        "the time ends at " + to + ", before it begins (" + from + "); give the earlier time first");
            }
        } else {
            if (from != null || to != null) {
                throw new IllegalArgumentException(
                        "a " + what.word + " is held whole; only a machine is held from when to when");
            }
            // Both have identifiers of one form.
            name = what == What.RUN ? new RunId(name).value() : new LotId(name).value();
        }
    }

    private static OffsetDateTime inUtc(OffsetDateTime time) {
        return time.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
    }

    public static HoldTarget ofLot(LotId lot) {
        return new HoldTarget(What.LOT, lot.value(), null, null);
    }

    public static HoldTarget ofReel(LotId reel) {
        return new HoldTarget(What.REEL, reel.value(), null, null);
    }

    public static HoldTarget ofRun(RunId run) {
        return new HoldTarget(What.RUN, run.value(), null, null);
    }

    public static HoldTarget ofMachine(String machine, OffsetDateTime from, OffsetDateTime to) {
        return new HoldTarget(What.MACHINE, machine, from, to);
    }

    /** Whether it has a length of which a stretch can be released. */
    public boolean hasLength() {
        return what == What.LOT || what == What.REEL;
    }

    @Override
    public String toString() {
        return what.word + " " + name + (what == What.MACHINE ? " from " + from + " to " + to : "");
    }
}
