package dev.reelproof.judgement;

import dev.reelproof.correction.CorrectionLaw;
import dev.reelproof.correction.Line;
import dev.reelproof.correction.MeasurementConditions;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import java.util.ArrayList;
import java.util.List;

/**
 * How a corrected value depends on what was read of the reel itself.
 *
 * <p>A bay that sends a value per length has brought it there from the reel's own length. That step is undone by the requirement's
 * laws, which are straight lines in the value, so that the uncertainty of the instrument and that of the length enter alike in whatever
 * unit the value was sent.
 *
 * @param toReading turns the value as sent into the reading of the whole reel
 * @param slopes the derivatives of the laws by the reading
 * @param lossPerMetre the measured loss that a law used, dB/m; NaN where none did
 * @param metres the reel's length
 */
record Dependence(Line toReading, Slopes slopes, double lossPerMetre, double metres) {

    /**
     * The dependence under some conditions.
     *
     * @throws dev.reelproof.correction.OutsideLawException when a law has no derivative there
     */
    static Dependence of(List<CorrectionLaw> laws, MeasurementConditions asSent, Length reel) {
        MeasurementConditions ofReel = new MeasurementConditions(
                asSent.temperature(),
                reel,
                asSent.referenceTemperature(),
                asSent.referenceLength(),
                asSent.lossPerMetre());
        Line toReading = Line.UNCHANGED;
        if (asSent.length().metres() != reel.metres()) {
            Line sent = chain(laws, asSent);
            Line whole = chain(laws, ofReel);
            toReading = new Line(sent.factor() / whole.factor(), (sent.shift() - whole.shift()) / whole.factor());
        }
        return new Dependence(
                toReading, Slopes.of(laws, ofReel), asSent.lossPerMetre().orElse(Double.NaN), reel.metres());
    }

    private static Line chain(List<CorrectionLaw> laws, MeasurementConditions conditions) {
        return laws.stream().map(law -> law.at(conditions)).reduce(Line.UNCHANGED, Line::then);
    }

    /** What the instrument read of the whole reel. */
    double reading(double value) {
        return toReading.of(value);
    }

    /** ∂c/∂L. a = A/L: a longer reel means a lower loss per metre. */
    double perMetre(double reading) {
        double byLoss = slopes.perLossPerMetre(reading);
        return slopes.perMetre(reading) - (byLoss == 0 ? 0 : byLoss * lossPerMetre / metres);
    }

    /** ∂c/∂A by the loss of the whole reel, dB per dB: an error of A is spread over the length. */
    double perLoss(double reading) {
        return slopes.perLossPerMetre(reading) / metres;
    }

    /** The loss of the whole reel that a law used, dB. */
    double loss() {
        return lossPerMetre * metres;
    }

    /**
     * What a value depends on.
     *
     * @param lossPair the pair whose loss a law used; any where none did
     */
    Influence influence(Property property, String place, double value, double megahertz, int lossPair) {
        double reading = reading(value);
        List<Influence.Instrument> readings = new ArrayList<>();
        readings.add(new Influence.Instrument(property, place, reading, megahertz, slopes.value()));
        if (perLoss(reading) != 0) {
            readings.add(new Influence.Instrument(
                    Property.INSERTION_LOSS,
                    "pair " + lossPair + ", used by the law",
                    loss(),
                    megahertz,
                    perLoss(reading)));
        }
        return new Influence(readings, slopes.perDegree(reading), perMetre(reading), slopes.perCoefficient(reading));
    }
}
