package dev.reelproof.judgement;

import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.ReadingUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** A sweep as measured, and corrected. */
final class MeasuredSweep extends Series {
    private final Sweep sweep;
    private final Corrector corrector;
    private final ShortReel shortReel;
    private final Map<ErrorSide, ErrorColumns> errors = new EnumMap<>(ErrorSide.class);

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
        return corrector.dependsOnLoss(sweep);
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
    ErrorColumns errors(Propagation propagation, ErrorSide side) {
        return errors.computeIfAbsent(side, key -> {
            if (takesLoss()) {
                return ErrorColumns.measured(
                        this,
                        side,
                        propagation,
                        index -> corrector.dependence(sweep, index),
                        index -> corrector.lossPair(sweep, index));
            }
            Dependence alike = corrector.dependence(sweep, 0);
            return ErrorColumns.measured(this, side, propagation, index -> alike, index -> 0);
        });
    }
}
