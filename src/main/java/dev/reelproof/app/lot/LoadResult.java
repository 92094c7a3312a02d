package dev.reelproof.app.lot;

import java.util.List;

/**
 * What became of a load; the three together are its reports.
 *
 * @param accepted how many are registered, now or before
 * @param waiting how many are kept until their parents come
 * @param refused those that are not kept, by line
 */
public record LoadResult(int accepted, int waiting, List<Refused> refused) {

    /** A report that is not kept: the line that it begins on, from 1, and why. */
    public record Refused(int line, String message) {}

    public LoadResult {
        refused = List.copyOf(refused);
    }
}
