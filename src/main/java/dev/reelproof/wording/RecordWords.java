package dev.reelproof.wording;

import java.util.List;

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
 */
public record RecordWords(
        String verdict, Look look, String sentence, List<String> nextSteps, int passing, int failing, int notTested) {

    public RecordWords {
        nextSteps = List.copyOf(nextSteps);
    }
}
