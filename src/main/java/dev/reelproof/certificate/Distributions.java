package dev.reelproof.certificate;

import dev.reelproof.certificate.Distribution.Worst;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.Wording;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Sums up the sweeps of a cable of many pairs: how their least margins lie, and which are the least. */
final class Distributions {
    /** Fewer sweeps than this are seen in their plot. */
    static final int FEWEST = 100;

    private static final int CLASSES = 20;
    private static final int MOST_LISTED = 10;
    private static final int PLACES = 2;

    private final Wording wording;

    Distributions(Wording wording) {
        this.wording = wording;
    }

    /** A sweep where its margin is least. */
    private record Least(CorrectedSweep sweep, int index, double limit, double margin) {}

    List<Distribution> of(Judgement judgement, LimitSet limitSet, Product product) {
        return judgement.findings().stream()
                .filter(finding -> finding.figure() != null)
                .map(finding -> of(finding, Rows.requirement(finding, limitSet, product), judgement))
                .filter(Objects::nonNull)
                .toList();
    }

    /** The distribution for a requirement on each single value; null where there are too few sweeps for one. */
    private @Nullable Distribution of(Finding finding, Requirement requirement, Judgement judgement) {
        if (requirement.statistic() != Statistic.INDIVIDUAL) {
            return null;
        }
        List<Least> least = judgement.sweeps().stream()
                .filter(sweep -> sweep.property() == finding.property()
                        && sweep.unit().equals(finding.worst().unit()))
                .map(sweep -> least(sweep, requirement))
                .filter(Objects::nonNull)
                .sorted(Comparator.comparingDouble(Least::margin))
                .toList();
        if (least.size() < FEWEST) {
            return null;
        }
        double from = least.get(0).margin();
        double to = least.get(least.size() - 1).margin();
        double width = to > from ? (to - from) / CLASSES : 1;
        List<Double> edges = new ArrayList<>();
        for (int i = 0; i <= CLASSES; i++) {
            edges.add(from + i * width);
        }
        List<Integer> counts = new ArrayList<>(Collections.nCopies(CLASSES, 0));
        for (Least one : least) {
            int place = Math.min(CLASSES - 1, (int) ((one.margin() - from) / width));
            counts.set(place, counts.get(place) + 1);
        }
        return new Distribution(
                requirement.id(),
                wording.title(requirement),
                finding.worst().unit(),
                least.size(),
                edges,
                counts,
                least.stream().limit(MOST_LISTED).map(this::worst).toList());
    }

    private Worst worst(Least least) {
        CorrectedSweep sweep = least.sweep();
        return new Worst(
                wording.place(sweep.property(), sweep.subject()) + ", "
                        + Figures.frequency(sweep.grid().megahertz(least.index())),
                Figures.fixed(sweep.corrected(least.index()), PLACES),
                Figures.fixed(least.limit(), PLACES),
                Figures.fixed(least.margin(), PLACES));
    }

    /** Where a sweep comes nearest to its limit; null where it has no value that the limit holds for. */
    private static @Nullable Least least(CorrectedSweep sweep, Requirement requirement) {
        FrequencyGrid grid = sweep.grid();
        Limit limit = requirement.limit();
        Least least = null;
        for (int i = 0; i < grid.size(); i++) {
            if (!requirement.domain().holds(grid.megahertz(i))) {
                continue;
            }
            double upper = limit.upper().isPresent() ? limit.upper().get().at(grid.megahertz(i)) : Double.NaN;
            double lower = limit.lower().isPresent() ? limit.lower().get().at(grid.megahertz(i)) : Double.NaN;
            double toUpper = upper - sweep.corrected(i);
            double toLower = sweep.corrected(i) - lower;
            boolean upperCounts = !(toLower <= toUpper) && limit.upper().isPresent()
                    || limit.lower().isEmpty();
            double margin = upperCounts ? toUpper : toLower;
            if (least == null || margin < least.margin()) {
                least = new Least(sweep, i, upperCounts ? upper : lower, margin);
            }
        }
        return least;
    }
}
