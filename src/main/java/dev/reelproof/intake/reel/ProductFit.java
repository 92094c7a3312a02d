package dev.reelproof.intake.reel;

import dev.reelproof.intake.Faults;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import org.jspecify.annotations.Nullable;

/** Whether a result can be one of a reel of a product: the product that it names, and the pairs that it measures. */
public final class ProductFit {
    private ProductFit() {}

    /**
     * What does not fit; empty when all does.
     *
     * @param result what was measured
     * @param product the product that the reel is registered as
     */
    public static Faults check(ReelResult result, Product product) {
        Faults faults = new Faults();
        if (!result.product().equals(product.id())) {
            faults.add(
                    "/product",
                    "the result is of product " + result.product() + ", but the reel is registered as " + product.id()
                            + "; is it the wrong reel?");
        }
        for (Reading reading : result.readings()) {
            check(reading.property(), reading.subject(), reading.origin(), product, faults);
        }
        for (Sweep sweep : result.sweeps()) {
            check(sweep.property(), sweep.subject(), sweep.origin(), product, faults);
        }
        return faults;
    }

    private static void check(Property property, Subject subject, Origin origin, Product product, Faults faults) {
        check("pair", subject.pair(), property, origin, product, faults);
        check("partner", subject.partner(), property, origin, product, faults);
    }

    private static void check(
            String name, @Nullable Integer number, Property property, Origin origin, Product product, Faults faults) {
        if (number != null && number > product.pairs()) {
            faults.add(
                    origin.of(0),
                    property + ": " + name + " " + number + " is beyond the " + product.pairs() + " pairs of product "
                            + product.id());
        }
    }
}
