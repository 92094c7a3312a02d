package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import java.util.Arrays;
import java.util.Optional;
import java.util.SortedSet;
import org.jspecify.annotations.Nullable;

/** One pass over the values of a series: what each comes to, the least margin of each outcome, and the doubt in them. */
final class SeriesScan {
    private static final int DECIDED_OUTCOMES = Outcome.FAIL.ordinal() + 1;

    private final LimitCheck check;
    private final Series series;
    private final LimitColumn limit;
    private final double nearRounding;
    private final double[] corrected;
    private final boolean mayPassFar;

    /** Standard uncertainties by block, where they were asked for: of values that pass, and of values that fail. */
    private final double[] @Nullable [] ofPasses;

    private final double[] @Nullable [] ofFails;

    /** By outcome, and behind them of all: the least slack and where it is. */
    private final double[] least = new double[DECIDED_OUTCOMES + 1];

    private final int[] leastAt = new int[DECIDED_OUTCOMES + 1];
    private int decided;
    private int failing;
    private int unknownAt = -1;

    /**
     * Scans a series.
     *
     * @param doubt that in the values is added to
     */
    SeriesScan(LimitCheck check, Series series, LimitColumn limit, DoubtTally doubt) {
        this.check = check;
        this.series = series;
        this.limit = limit;
        this.nearRounding = check.turnedByRounding();
        this.corrected = series.corrected();
        this.ofPasses = new double[Block.count(series.size())] @Nullable [];
        this.ofFails = new double[ofPasses.length] @Nullable [];
        this.mayPassFar = check.propagation().isKnown() && !check.needsUncertainty();
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        for (int number = Block.numberOf(limit.from()); number < Block.count(limit.to()); number++) {
            Block block = Block.of(number, series.size());
            double far = mayPassFar ? DoubtTally.FAR * errorAtMost(block) : Double.NaN;
            for (int i = Math.max(block.from(), limit.from()); i < Math.min(block.to(), limit.to()); i++) {
                if (series.obstacle(i) == null) {
                    scan(i, far, doubt);
                }
            }
        }
    }

    private double errorAtMost(Block block) {
        try {
            return series.errorAtMost(check.propagation(), block);
        } catch (OutsideLawException e) {
            return Double.NaN;
        }
    }

    private double[] standards(ErrorSide side, Block block) {
        try {
            return series.errors(check.propagation(), side, block).standards();
        } catch (OutsideLawException e) {
            double[] unknown = new double[block.size()];
            Arrays.fill(unknown, Double.NaN);
            return unknown;
        }
    }

    private void scan(int index, double far, DoubtTally doubt) {
        double value = corrected[index];
        double margin = limit.margin(value, index);
        if (!(Math.abs(margin) <= Double.MAX_VALUE)) {
            check.compare(value, limit.limitAt(index)); // says that it cannot be judged
        }
        note(DECIDED_OUTCOMES, margin, index);
        if (margin > far && margin > nearRounding) {
            note(Outcome.PASS.ordinal(), margin, index);
            doubt.addFar(series, index, DoubtTally.FAR * margin / far);
            decided++;
            return;
        }
        double standard = standard(index, margin);
        if (Double.isNaN(standard)) {
            unknownAt = unknownAt < 0 ? index : unknownAt;
            if (check.needsUncertainty()) {
                return;
            }
        } else {
            doubt.add(series, index, limit.aboveLower(value, index), limit.belowUpper(value, index), standard);
        }
        Outcome outcome = outcome(value, margin, guardBand(standard), index);
        note(outcome.ordinal(), margin - guardBand(standard), index);
        decided++;
        failing += outcome.rejects() ? 1 : 0;
    }

    private void note(int which, double slack, int index) {
        if (slack < least[which]) {
            least[which] = slack;
            leastAt[which] = index;
        }
    }

