package dev.reelproof.judgement;

import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;

/** A sweep as measured, and corrected. */
final class MeasuredSweep extends Series {
    private final Sweep sweep;
    private final Corrector corrector;
    private final ShortReel shortReel;
    private final boolean takesLoss;
    private @Nullable Map<ErrorSide, @Nullable ErrorColumns[]> errors;
    private @Nullable IntFunction<Dependence> dependences;

    /** By block; NaN until it is worked out. */
    private double @Nullable [] errorsAtMost;

    MeasuredSweep(Sweep sweep, Corrector corrector, ShortReel shortReel) {
        super(
                sweep.property(),
                sweep.subject(),
                sweep.grid(),
                sweep.values(),
                shortReel.among(sweep, corrector.correct(sweep)));
        this.sweep = sweep;
        this.corrector = corrector;
        this.shortReel = shortReel;
        this.takesLoss = corrector.dependsOnLoss(sweep);
    }

    @Override
    double sent(int index) {
        return sweep.sent(index);
    }

    @Override
    ReadingUnit sentUnit() {
        return sweep.unit();
    }

    @Override
    boolean derived() {
        return false;
    }

    @Override
    boolean takesLoss() {
        return takesLoss;
    }

    @Override
    List<Step> steps(int index) {
        List<Step> steps = networkSteps(index);
        steps.addAll(measuredSteps(
                sweep.property(),
                sweep.origin().of(index) + ": " + sweep.property() + " of "
                        + sweep.subject().words() + " at " + sweep.grid().megahertz(index) + " MHz",
                sweep.sent(index),
                sweep.unit(),
                sweep.value(index)));
        shortReel.longEnough(sweep, index).ifPresent(steps::add);
        steps.addAll(corrector.steps(sweep, index));
        return steps;
    }

    /** How a network-analyser file became the value; none for other origins. */
    private List<Step> networkSteps(int index) {
        List<Step> steps = new ArrayList<>();
        if (sweep.origin() instanceof Origin.Network network) {
            for (Origin.Network.Link link : network.chain()) {
                double value = link.value() == null ? sweep.sent(index) : link.value();
                steps.add(new Step(link.title(), link.detail(), value, link.unit(), link.source()));
            }
        }
        return steps;
    }

    static List<Step> measuredSteps(Property property, String place, double sent, ReadingUnit sentUnit, double value) {
        List<Step> steps = new ArrayList<>();
        steps.add(new Step("measured", place, sent, sentUnit.text(), null));
        if (!sentUnit.numerator().equals(property.canonicalUnit())) {
            steps.add(new Step(
                    "converted",
                    sentUnit.numerator() + " to " + property.canonicalUnit(),
                    value,
                    property.canonicalUnit(),
                    null));
        }
        return steps;
    }

    @Override
    Influence influence(int index) {
        return corrector.influence(sweep, index);
    }

    @Override
    ErrorColumns errors(Propagation propagation, ErrorSide side, Block block) {
        if (errors == null) {
            errors = new EnumMap<>(ErrorSide.class);
        }
        @Nullable
        ErrorColumns[] ofSide = errors.computeIfAbsent(side, key -> new @Nullable ErrorColumns[Block.count(size())]);
        int number = Block.numberOf(block.from());
        ErrorColumns known = ofSide[number];
        if (known == null) {
            known = worked(propagation, side, block);
            ofSide[number] = known;
        }
        return known;
    }

    private ErrorColumns worked(Propagation propagation, ErrorSide side, Block block) {
        return ErrorColumns.measured(
                this, block, side, propagation, dependences(), index -> corrector.lossPair(sweep, index));
    }

    private IntFunction<Dependence> dependences() {
        if (dependences == null) {
            dependences = corrector.dependences(sweep);
        }
        return dependences;
    }

    @Override
    double errorAtMost(Propagation propagation, Block block) {
        if (errorsAtMost == null) {
            errorsAtMost = new double[Block.count(size())];
            Arrays.fill(errorsAtMost, Double.NaN);
        }
        int number = Block.numberOf(block.from());
        if (Double.isNaN(errorsAtMost[number])) {
            errorsAtMost[number] = ErrorBound.of(this, block, dependences(), propagation);
        }
        return errorsAtMost[number];
    }
}
