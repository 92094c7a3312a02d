package dev.reelproof.intake.reel;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.Identifier;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.SentObject;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Reads the document that registers a product. */
public final class ProductReader {
    private static final int LONGEST_DESCRIPTION = 500;

    private ProductReader() {}

    /**
     * The product that a document describes.
     *
     * @param productCode the product's code, from the address
     * @param json the document: {@code limitSet} and {@code pairs} required; {@code description}, {@code gauge} (empty when
     *     absent), {@code nominalVelocity}, {@code lays} and {@code units} optional
     * @throws IntakeException MALFORMED or CONTENT, with JSON pointers; {@code product} is the code itself
     */
    public static Product read(String productCode, byte[] json) {
        Faults faults = new Faults();
        Optional<String> id = faults.attempt("product", () -> Identifier.of(productCode));
        SentObject root = SentObject.read("product", json, faults)
                .allow("description", "limitSet", "pairs", "gauge", "nominalVelocity", "lays", "units")
                .require("limitSet", "pairs");
        Optional<String> description = root.text("description", LONGEST_DESCRIPTION);
        Optional<String> limitSet = root.identifier("limitSet");
        Optional<Integer> pairs = root.whole("pairs", 1, Product.MOST_PAIRS);
        Optional<String> gauge = root.text("gauge", SentObject.LONGEST_NAME);
        Optional<Double> velocity = root.number("nominalVelocity");
        if (velocity.isPresent() && !(velocity.get() > 0 && velocity.get() < 1)) {
            root.fault(
                    "nominalVelocity",
                    "must lie between 0 and 1, as a part of the velocity of light, not " + velocity.get());
        }
        int mostPairs = pairs.orElse(Product.MOST_PAIRS);
        Map<Integer, Length> lays = lays(root, mostPairs);
        List<CoreUnit> units = units(root, mostPairs);
        faults.refuseIfAny();
        try {
            return new Product(
                    id.orElseThrow(),
                    description.orElse(""),
                    limitSet.orElseThrow(),
                    pairs.orElseThrow(),
                    gauge.orElse(""),
                    velocity.orElse(null),
                    lays,
                    units);
        } catch (IllegalArgumentException e) {
            throw IntakeException.of(
                    Kind.CONTENT,
                    root.has("units") ? root.pointer("units") : "product",
                    String.valueOf(e.getMessage()));
        }
    }

    private static Map<Integer, Length> lays(SentObject root, int mostPairs) {
        Map<Integer, Length> lays = new TreeMap<>();
        for (SentObject sent : root.objects("lays")) {
            sent.allow("pair", "lay").require("pair", "lay");
            Optional<Integer> pair = sent.whole("pair", 1, mostPairs);
            Optional<Length> lay = sent.quantity("lay", Length::of);
            if (pair.isPresent() && lay.isPresent() && lays.put(pair.get(), lay.get()) != null) {
                sent.fault("pair", "the lay of pair " + pair.get() + " stands twice; give it once");
            }
        }
        return lays;
    }

    private static List<CoreUnit> units(SentObject root, int mostPairs) {
        List<CoreUnit> units = new ArrayList<>();
        Set<Integer> numbers = new HashSet<>();
        for (SentObject sent : root.objects("units")) {
            sent.allow("unit", "from", "to", "adjacentTo").require("unit", "from", "to");
            Optional<Integer> number = sent.whole("unit", 1, Product.MOST_PAIRS);
            Optional<Integer> from = sent.whole("from", 1, mostPairs);
            Optional<Integer> to = sent.whole("to", 1, mostPairs);
            List<Integer> adjacent = sent.wholes("adjacentTo", 1, Product.MOST_PAIRS);
            if (number.isPresent() && !numbers.add(number.get())) {
                sent.fault("unit", "unit " + number.get() + " stands twice; give it once");
            }
            if (number.isPresent() && from.isPresent() && to.isPresent()) {
                sent.faults()
                        .attempt(
                                sent.pointer(),
                                () -> new CoreUnit(number.get(), from.get(), to.get(), new HashSet<>(adjacent)))
                        .ifPresent(units::add);
            }
        }
        for (CoreUnit unit : units) {
            for (int neighbour : unit.adjacentTo().stream().sorted().toList()) {
                if (neighbour == unit.unit() || !numbers.contains(neighbour)) {
                    root.fault(
                            "units",
                            "unit " + unit.unit() + " is said to touch unit " + neighbour
                                    + ", which is not another unit of the core");
                }
            }
        }
        return units;
    }
}
