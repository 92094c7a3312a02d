package dev.reelproof.api.reel;

import dev.reelproof.api.Quantity;
import dev.reelproof.app.reel.PlantProduct;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** A product, as the HTTP contract has it. */
record ProductAnswer(
        String product,
        String plant,
        String description,
        String limitSet,
        int pairs,
        String gauge,
        @Nullable Double nominalVelocity,
        List<LayAnswer> lays,
        List<UnitAnswer> units) {
    private static final double MILLIMETRES_PER_METRE = 1000;
    private static final int MILLIMETRE_PLACES = 6;

    /** The lay of a pair. */
    record LayAnswer(int pair, Quantity lay) {}

    /** A unit of the core. */
    record UnitAnswer(int unit, int from, int to, List<Integer> adjacentTo) {}

    static ProductAnswer of(PlantProduct found) {
        Product product = found.product();
        return new ProductAnswer(
                product.id(),
                found.plant(),
                product.description(),
                product.limitSet(),
                product.pairs(),
                product.gauge(),
                product.nominalVelocity(),
                product.lays().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(lay -> new LayAnswer(lay.getKey(), new Quantity(millimetres(lay.getValue()), "mm")))
                        .toList(),
                product.units().stream().map(ProductAnswer::unit).toList());
    }

    /** Metres are held; what was sent in mm comes back without the noise of the conversion, to a nanometre. */
    private static double millimetres(Length length) {
        return BigDecimal.valueOf(length.metres() * MILLIMETRES_PER_METRE)
                .setScale(MILLIMETRE_PLACES, RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    private static UnitAnswer unit(CoreUnit unit) {
        return new UnitAnswer(
                unit.unit(), unit.firstPair(), unit.lastPair(), List.copyOf(new TreeSet<>(unit.adjacentTo())));
    }
}
