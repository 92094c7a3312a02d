package dev.reelproof.judgement;

import dev.reelproof.correction.CorrectionLaw;
import dev.reelproof.correction.MeasurementConditions;
import dev.reelproof.correction.Sensitivity;
import java.util.List;

/**
 * The derivatives of laws in a row under some conditions, for any value.
 *
 * <p>Each law is a straight line in the value under any conditions, so each derivative is one too: those at the values 0 and 1 tell all.
 *
 * @param atZero the derivatives for the value 0
 * @param atOne the derivatives for the value 1
 */
record Slopes(Sensitivity atZero, Sensitivity atOne) {

    /** Those of no law at all. */
    static final Slopes NONE = new Slopes(Sensitivity.UNCHANGED, Sensitivity.UNCHANGED);

    static Slopes of(List<CorrectionLaw> laws, MeasurementConditions conditions) {
        return new Slopes(at(0, laws, conditions), at(1, laws, conditions));
    }

    private static Sensitivity at(double value, List<CorrectionLaw> laws, MeasurementConditions conditions) {
        double corrected = value;
        Sensitivity all = Sensitivity.UNCHANGED;
        for (CorrectionLaw law : laws) {
            all = all.then(law.sensitivity(corrected, conditions));
            corrected = law.correct(corrected, conditions);
        }
        return all;
    }

    /** The derivative by the value itself. */
    double value() {
        return atZero.value();
    }

    double perDegree(double value) {
        return line(atZero.perDegree(), atOne.perDegree(), value);
    }

    double perMetre(double value) {
        return line(atZero.perMetre(), atOne.perMetre(), value);
    }

    double perLossPerMetre(double value) {
        return line(atZero.perLossPerMetre(), atOne.perLossPerMetre(), value);
    }

    double perCoefficient(double value) {
        return line(atZero.perCoefficient(), atOne.perCoefficient(), value);
    }

    private static double line(double atZero, double atOne, double value) {
        return atZero + (atOne - atZero) * value;
    }
}
