package dev.reelproof.wording;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A judgement as a person reads it.
 *
 * @param verdict what the reel came to
 * @param look which of the four looks it has
 * @param sentence what that means for the reel
 * @param nextSteps what to do, in order; sentences
 * @param passing how many requirements pass, conditionally or not
 * @param failing how many fail, conditionally or not
 * @param notTested how many were not tested
 * @param conformity how sure it is that all judged values meet their limits; null where no uncertainty is known
 */
public record RecordWords(
        String verdict,
        Look look,
        String sentence,
        List<String> nextSteps,
        int passing,
        int failing,
        int notTested,
        @Nullable String conformity) {

    public RecordWords {
        nextSteps = List.copyOf(nextSteps);
    }
}
