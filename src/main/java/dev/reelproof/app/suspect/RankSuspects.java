package dev.reelproof.app.suspect;

import dev.reelproof.analysis.IncomparableMarginsException;
import dev.reelproof.analysis.ReelSelection;
import dev.reelproof.analysis.SuspectQuestion;
import dev.reelproof.analysis.SuspectRanking;
import dev.reelproof.analysis.TracedPopulation;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.suspect.PopulationQuery;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;

/** Ranks what reels that fail a property have in common. */
@ApplicationScoped
public class RankSuspects {
    private final PopulationQuery populations;

    RankSuspects(PopulationQuery populations) {
        this.populations = populations;
    }

    /**
     * The answer.
     *
     * @param reels the reels that were asked about
     * @param population those that were compared, and how many were left out
     * @param ranking the suspects
     */
    public record Ranked(ReelSelection reels, TracedPopulation population, SuspectRanking ranking) {}

    /**
     * Ranks the suspects of these reels. The transaction ends before the ranking begins: it takes time and needs no database.
     *
     * @param most how many suspects to give
     * @throws IntakeException when there are too many reels, or the search takes too long
     * @throws IncomparableMarginsException when margins are asked for and cannot be ranked together
     */
    public Ranked rank(ReelSelection reels, SuspectQuestion question, int most) {
        TracedPopulation population = find(reels, question);
        return new Ranked(reels, population, SuspectRanking.of(population, question, most));
    }

    private TracedPopulation find(ReelSelection reels, SuspectQuestion question) {
        try {
            return QuarkusTransaction.joiningExisting().call(() -> populations.find(reels, question.evidence()));
        } catch (SearchTooLargeException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "query", e);
        }
    }
}
