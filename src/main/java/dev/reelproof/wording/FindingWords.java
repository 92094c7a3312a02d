package dev.reelproof.wording;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A finding as a person reads it.
 *
 * @param title the trade's name with statistic and scope
 * @param plain the property in plain words
 * @param outcome what it came to
 * @param sign the same as a sign
 * @param place where the worst figure was found
 * @param printed that figure; null when there is none
 * @param sentence all of it in one sentence, without title and full stop
 * @param shortfall by how much it misses its limit and where; null unless it fails
 * @param obstacles what stands in the way of judging it
 * @param moreObstacles how many more stand there
 * @param remark what there is to say of a finding that was tested; null when there is nothing
 * @param note the shortest that explains the row of a table
 * @param caution what keeps who tests it safe; null when no more than usual care is needed
 * @param leastSure where it is least sure that the requirement is met, and how sure it is of all values; null where that is not known
 */
public record FindingWords(
        String title,
        String plain,
        String outcome,
        String sign,
        String place,
        @Nullable PrintedFigure printed,
        String sentence,
        @Nullable String shortfall,
        List<ObstacleWords> obstacles,
        int moreObstacles,
        @Nullable String remark,
        String note,
        @Nullable String caution,
        @Nullable String leastSure) {

    public FindingWords {
        obstacles = List.copyOf(obstacles);
    }
}
