package dev.reelproof.analysis;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The suspects of a population, best evidence first: what lies upstream, and the test itself.
 *
 * <p>Exposures that exactly the same reels met are one suspect, because nothing in these reels tells them apart. They are joined before
 * the correction for many tests, so that one cause is not counted several times. What every reel met is no suspect, nor is what too few
 * met. What could not be significant whatever was found (Tarone) is listed and not tested.
 *
 * <p>Reels are compared within the week of their test, unless the question says otherwise: that chance decides q and what is named.
 * Failures cluster in time, and everything that was in use then would look guilty among all reels together. What all reels of its weeks
 * met cannot be told from those weeks and is not tested. What is named comes first; the rest follows by its evidence among all reels, and
 * says whether it would be named by that.
 *
 * <p>Two suspects whose reels overlap are each tested again with the other held fixed: within the reels that met the other, and within
 * those that did not. Where nothing significant is left of either, they cannot be told apart. Where something is left of only one, it
 * explains the other.
 *
 * @param question what was asked
 * @param reels how many reels
 * @param failing how many of them fail
 * @param strata in how many strata they are compared
 * @param exposures how many different things they met
 * @param metByEveryReel how many of these every reel met, so that there is nothing to compare with
 * @param metByTooFew how many of these fewer reels met than the question's minimum
 * @param suspectGroups how many suspects are left when those that the same reels met are joined
 * @param tested how many of these were tested, the m of the correction
 * @param testCause the test, where it is named and explains what was found at least as well as anything upstream
 * @param suspects the suspects
 */
public record SuspectRanking(
        SuspectQuestion question,
        int reels,
        int failing,
        int strata,
        int exposures,
        int metByEveryReel,
        int metByTooFew,
        int suspectGroups,
        int tested,
        @Nullable TestCause testCause,
        List<Suspect> suspects) {

    public SuspectRanking {
        suspects = List.copyOf(suspects);
    }

    /**
     * Ranks the suspects of traced reels.
     *
     * @param most how many of them to give, at least 0
     * @throws IncomparableMarginsException when margins are the evidence, and they are of several products or in several units
     */
    public static SuspectRanking of(TracedPopulation traced, SuspectQuestion question, int most) {
        traced.requireComparable(question.evidence());
        return of(traced.population(), question, most);
    }

    /**
     * Ranks the suspects of a population.
     *
     * @param most how many of them to give, at least 0
     * @throws IllegalArgumentException when margins are the evidence and a reel has none
     */
    public static SuspectRanking of(Population population, SuspectQuestion question, int most) {
        return new Ranking(population, question).rank(most);
    }
}
