package dev.reelproof.judgement;

import dev.reelproof.limit.Requirement;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.IdentityHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The limit of one requirement over each grid of a result. */
final class LimitColumns {
    private final Requirement requirement;
    private final Map<Object, LimitColumn> byGrid = new IdentityHashMap<>();

    LimitColumns(Requirement requirement) {
        this.requirement = requirement;
    }

    /**
     * The limit over a grid.
     *
     * @param grid absent for single values
     */
    LimitColumn over(@Nullable FrequencyGrid grid) {
        return byGrid.computeIfAbsent(grid == null ? requirement : grid, key -> new LimitColumn(requirement, grid));
    }
}
