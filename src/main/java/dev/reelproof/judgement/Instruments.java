package dev.reelproof.judgement;

import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.UncertaintyOverGrid;
import java.util.List;

/**
 * The entries of the model for the instruments that may have read a property in one result, on one grid.
 *
 * <p>Of several instruments of different classes the one with the greatest uncertainty counts, reading by reading.
 */
final class Instruments {
    private final List<String> classes;
    private final List<InstrumentUncertainty> entries;
    private final UncertaintyOverGrid[] onGrid;
    private final double[] rootOfCorrelation;

    /**
     * @param classes of equipment, at least one
     * @param entries one a class
     * @param megahertz the grid; one NaN for single values
     */
    Instruments(List<String> classes, List<InstrumentUncertainty> entries, double[] megahertz) {
        this.classes = classes;
        this.entries = entries;
        this.onGrid = entries.stream().map(entry -> entry.over(megahertz)).toArray(UncertaintyOverGrid[]::new);
        this.rootOfCorrelation = entries.stream()
                .mapToDouble(entry -> Math.sqrt(entry.correlation()))
                .toArray();
    }

    /** Which entry counts for a reading: the one with the greatest uncertainty; one without any counts before all. */
    int which(double reading, int index, ErrorSide side) {
        int greatest = 0;
        for (int i = 1; i < onGrid.length; i++) {
            double one = standard(i, reading, index, side);
            double other = standard(greatest, reading, index, side);
            greatest = !Double.isNaN(other) && !(one <= other) ? i : greatest;
        }
        return greatest;
    }

    /** The standard uncertainty of a reading by one entry, in the property's canonical unit; NaN where it says nothing. */
    double standard(int which, double reading, int index, ErrorSide side) {
        return onGrid[which].standard(reading, index, side.of(entries.get(which)));
    }

    /** What no standard uncertainty of a reading between two exceeds, at the frequencies of a block; NaN where that is not known. */
    double atMost(double lowest, double highest, Block block) {
        double greatest = 0;
        for (UncertaintyOverGrid one : onGrid) {
            greatest = Math.max(greatest, one.atMost(lowest, highest, block.from(), block.to()));
        }
        return greatest;
    }

    /** √r, where r is the correlation between readings by an entry. */
    double rootOfCorrelation(int which) {
        return rootOfCorrelation[which];
    }

    InstrumentUncertainty entry(int which) {
        return entries.get(which);
    }

    String equipmentClass(int which) {
        return classes.get(which);
    }
}
