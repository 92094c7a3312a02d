package dev.reelproof.app.limits;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.limit.LimitAt;
import dev.reelproof.limit.LimitSet;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Answers what limit sets there are and what they demand. */
@Singleton
public class AskLimits {
    private final LimitSets limitSets;
    private final Clock clock;

    AskLimits(LimitSets limitSets, Clock clock) {
        this.limitSets = limitSets;
        this.clock = clock;
    }

    /** Every revision of every set. */
    public List<LimitSet> all() {
        return limitSets.all();
    }

    /**
     * A limit set.
     *
     * @param revision its revision; empty for the one in force today
     * @throws NothingThereException when there is none
     */
    public LimitSet limitSet(String id, Optional<Integer> revision) {
        return revision.map(number -> limitSets.revision(id, number))
                .orElseGet(() -> limitSets.current(id, LocalDate.now(clock)))
                .orElseThrow(() -> new NothingThereException("There is no limit set '" + id + "'"
                        + revision.map(number -> " of revision " + number).orElse("")
                        + "; GET /api/v1/limit-sets lists them."));
    }

    /**
     * The limit of a property or requirement, at a frequency where it has one.
     *
     * @param revision the set's revision; empty for the one in force today
     * @param megahertz the frequency, MHz; empty when none is meant
     * @param pairs the pair count of the product; empty for any
     * @throws NothingThereException when there is no such set, or nothing on this property in it
     * @throws IntakeException when there is no limit at that frequency
     */
    public LimitAt limit(
            String id,
            String property,
            Optional<Double> megahertz,
            Optional<Integer> pairs,
            Optional<Integer> revision) {
        try {
            return LimitAt.of(limitSet(id, revision), property, megahertz, pairs)
                    .orElseThrow(() -> new NothingThereException("Limit set " + id + " has no requirement on '"
                            + property + "'"
                            + pairs.map(count -> " for " + count + " pairs").orElse("") + "."));
        } catch (IllegalArgumentException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "frequency", e);
        }
    }
}
