package dev.reelproof.certificate;

import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.wording.PrintedFigure;
import dev.reelproof.wording.Wording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The plots of a certificate: corrected sweeps against the limits on each single value.
 *
 * <p>A plot is thinned to columns evenly spaced in the logarithm of frequency: each column keeps its lowest and its highest
 * value, so that no excursion is lost.
 */
final class Plots {
    private static final int COLUMNS = 180;
    private static final int LIMIT_STEPS = 120;
    private static final double VALUE_ROUNDING = 1e3;
    private static final double FREQUENCY_ROUNDING = 1e4;

    private final Wording wording;

    Plots(Wording wording) {
        this.wording = wording;
    }

    /** A requirement that limits each single value, and what was found for it. */
    private record Judged(Finding finding, Requirement requirement) {}

    List<CertificateContent.Plot> of(Judgement judgement, LimitSet limitSet, Product product) {
        return Arrays.stream(Property.values())
                .filter(Property::isSweep)
                .map(property -> plot(property, judgement, limitSet, product))
                .filter(Objects::nonNull)
                .toList();
    }

    /** The plot of a property; null when it was not measured at two frequencies or has no limit on single values. */
    private CertificateContent.@Nullable Plot plot(
            Property property, Judgement judgement, LimitSet limitSet, Product product) {
        List<CorrectedSweep> all = judgement.sweeps().stream()
                .filter(sweep -> sweep.property() == property)
                .toList();
        if (all.isEmpty()) {
            return null;
        }
        String unit = all.get(0).unit();
        List<Judged> judged = judgement.findings().stream()
                .filter(finding -> finding.property() == property && finding.figure() != null)
                .map(finding -> new Judged(finding, Rows.requirement(finding, limitSet, product)))
                .filter(one -> one.requirement().statistic() == Statistic.INDIVIDUAL
                        && one.finding().worst().unit().equals(unit))
                .toList();
        List<CorrectedSweep> sweeps = all.stream()
                .filter(sweep -> sweep.unit().equals(unit))
                .sorted(Comparator.comparing(CorrectedSweep::subject))
                .toList();
        double from = from(judged, sweeps);
        double to = to(judged, sweeps);
        if (judged.isEmpty() || !(to > from)) {
            return null;
        }
        Judged worst = judged.stream()
                .min(Comparator.comparingDouble(one -> one.finding().worst().margin()))
                .orElseThrow();
        Columns columns = new Columns(from, to);
        boolean band = sweeps.size() > 1;
        List<CertificateContent.Line> lines = sweeps.stream()
                .filter(sweep ->
                        !band || sweep.subject().equals(worst.finding().worst().subject()))
                .map(sweep -> columns.line(sweep, wording.shortLabel(property, sweep.subject())))
                .filter(line -> !line.megahertz().isEmpty())
                .toList();
        return new CertificateContent.Plot(
                property.id(),
                wording.title(property),
                unit,
                from,
                to,
                sweeps.size(),
                lines,
                band ? columns.band(sweeps) : null,
                judged.stream()
                        .flatMap(one -> limits(one, judged.size() > 1).stream())
                        .toList(),
                point(worst));
    }

    private static double from(List<Judged> judged, List<CorrectedSweep> sweeps) {
        double lowest =
                sweeps.stream().mapToDouble(sweep -> sweep.grid().first()).min().orElseThrow();
        return judged.stream().allMatch(one -> one.requirement().domain() instanceof Domain.Range)
                ? judged.stream()
                        .mapToDouble(one -> ((Domain.Range) one.requirement().domain()).from())
                        .min()
                        .orElse(lowest)
                : lowest;
    }

    private static double to(List<Judged> judged, List<CorrectedSweep> sweeps) {
        double highest =
                sweeps.stream().mapToDouble(sweep -> sweep.grid().last()).max().orElseThrow();
        return judged.stream().allMatch(one -> one.requirement().domain() instanceof Domain.Range)
                ? judged.stream()
                        .mapToDouble(one -> ((Domain.Range) one.requirement().domain()).to())
                        .max()
                        .orElse(highest)
                : highest;
    }

    private CertificateContent.@Nullable Point point(Judged worst) {
        Figure figure = worst.finding().worst();
        PrintedFigure printed = wording.printed(worst.requirement(), figure);
        Double megahertz = figure.megahertz();
        return megahertz == null
                ? null
                : new CertificateContent.Point(
                        megahertz,
                        rounded(figure.value()),
                        wording.place(worst.finding().property(), figure),
                        printed.margin() + " " + printed.unit());
    }

    private List<CertificateContent.LimitLine> limits(Judged judged, boolean several) {
        Requirement requirement = judged.requirement();
        String label = wording.limitName(requirement, several);
        List<CertificateContent.LimitLine> lines = new ArrayList<>();
        requirement.limit().lower().ifPresent(bound -> lines.add(limitLine(label, bound, requirement.domain())));
        requirement.limit().upper().ifPresent(bound -> lines.add(limitLine(label, bound, requirement.domain())));
        return lines.stream().filter(line -> !line.megahertz().isEmpty()).toList();
    }

