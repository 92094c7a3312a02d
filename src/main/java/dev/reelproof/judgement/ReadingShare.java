package dev.reelproof.judgement;

import dev.reelproof.limit.InstrumentUncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What the error of one reading does to a value.
 *
 * @param reading the reading, with the value's derivative by it
 * @param equipmentClass of the instrument that is taken to have read it
 * @param entry what the model says of that class
 * @param standard standard uncertainty of the reading, in its property's canonical unit; NaN where the model says nothing
 */
record ReadingShare(Influence.Instrument reading, String equipmentClass, InstrumentUncertainty entry, double standard) {
    private static final int READINGS_NAMED = 3;

    private double amount() {
        return reading.derivative() * standard;
    }

    /**
     * The contributions of all readings of one property: of one reading its own; of several what they do in common and what each does for
     * itself, by their correlation.
     *
     * @param shares at least one, of one property
     */
    static List<Contribution> contributions(List<ReadingShare> shares) {
        ReadingShare first = shares.get(0);
        if (shares.size() == 1) {
            return List.of(Contribution.of(
                    first::words,
                    first.standard,
                    first.reading.property().canonicalUnit(),
                    first.reading.derivative(),
                    first.entry.source().words()));
        }
        double common = 0;
        double squares = 0;
        for (ReadingShare share : shares) {
            double together = Math.sqrt(share.entry.correlation()) * share.amount();
            common += together;
            squares += share.amount() * share.amount() - together * together;
        }
        List<Contribution> contributions = new ArrayList<>();
        if (common != 0) {
            contributions.add(summed("what they err in common", Math.abs(common), shares));
        }
        if (squares > 0) {
            contributions.add(summed("what each errs for itself", Math.sqrt(squares), shares));
        }
        return contributions;
    }

    private static Contribution summed(String what, double amount, List<ReadingShare> shares) {
        ReadingShare first = shares.get(0);
        return Contribution.of(
                () -> shares.size() + " readings of " + first.reading.property() + ", "
                        + first.entry.correlationWords() + ", " + what + ": "
                        + shares.stream()
                                .limit(READINGS_NAMED)
                                .map(ReadingShare::words)
                                .collect(Collectors.joining("; "))
                        + (shares.size() > READINGS_NAMED ? "; and " + (shares.size() - READINGS_NAMED) + " more" : ""),
                amount,
                "in the unit of the value",
                1,
                first.entry.source().words());
    }

    private String words() {
        return "instrument of class '" + equipmentClass + "', " + reading.property() + " of " + reading.place()
                + (Double.isNaN(reading.megahertz()) ? "" : " at " + reading.megahertz() + " MHz")
                + ", reading " + reading.reading() + " " + reading.property().canonicalUnit() + ": " + entry.words();
    }
}
