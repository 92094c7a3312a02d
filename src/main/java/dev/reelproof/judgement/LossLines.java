package dev.reelproof.judgement;

import dev.reelproof.correction.CorrectionLaw;
import dev.reelproof.correction.Line;
import dev.reelproof.correction.MeasurementConditions;
import dev.reelproof.correction.OutsideLawException;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The laws of a requirement for one pair on one grid, where a law needs the pair's loss: a line for each law and frequency. */
final class LossLines {
    private final MeasurementConditions conditions;
    private final Line[][] lines;
    private final @Nullable Obstacle[] obstacles;
    private final @Nullable Dependence[] dependences;
    private boolean obstructed;

    /**
     * @param conditions all but the loss
     * @param lossPerMetre that of each frequency, dB/m; NaN where it is not known
     */
    LossLines(List<CorrectionLaw> laws, MeasurementConditions conditions, double[] lossPerMetre) {
        this.conditions = conditions;
        this.lines = new Line[lossPerMetre.length][];
        this.obstacles = new @Nullable Obstacle[lossPerMetre.length];
        this.dependences = new @Nullable Dependence[lossPerMetre.length];
        for (int i = 0; i < lines.length; i++) {
            MeasurementConditions there =
                    Double.isNaN(lossPerMetre[i]) ? conditions : conditions.withLossPerMetre(lossPerMetre[i]);
            try {
                lines[i] = linesOf(laws, there);
            } catch (OutsideLawException e) {
                lines[i] = new Line[0];
                obstacles[i] = CorrectedColumn.obstacle(e);
                obstructed = true;
            }
        }
    }

    private static Line[] linesOf(List<CorrectionLaw> laws, MeasurementConditions conditions) {
        Line[] ofLaws = new Line[laws.size()];
        for (int law = 0; law < ofLaws.length; law++) {
            ofLaws[law] = laws.get(law).at(conditions);
        }
        return ofLaws;
    }

    /** Whether they are the lines under some conditions. */
    boolean areUnder(MeasurementConditions others) {
        return conditions.equals(others);
    }

    /** The corrected value at one frequency; NaN where it cannot be corrected. */
    double of(int index, double value) {
        double corrected = obstacles[index] == null ? value : Double.NaN;
        for (Line line : lines[index]) {
            corrected = line.of(corrected);
        }
        return corrected;
    }

    /** What a corrected value depends on at one frequency; worked out when it is first asked. */
    Dependence dependence(int index, Supplier<Dependence> first) {
        Dependence known = dependences[index];
        if (known == null) {
            known = first.get();
            dependences[index] = known;
        }
        return known;
    }

    CorrectedColumn applyTo(double[] values) {
        double[] corrected = new double[values.length];
        for (int i = 0; i < corrected.length; i++) {
            corrected[i] = of(i, values[i]);
        }
        return new CorrectedColumn(corrected, obstructed ? obstacles : CorrectedColumn.NO_OBSTACLES);
    }
}
