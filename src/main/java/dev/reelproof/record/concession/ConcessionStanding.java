package dev.reelproof.record.concession;

import dev.reelproof.quantity.Length;
import dev.reelproof.record.TestRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the concessions of a reel mean for its newest record.
 *
 * @param granted the approved ones that bear on it, in the order of their approval: a use as it is of this very record, a regrade to its
 *     product, a shortening since which it was tested
 * @param open the one that nobody decided yet; empty when there is none
 * @param untested the shortening since which the reel was not tested at its new length; empty when there is none
 */
public record ConcessionStanding(List<Concession> granted, Optional<Concession> open, Optional<Concession> untested) {

    /** A reel that has no concessions. */
    public static final ConcessionStanding NONE = new ConcessionStanding(List.of(), Optional.empty(), Optional.empty());

    /** The length of a reel is a nominal one; a shortened reel was tested when the bay measured no more than this share beyond. */
    private static final double MOST_DIFFERENCE = 0.02;

    public ConcessionStanding {
        granted = List.copyOf(granted);
    }

    /**
     * What the concessions of a reel mean for its newest record.
     *
     * @param ofReel all of them, in any order
     */
    public static ConcessionStanding of(List<Concession> ofReel, TestRecord newest) {
        List<Concession> granted = new ArrayList<>();
        Optional<Concession> untested = Optional.empty();
        List<Concession> approved = ofReel.stream()
                .filter(Concession::isApproved)
                .sorted((one, other) ->
                        one.approval().at().compareTo(other.approval().at()))
                .toList();
        for (Concession concession : approved) {
            if (concession.terms() instanceof Terms.Shorten shorten && !wasTestedSince(concession, shorten, newest)) {
                untested = Optional.of(concession);
            } else if (bearsOn(concession, newest)) {
                granted.add(concession);
            }
        }
        Optional<Concession> open = ofReel.stream()
                .filter(concession -> concession.state(newest.id()) == Concession.State.OPEN)
                .findFirst();
        return new ConcessionStanding(granted, open, untested);
    }

    private static boolean wasTestedSince(Concession concession, Terms.Shorten shorten, TestRecord newest) {
        Length now = newest.length();
        return newest.finished().isAfter(concession.approval().at())
                && now.metres() <= shorten.length().metres() * (1 + MOST_DIFFERENCE);
    }

    private static boolean bearsOn(Concession concession, TestRecord newest) {
        if (concession.terms() instanceof Terms.Regrade regrade) {
            return regrade.product().equals(newest.product().id());
        }
        return concession.terms() instanceof Terms.Shorten
                || concession.record().equals(newest.id());
    }

    /** Whether one is not decided, or not done: until then the reel neither ships nor has a certificate. */
    public boolean isUnfinished() {
        return open.isPresent() || untested.isPresent();
    }

    /** The approved use of this record as it is; empty when there is none. */
    public Optional<Concession> usedAsIs() {
        return granted.stream()
                .filter(concession -> concession.terms() instanceof Terms.UseAsIs)
                .findFirst();
    }
}
