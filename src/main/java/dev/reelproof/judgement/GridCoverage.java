package dev.reelproof.judgement;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.Requirement;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Whether the frequencies of a sweep are those that a requirement needs: its spot, or its whole range without too wide a step. */
final class GridCoverage {
    /** A step may be wider by this share: bays print frequencies with few decimals. Common practice, no source. */
    private static final double STEP_TOLERANCE = 1e-3;

    private final GridRule gridRule;
    private final Requirement requirement;
    private final Map<FrequencyGrid, Function<Series, Optional<Obstacle>>> lacking = new HashMap<>();

    GridCoverage(GridRule gridRule, Requirement requirement) {
        this.gridRule = gridRule;
        this.requirement = requirement;
    }

    /** What the grid of a series lacks; empty when nothing, and for a single value. */
    Optional<Obstacle> lackedBy(Series series) {
        FrequencyGrid grid = series.grid();
        return grid == null
                ? Optional.empty()
                : lacking.computeIfAbsent(grid, this::lackedBy).apply(series);
    }

    /** What a grid lacks: worked out once, told of each series on it. */
    private Function<Series, Optional<Obstacle>> lackedBy(FrequencyGrid grid) {
        if (requirement.domain() instanceof Domain.Spot spot && !holds(grid, spot)) {
            return lacking(Obstacle.Kind.SPOT_NOT_MEASURED, Map.of("at", String.valueOf(spot.megahertz())));
        }
        if (requirement.domain() instanceof Domain.Range range) {
            boolean spanned = grid.first() <= range.from() * (1 + Domain.FREQUENCY_TOLERANCE)
                    && grid.last() >= range.to() * (1 - Domain.FREQUENCY_TOLERANCE);
            return spanned
                    ? coarse(grid, range)
                    : lacking(
                            Obstacle.Kind.RANGE_NOT_SPANNED,
                            Map.of(
                                    "from", String.valueOf(grid.first()),
                                    "to", String.valueOf(grid.last()),
                                    "limitFrom", String.valueOf(range.from()),
                                    "limitTo", String.valueOf(range.to())));
        }
        return series -> Optional.empty();
    }

    /** An obstacle that every series on a grid has, with its figures. */
    private Function<Series, Optional<Obstacle>> lacking(Obstacle.Kind kind, Map<String, String> figures) {
        return series -> {
            Map<String, String> parts = new HashMap<>(figures);
            parts.put("property", requirement.property().id());
            parts.put("where", series.subject().words());
            return Optional.of(new Obstacle(kind, parts));
        };
    }

    private static boolean holds(FrequencyGrid grid, Domain.Spot spot) {
        for (int i = 0; i < grid.size(); i++) {
            if (spot.holds(grid.megahertz(i))) {
                return true;
            }
        }
        return false;
    }

    private Function<Series, Optional<Obstacle>> coarse(FrequencyGrid grid, Domain.Range range) {
        for (int i = 1; i < grid.size(); i++) {
            double low = grid.megahertz(i - 1);
            double high = grid.megahertz(i);
            boolean within = high > range.from() && low < range.to();
            boolean fine = high - low <= gridRule.megahertz() * (1 + STEP_TOLERANCE)
                    || Math.log10(high / low) <= gridRule.decades() * (1 + STEP_TOLERANCE);
            if (within && !fine) {
                return lacking(
                        Obstacle.Kind.GRID_TOO_COARSE,
                        Map.of(
                                "from", String.valueOf(low),
                                "to", String.valueOf(high),
                                "widest", String.valueOf(gridRule.megahertz()),
                                "widestDecades", String.valueOf(gridRule.decades())));
            }
        }
        return series -> Optional.empty();
    }
}