    private static CertificateContent.LimitLine limitLine(String label, Bound bound, Domain domain) {
        TreeSet<Double> frequencies = new TreeSet<>();
        if (domain instanceof Domain.Spot spot) {
            frequencies.add(spot.megahertz());
        } else if (domain instanceof Domain.Range range) {
            double ratio = range.to() / range.from();
            for (int i = 1; i < LIMIT_STEPS; i++) {
                frequencies.add(range.from() * Math.pow(ratio, (double) i / LIMIT_STEPS));
            }
            frequencies.add(range.from());
            frequencies.add(range.to());
            if (bound instanceof Bound.Curve curve) {
                curve.segments().stream()
                        .map(Segment::to)
                        .filter(joint -> joint < range.to() && joint > range.from())
                        .forEach(frequencies::add);
            }
        }
        return new CertificateContent.LimitLine(
                label,
                frequencies.stream().map(Plots::roundedFrequency).toList(),
                frequencies.stream()
                        .map(frequency -> rounded(bound.at(frequency)))
                        .toList());
    }

    private static double rounded(double value) {
        return Math.rint(value * VALUE_ROUNDING) / VALUE_ROUNDING;
    }

    private static double roundedFrequency(double megahertz) {
        return Math.rint(megahertz * FREQUENCY_ROUNDING) / FREQUENCY_ROUNDING;
    }

    /** The columns of a plot, evenly spaced in the logarithm of frequency. */
    private record Columns(double from, double to) {

        private int column(double megahertz) {
            double share = Math.log(megahertz / from) / Math.log(to / from);
            return Math.min((int) (share * COLUMNS), COLUMNS - 1);
        }

        private double middle(int column) {
            return from * Math.pow(to / from, (column + 1.0 / 2) / COLUMNS);
        }

        private boolean holds(double megahertz) {
            return megahertz >= from && megahertz <= to;
        }

        /** A sweep as a line: the lowest and highest value of each column, in order of frequency. */
        private CertificateContent.Line line(CorrectedSweep sweep, String label) {
            List<Double> megahertz = new ArrayList<>();
            List<Double> values = new ArrayList<>();
            int index = 0;
            while (index < sweep.grid().size()) {
                if (!holds(sweep.grid().megahertz(index))) {
                    index++;
                    continue;
                }
                int column = column(sweep.grid().megahertz(index));
                TreeSet<Integer> kept = new TreeSet<>();
                // The first and last point of the axis stay, so that a line reaches both ends.
                if (megahertz.isEmpty()) {
                    kept.add(index);
                }
                int lowest = index;
                int highest = index;
                int last = index;
                while (index < sweep.grid().size()
                        && holds(sweep.grid().megahertz(index))
                        && column(sweep.grid().megahertz(index)) == column) {
                    lowest = sweep.corrected(index) < sweep.corrected(lowest) ? index : lowest;
                    highest = sweep.corrected(index) > sweep.corrected(highest) ? index : highest;
                    last = index;
                    index++;
                }
                kept.add(lowest);
                kept.add(highest);
                if (index == sweep.grid().size() || !holds(sweep.grid().megahertz(index))) {
                    kept.add(last);
                }
                for (int one : kept) {
                    megahertz.add(roundedFrequency(sweep.grid().megahertz(one)));
                    values.add(rounded(sweep.corrected(one)));
                }
            }
            return new CertificateContent.Line(
                    label,
                    sweep.subject().end() == null ? "" : sweep.subject().end().word(),
                    megahertz,
                    values);
        }

        /** The lowest and highest value of all sweeps in each column; between two points a sweep runs straight. */
        private CertificateContent.Band band(List<CorrectedSweep> sweeps) {
            double[] lowest = new double[COLUMNS];
            double[] highest = new double[COLUMNS];
            Arrays.fill(lowest, Double.POSITIVE_INFINITY);
            Arrays.fill(highest, Double.NEGATIVE_INFINITY);
            for (CorrectedSweep sweep : sweeps) {
                int size = sweep.grid().size();
                for (int i = 0; i < size; i++) {
                    if (holds(sweep.grid().megahertz(i))) {
                        widen(lowest, highest, column(sweep.grid().megahertz(i)), sweep.corrected(i));
                    }
                    if (i + 1 < size) {
                        widenBetween(lowest, highest, sweep, i);
                    }
                }
            }
            List<Double> megahertz = new ArrayList<>();
            List<Double> low = new ArrayList<>();
            List<Double> high = new ArrayList<>();
            for (int column = 0; column < COLUMNS; column++) {
                if (lowest[column] <= highest[column]) {
                    megahertz.add(column == 0 ? from : column == COLUMNS - 1 ? to : roundedFrequency(middle(column)));
                    low.add(rounded(lowest[column]));
                    high.add(rounded(highest[column]));
                }
            }
            return new CertificateContent.Band(megahertz, low, high);
        }

        /** Widens the columns that lie wholly between two points of a sweep, at their middles. */
        private void widenBetween(double[] lowest, double[] highest, CorrectedSweep sweep, int index) {
            double left = sweep.grid().megahertz(index);
            double right = sweep.grid().megahertz(index + 1);
            if (!(right >= from && left <= to)) {
                return;
            }
            int first = left < from ? 0 : column(left) + 1;
            int end = right > to ? COLUMNS : column(right);
            for (int column = first; column < end; column++) {
                double share = Math.log(middle(column) / left) / Math.log(right / left);
                double value = sweep.corrected(index) + share * (sweep.corrected(index + 1) - sweep.corrected(index));
                widen(lowest, highest, column, value);
            }
        }

        private static void widen(double[] lowest, double[] highest, int column, double value) {
            lowest[column] = Math.min(lowest[column], value);
            highest[column] = Math.max(highest[column], value);
        }
    }
}
