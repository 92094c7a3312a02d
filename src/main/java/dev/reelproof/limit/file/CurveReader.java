package dev.reelproof.limit.file;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Segment;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads a limit curve: segments in the closed shapes that standards print, which join without gap or overlap. */
final class CurveReader {
    private static final List<String> POLYNOMIAL = List.of("constant", "sqrt", "linear", "inverse-sqrt");
    private static final List<String> LOG_SLOPE = List.of("at", "value", "slope-per-decade");

    private CurveReader() {}

    /** The curve under a key; none with a fault noted. */
    static Bound.@Nullable Curve read(Entry entry, String key) {
        List<Entry> entries = entry.list(key);
        List<Segment> segments = new ArrayList<>();
        for (Entry segment : entries) {
            Segment read = segment(segment);
            if (read != null) {
                segments.add(read);
            }
        }
        if (segments.size() < entries.size()) {
            return null;
        }
        for (int i = 1; i < segments.size(); i++) {
            if (segments.get(i).from() != segments.get(i - 1).to()) {
                entries.get(i)
                        .fault(
                                "from",
                                "the segment begins at " + entries.get(i).text("from")
                                        + ", but the one before ends at "
                                        + entries.get(i - 1).text("to")
                                        + "; segments must join without gap or overlap");
                return null;
            }
        }
        return new Bound.Curve(segments);
    }

    private static @Nullable Segment segment(Entry entry) {
        boolean polynomial = POLYNOMIAL.stream().anyMatch(entry::has);
        boolean slope = LOG_SLOPE.stream().anyMatch(entry::has);
        boolean wholeSlope = LOG_SLOPE.stream().allMatch(entry::has);
        if (polynomial == slope || slope != wholeSlope) {
            entry.fault("a segment has either some of constant, sqrt, linear and inverse-sqrt, or all of at, value and"
                    + " slope-per-decade");
            return null;
        }
        return polynomial ? rootPolynomial(entry) : logSlope(entry);
    }

    /** A segment of constant, sqrt, linear and inverse-sqrt, of which each may be absent; none with a fault noted. */
    static @Nullable Segment rootPolynomial(Entry entry) {
        return entry.attempt(() -> new Segment.RootPolynomial(
                entry.megahertz("from"),
                entry.megahertz("to"),
                entry.number("constant"),
                entry.number("sqrt"),
                entry.number("linear"),
                entry.number("inverse-sqrt")));
    }

    private static @Nullable Segment logSlope(Entry entry) {
        return entry.attempt(() -> new Segment.LogSlope(
                entry.megahertz("from"),
                entry.megahertz("to"),
                entry.megahertz("at"),
                entry.number("value"),
                entry.number("slope-per-decade")));
    }
}
