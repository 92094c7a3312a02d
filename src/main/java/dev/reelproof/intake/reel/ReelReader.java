package dev.reelproof.intake.reel;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.Identifier;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.quantity.Length;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.Wording;
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
     * @param json the document: {@code product} and {@code length} required; {@code plant}, {@code lengthMarks}, {@code order} and
     *     {@code customer} optional
     * @throws IntakeException MALFORMED or CONTENT, with JSON pointers; {@code reel} is the number itself
     */
    public static ReelRegistration read(String reel, byte[] json) {
        Faults faults = new Faults();
        Optional<String> number = faults.attempt("reel", () -> Identifier.of(reel));
        SentObject root = SentObject.read("reel", json, faults)
                .allow("plant", "product", "length", "lengthMarks", "order", "customer")
                .require("product", "length");
        Optional<String> plant = root.identifier("plant");
        Optional<String> product = root.identifier("product");
        Optional<SentLength> length = root.quantity("length", SentLength::of);
        Optional<LengthMarks> marks = root.object("lengthMarks").flatMap(ReelReader::marks);
        if (marks.isPresent() && length.isPresent()) {
            requireAgree(root, marks.get(), length.get());
        }
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
                marks.orElse(null),
                order.orElse(null),
                customer.orElse(null));
    }

    private static Optional<LengthMarks> marks(SentObject sent) {
        sent.allow("first", "last", "unit").require("first", "last", "unit");
        Optional<Double> first = sent.number("first");
        Optional<Double> last = sent.number("last");
        Optional<String> unit = sent.text("unit", SentObject.LONGEST_UNIT);
        if (first.isEmpty() || last.isEmpty() || unit.isEmpty()) {
            return Optional.empty();
        }
        return sent.faults().attempt(sent.pointer(), () -> new LengthMarks(first.get(), last.get(), unit.get()));
    }

    private static void requireAgree(SentObject root, LengthMarks marks, SentLength length) {
        if (!marks.agreeWith(length.length())) {
            root.fault(
                    "lengthMarks",
                    Figures.length(marks.span().metres(), "m") + " lie between the length marks "
                            + Wording.english().lengthMarks(marks.first(), marks.last(), marks.unit())
                            + ", but the length is " + Figures.length(length.value(), length.unit())
                            + "; read both again: they may differ by 1 %, or by 1 m or 3 ft where that is more");
        }
    }
}
