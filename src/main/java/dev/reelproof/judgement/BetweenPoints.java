package dev.reelproof.judgement;

import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * Says where the worst value of a reflection or a coupling may lie between two points of its grid, because it varies faster than the grid
 * follows.
 */
final class BetweenPoints {
    /** What ripples with the reel's echoes. Loss and delay are smooth, and a power sum says what its parts say. */
    private static final Set<Property> RIPPLING = EnumSet.of(
            Property.RETURN_LOSS,
            Property.STRUCTURAL_RETURN_LOSS,
            Property.NEXT,
            Property.FEXT,
            Property.ACR_F,
            Property.TCL,
            Property.EL_TCTL);

    private static final MathContext DIGITS_TOLD = new MathContext(3);

    private final Optional<GridResolution> resolution;

    BetweenPoints(Product product, Length reel) {
        this.resolution = Optional.ofNullable(product.nominalVelocity())
                .map(velocity -> GridResolution.ofVelocity(reel.metres(), velocity));
    }

    /** What to say of the worst figure of a property; empty where its grid follows it, or the product states no velocity. */
    Optional<String> remark(Property property, GatheredSeries gathered, Figure worst) {
        Double megahertz = worst.megahertz();
        if (resolution.isEmpty() || megahertz == null || !RIPPLING.contains(property)) {
            return Optional.empty();
        }
        return gathered.series().stream()
                .filter(series -> series.subject().equals(worst.subject()))
                .flatMap(series -> Optional.ofNullable(series.grid()).stream()
                        .flatMap(grid -> around(series, grid, megahertz).stream()))
                .findFirst()
                .map(BetweenPoints::words);
    }

    private Optional<GridResolution.Unresolved> around(Series series, FrequencyGrid grid, double megahertz) {
        double[] frequencies = grid.toArray();
        int index = Arrays.binarySearch(frequencies, megahertz);
        return index < 0 ? Optional.empty() : resolution.orElseThrow().around(index, frequencies, series.measured());
    }

    private static String words(GridResolution.Unresolved found) {
        return "between two points: it varies by up to " + told(found.swingDecibel())
                + " dB from point to point around "
                + told(found.frequencyMegahertz()) + " MHz, faster than steps of " + told(found.stepMegahertz())
                + " MHz follow; echoes of this reel need steps below " + told(found.stepNeededMegahertz())
                + " MHz, so that the worst value may lie between two points";
    }

    private static String told(double value) {
        return BigDecimal.valueOf(value).round(DIGITS_TOLD).toPlainString();
    }
}
