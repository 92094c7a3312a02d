package dev.reelproof.judgement;

import dev.reelproof.limit.Requirement;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The limit of one requirement over each grid of a result. */
final class LimitColumns {
    private final Requirement requirement;
    private final Map<Optional<FrequencyGrid>, LimitColumn> byGrid = new HashMap<>();
    private @Nullable FrequencyGrid lastGrid;
    private @Nullable LimitColumn last;

    LimitColumns(Requirement requirement) {
        this.requirement = requirement;
    }

    /**
     * The limit over a grid. Most series of a result have the grid of the one before.
     *
     * @param grid absent for single values
     */
    LimitColumn over(@Nullable FrequencyGrid grid) {
        LimitColumn known = last;
        if (known == null || !Objects.equals(grid, lastGrid)) {
            known = byGrid.computeIfAbsent(Optional.ofNullable(grid), key -> new LimitColumn(requirement, grid));
            last = known;
            lastGrid = grid;
        }
        return known;
    }
}
