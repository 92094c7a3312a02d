package dev.reelproof.genealogy.hold;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Stretch;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/**
 * A hold: what it names, and all that descends from it, gets no certificate and must not leave while it is open.
 *
 * @param id its number within its plant
 * @param target what it names
 * @param reason why
 * @param by who placed it
 * @param byKind what kind of caller that was: {@code person} or {@code token}
 * @param at when, in UTC
 * @param releases the releases since, in order
 */
public record Hold(
        long id,
        HoldTarget target,
        String reason,
        String by,
        String byKind,
        OffsetDateTime at,
        List<Release> releases) {

    /**
     * A release by somebody else.
     *
     * @param range the stretch of the held lot that is released; null when all is
     * @param reason why
     * @param by who
     * @param at when, in UTC
     */
    public record Release(Range range, String reason, String by, OffsetDateTime at) {}

    /**
     * A stretch of the held lot, as it was sent.
     *
     * @param from its beginning, in {@code unit}; zero or more
     * @param to its end; beyond its beginning
     * @param unit a lot's unit of length or mass
     */
    public record Range(double from, double to, String unit) {
        public Range {
            Amount.kindOf(unit);
            if (!(from >= 0 && to > from && Double.isFinite(Amount.baseOf(to, unit)))) {
                throw new IllegalArgumentException("a range begins at zero or more and ends beyond that, not from "
                        + from + " to " + to + " " + unit);
            }
        }

        /**
         * The one unit that both ends are given in.
         *
         * @throws IllegalArgumentException when they are in two
         */
        public static String oneUnit(String unitOfFrom, String unitOfTo) {
            if (!unitOfFrom.equals(unitOfTo)) {
                throw new IllegalArgumentException("is in " + unitOfTo + ", and 'from' in " + unitOfFrom
                        + "; give both ends of a range in one unit");
            }
            return unitOfTo;
        }

        /** The stretch, in metres or kilograms. */
        public Stretch stretch() {
            return new Stretch(Amount.baseOf(from, unit), Amount.baseOf(to, unit));
        }

        /**
         * Requires that it lies on a lot.
         *
         * @throws IllegalArgumentException when it does not
         */
        public void requireOn(String lot, Amount quantity) {
            if (Amount.kindOf(unit) != quantity.kind()) {
                throw new IllegalArgumentException(lot + " is measured as "
                        + quantity.kind().words() + " (" + quantity + "); a range of it cannot be given in " + unit);
            }
            if (!new Stretch(0, quantity.base()).covers(stretch())) {
                throw new IllegalArgumentException(
                        lot + " ends at " + quantity + "; there is no place at " + to + " " + unit + " on it");
            }
        }
    }

    public Hold {
        releases = List.copyOf(releases);
    }

    /** The hold after one more release. */
    public Hold with(Release release) {
        List<Release> all = new ArrayList<>(releases);
        all.add(release);
        return new Hold(id, target, reason, by, byKind, at, all);
    }

    /** Whether nobody has released the whole of it. */
    public boolean isOpen() {
        return releases.stream().allMatch(release -> release.range() != null);
    }

    /** The stretches of the held lot that were released, in as few as can be; empty when none was. */
    public List<Stretch> releasedStretches() {
        return Stretch.union(releases.stream()
                .filter(release -> release.range() != null)
                .map(release -> release.range().stretch())
                .toList());
    }

    /** Says what is held and why, for whoever must act. */
    public String inWords() {
        return "hold " + id + " of " + target + ", placed by " + by + " on " + at.toLocalDate() + ": " + reason;
    }
}