    /** The standard uncertainty on the side that matters; NaN where it is not known. */
    private double standard(int index, double margin) {
        if (!check.propagation().isKnown()) {
            return Double.NaN;
        }
        double[] @Nullable [] ofSide = margin >= 0 ? ofPasses : ofFails;
        int number = Block.numberOf(index);
        Block block = Block.of(number, series.size());
        double[] known = ofSide[number];
        if (known == null) {
            known = standards(ErrorSide.at(margin), block);
            ofSide[number] = known;
        }
        return known[index - block.from()];
    }

    private double guardBand(double standard) {
        return check.needsUncertainty() ? check.guardBand(standard) : 0;
    }

    private Outcome outcome(double value, double margin, double guardBand, int index) {
        return margin > nearRounding && margin >= guardBand
                ? Outcome.PASS
                : check.outcome(value, limit.limitAt(index), guardBand);
    }

    Series series() {
        return series;
    }

    int decided() {
        return decided;
    }

    int failing() {
        return failing;
    }

    /** The severest outcome of a value; pass when none was decided on. */
    Outcome severest() {
        Outcome severest = Outcome.PASS;
        for (Outcome outcome : Outcome.values()) {
            severest = outcome.ordinal() < DECIDED_OUTCOMES && least[outcome.ordinal()] < Double.POSITIVE_INFINITY
                    ? outcome
                    : severest;
        }
        return severest;
    }

    void addFailingPairsTo(SortedSet<Integer> pairs) {
        Integer pair = series.subject().pair();
        Integer partner = series.subject().partner();
        if (failing > 0 && pair != null) {
            pairs.add(pair);
            if (partner != null) {
                pairs.add(partner);
            }
        }
    }

    /** Why some values could not be decided on; empty when all could. */
    Optional<Obstacle> undecided() {
        return unknownAt < 0 ? Optional.empty() : Optional.of(LimitCheck.noUncertainty(budget(unknownAt)));
    }

    Budget budget(int index) {
        try {
            return check.propagation()
                    .budget(series.influence(index), ErrorSide.at(limit.margin(corrected[index], index)));
        } catch (OutsideLawException e) {
            return Budget.without(String.valueOf(e.getMessage()));
        }
    }

    private static int which(Outcome outcome, boolean decided) {
        return decided ? outcome.ordinal() : DECIDED_OUTCOMES;
    }

    /** The least margin less guard band of the values with an outcome, or of all where nothing was decided; without end when there is none. */
    double least(Outcome outcome, boolean decided) {
        return least[which(outcome, decided)];
    }

    /** The limit where that is. */
    double limitAtLeast(Outcome outcome, boolean decided) {
        int index = leastAt[which(outcome, decided)];
        return limit.nearer(corrected[index], index);
    }

    /** The lowest frequency at which a value with an outcome has no more than some slack. */
    int first(Outcome outcome, boolean decided, double asLow) {
        for (int i = limit.from(); i < limit.to(); i++) {
            if (series.obstacle(i) == null && isAsLow(outcome, decided, asLow, i)) {
                return i;
            }
        }
        return leastAt[which(outcome, decided)];
    }

    private boolean isAsLow(Outcome outcome, boolean decided, double asLow, int index) {
        double margin = limit.margin(corrected[index], index);
        double guardBand = decided && check.needsUncertainty() ? guardBand(standard(index, margin)) : 0;
        return margin - guardBand <= asLow
                && (!decided || outcome(corrected[index], margin, guardBand, index) == outcome);
    }

    /** Whether a value stands before one of another series: at a lower frequency, or at the same of a lower pair. */
    boolean isBefore(int index, SeriesScan other, int otherIndex) {
        int order = Double.compare(frequencyOrZero(index), other.frequencyOrZero(otherIndex));
        return order < 0 || (order == 0 && series.subject().compareTo(other.series.subject()) < 0);
    }

    private double frequencyOrZero(int index) {
        Double megahertz = series.megahertz(index);
        return megahertz == null ? 0 : megahertz;
    }
}
