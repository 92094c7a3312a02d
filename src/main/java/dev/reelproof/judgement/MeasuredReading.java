package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.measurement.Reading;
import dev.reelproof.quantity.ReadingUnit;
import java.util.List;

/** A single value as measured, and corrected. */
final class MeasuredReading extends Series {
    private final Reading reading;
    private final Corrector corrector;

    MeasuredReading(Reading reading, Corrector corrector) {
        super(
                reading.property(),
                reading.subject(),
                null,
                new double[] {reading.value()},
                corrected(reading, corrector));
        this.reading = reading;
        this.corrector = corrector;
    }

    private static CorrectedColumn corrected(Reading reading, Corrector corrector) {
        try {
            return CorrectedColumn.of(new double[] {corrector.correct(magnitude(reading), reading.unit())});
        } catch (OutsideLawException e) {
            return CorrectedColumn.notCorrected(1, e);
        }
    }

    private static double magnitude(Reading reading) {
        return size(reading.property(), reading.value());
    }

    @Override
    double sent(int index) {
        return reading.sent();
    }

    @Override
    ReadingUnit sentUnit() {
        return reading.unit();
    }

    @Override
    boolean derived() {
        return false;
    }

    @Override
    boolean takesLoss() {
        return false;
    }

    @Override
    List<Step> steps(int index) {
        List<Step> steps = MeasuredSweep.measuredSteps(
                reading.property(),
                reading.origin().of(0) + ": " + reading.property() + " of "
                        + reading.subject().words(),
                reading.sent(),
                reading.unit(),
                reading.value());
        double magnitude = magnitude(reading);
        if (magnitude != reading.value()) {
            steps.add(new Step(
                    "size",
                    "the sign says which side is the greater; the limit is on the size",
                    magnitude,
                    reading.property().canonicalUnit(),
                    null));
        }
        steps.addAll(corrector.steps(reading.property(), magnitude, reading.unit()));
        return steps;
    }

    @Override
    Influence influence(int index) {
        return corrector.influence(reading);
    }

    @Override
    ErrorColumns errors(Propagation propagation, ErrorSide side, Block block) {
        Dependence alike = corrector.dependence(reading.unit());
        return ErrorColumns.measured(this, block, side, propagation, index -> alike, index -> 0);
    }

    @Override
    double errorAtMost(Propagation propagation, Block block) {
        return Double.NaN;
    }
}
