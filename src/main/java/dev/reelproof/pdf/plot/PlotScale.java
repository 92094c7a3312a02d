package dev.reelproof.pdf.plot;

import dev.reelproof.certificate.CertificateContent.LimitLine;
import dev.reelproof.certificate.CertificateContent.Line;
import dev.reelproof.certificate.CertificateContent.Plot;
import java.math.BigDecimal;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Where a frequency and a value stand on a page: a frame in points, a logarithmic axis of frequency, a linear one of values. */
final class PlotScale {
    private static final int VALUE_STEPS = 6;
    /** What stays free above the highest and below the lowest value, as a share of the span of values. */
    private static final double HEADROOM = 0.07;

    private static final int[] TICK_MANTISSAS = {1, 2, 5};

    private final float left;
    private final float right;
    private final float top;
    private final float bottom;
    private final double fromMegahertz;
    private final double toMegahertz;
    private final double lowest;
    private final double highest;
    private final BigDecimal step;

    /** The scale of a plot in the frame between four edges, in points. */
    PlotScale(Plot plot, float left, float right, float top, float bottom) {
        this.left = left;
        this.right = right;
        this.top = top;
        this.bottom = bottom;
        this.fromMegahertz = plot.fromMegahertz();
        this.toMegahertz = plot.toMegahertz();
        double least = values(plot).min().orElse(0);
        double greatest = values(plot).max().orElse(1);
        double span = greatest > least ? greatest - least : Math.max(Math.abs(greatest), 1);
        this.step = niceStep(span / VALUE_STEPS);
        this.lowest = least - span * HEADROOM;
        this.highest = greatest + span * HEADROOM;
    }

    private static DoubleStream values(Plot plot) {
        Stream<List<Double>> bands = plot.band() == null
                ? Stream.empty()
                : Stream.of(plot.band().lowest(), plot.band().highest());
        Stream<List<Double>> lines = Stream.concat(
                plot.lines().stream().map(Line::values), plot.limits().stream().map(LimitLine::values));
        return Stream.concat(bands, lines).flatMap(List::stream).mapToDouble(Double::doubleValue);
    }

    /** The smallest of 1, 2, 5 times a power of ten that is not below the given step. */
    private static BigDecimal niceStep(double least) {
        int exponent = (int) Math.floor(Math.log10(least));
        for (int mantissa : TICK_MANTISSAS) {
            BigDecimal candidate = BigDecimal.valueOf(mantissa).scaleByPowerOfTen(exponent);
            if (candidate.doubleValue() >= least) {
                return candidate;
            }
        }
        return BigDecimal.ONE.scaleByPowerOfTen(exponent + 1);
    }

    float left() {
        return left;
    }

    float right() {
        return right;
    }

    float top() {
        return top;
    }

    float bottom() {
        return bottom;
    }

    float width() {
        return right - left;
    }

    float height() {
        return bottom - top;
    }

    double fromMegahertz() {
        return fromMegahertz;
    }

    double toMegahertz() {
        return toMegahertz;
    }

    /** The value at the lower edge of the frame. */
    double lowest() {
        return lowest;
    }

    /** The value at the upper edge. */
    double highest() {
        return highest;
    }

    /** From one tick of the value axis to the next. */
    BigDecimal step() {
        return step;
    }

    float x(double megahertz) {
        double share = Math.log(megahertz / fromMegahertz) / Math.log(toMegahertz / fromMegahertz);
        return (float) (left + share * width());
    }

    float y(double value) {
        return (float) (bottom - (value - lowest) / (highest - lowest) * height());
    }

    /** The nearest x within the frame. */
    float xWithin(double megahertz) {
        return Math.min(right, Math.max(left, x(megahertz)));
    }

    /** The nearest y within the frame. */
    float yWithin(double value) {
        return Math.min(bottom, Math.max(top, y(value)));
    }

    /** Points of a line, each as x and y. */
    List<float[]> points(List<Double> megahertz, List<Double> values) {
        return IntStream.range(0, megahertz.size())
                .mapToObj(i -> new float[] {x(megahertz.get(i)), y(values.get(i))})
                .toList();
    }
}
