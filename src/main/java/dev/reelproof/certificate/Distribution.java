package dev.reelproof.certificate;

import java.util.List;

/**
 * How the least margins of many sweeps lie, for one requirement.
 *
 * @param requirement the requirement's id
 * @param title its name
 * @param unit the unit of the margins
 * @param sweeps how many sweeps there are
 * @param edges the edges of the classes, rising: one more than there are classes
 * @param counts how many sweeps have their least margin in each class; the last class holds its upper edge too
 * @param worst the sweeps with the least margins, the least first
 */
public record Distribution(
        String requirement,
        String title,
        String unit,
        int sweeps,
        List<Double> edges,
        List<Integer> counts,
        List<Worst> worst) {

    /**
     * A sweep at its least margin.
     *
     * @param where pair or combination, end and frequency
     * @param value the value there
     * @param limit the limit there
     * @param margin the margin
     */
    public record Worst(String where, String value, String limit, String margin) {}

    /** @throws IllegalArgumentException when classes, edges and sweeps do not agree */
    public Distribution {
        edges = List.copyOf(edges);
        counts = List.copyOf(counts);
        worst = List.copyOf(worst);
        if (!(edges.size() == counts.size() + 1
                && counts.stream().mapToInt(Integer::intValue).sum() == sweeps)) {
            throw new IllegalArgumentException("the classes of the margins of '" + requirement
                    + "' do not hold each of its " + sweeps + " sweeps once");
        }
    }
}
