package dev.reelproof.intake.reel;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.Identifier;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import dev.reelproof.quantity.Length;
import java.util.Optional;

/** Reads the document that registers a reel. */
public final class ReelReader {
    private ReelReader() {}

    /** A length beside what was sent. */
    private record SentLength(double value, String unit, Length length) {
        static SentLength of(double value, String unit) {
            return new SentLength(value, unit, Length.of(value, unit));
        }
    }

    /**
     * The reel that a document registers.
     *
     * @param reel the reel's number, from the address
     * @param json the document: {@code product} and {@code length} required; {@code plant}, {@code order} and
     *     {@code customer} optional
     * @throws IntakeException MALFORMED or CONTENT, with JSON pointers; {@code reel} is the number itself
     */
    public static ReelRegistration read(String reel, byte[] json) {
        Faults faults = new Faults();
        Optional<String> number = faults.attempt("reel", () -> Identifier.of(reel));
        SentObject root = SentObject.read("reel", json, faults)
                .allow("plant", "product", "length", "order", "customer")
                .require("product", "length");
        Optional<String> plant = root.identifier("plant");
        Optional<String> product = root.identifier("product");
        Optional<SentLength> length = root.quantity("length", SentLength::of);
        Optional<String> order = root.text("order", SentObject.LONGEST_NAME);
        Optional<String> customer = root.text("customer", SentObject.LONGEST_NAME);
        faults.refuseIfAny();
        return new ReelRegistration(
                number.orElseThrow(),
                plant.orElse(null),
                product.orElseThrow(),
                length.orElseThrow().length(),
                length.orElseThrow().value(),
                length.orElseThrow().unit(),
                order.orElse(null),
                customer.orElse(null));
    }
}
