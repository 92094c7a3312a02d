package dev.reelproof.api.lot;

import dev.reelproof.app.lot.LoadResult;
import java.util.List;

/**
 * What became of a load; the three together are its reports.
 *
 * @param accepted how many are registered, now or before
 * @param waiting how many are kept until their parents come
 * @param refused those that are not kept
 */
record LoadAnswer(int accepted, int waiting, List<Refused> refused) {

    /** A report that is not kept: the line that it begins on, from 1, and why. */
    record Refused(int line, String message) {}

    static LoadAnswer of(LoadResult result) {
        return new LoadAnswer(
                result.accepted(),
                result.waiting(),
                result.refused().stream()
                        .map(one -> new Refused(one.line(), one.message()))
                        .toList());
    }
}
