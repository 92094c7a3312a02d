package dev.reelproof.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A JSON object as it was sent, with its JSON pointer.
 *
 * <p>A getter gives the value, or nothing: when the key is absent or null, and when the value is wrong, in which case a fault
 * with the value's pointer is noted. Ask {@link #allow} and {@link #require} first, read all that can be read, and end with
 * {@link Faults#refuseIfAny()}.
 */
public final class SentObject {
    /** The longest text that can be a unit. */
    public static final int LONGEST_UNIT = 32;

    /** The longest text that names something: a bay, a person, an instrument, an order. */
    public static final int LONGEST_NAME = 120;

    private final String document;
    private final String pointer;
    private final JsonNode node;
    private final Faults faults;

    SentObject(String document, String pointer, JsonNode node, Faults faults) {
        this.document = document;
        this.pointer = pointer;
        this.node = node;
        this.faults = faults;
    }

    /** Makes a quantity of a number and a unit, or throws {@link IllegalArgumentException}. */
    @FunctionalInterface
    public interface QuantityOf<T> {
        T of(double value, String unit);
    }

    /**
     * Reads a document that is one JSON object.
     *
     * @param document its name in messages, such as {@code result}
     * @param json its bytes
     * @param faults where faults found later are noted
     * @throws IntakeException MALFORMED when it is not JSON, at {@code document:line:column} where it is text; CONTENT when it is
     *     no object
     */
    public static SentObject read(String document, byte[] json, Faults faults) {
        return new SentObject(document, "", SentDocument.object(document, json), faults);
    }

    /** The place of this object; empty for the whole document. */
    public String pointer() {
        return pointer;
    }

    /** The place of the value of a key, present or not. */
    public String pointer(String key) {
        return pointer + "/" + key.replace("~", "~0").replace("/", "~1");
    }

    /** Where the faults of this document are noted. */
    public Faults faults() {
        return faults;
    }

    /** Notes a fault of a key's value. */
    public void fault(String key, String message) {
        faults.add(pointer(key), message);
    }

    /** Notes a fault of the object as a whole. */
    public void fault(String message) {
        faults.add(pointer.isEmpty() ? document : pointer, message);
    }

    /** Notes every key that is not one of these. */
    public SentObject allow(String... keys) {
        List<String> known = Arrays.asList(keys);
        for (String key : keys()) {
            if (!known.contains(key)) {
                fault(key, "unknown key " + Words.quoted(key) + Words.suggestion(key, known));
            }
        }
        return this;
    }

    /** Notes each of these keys that is absent or null. */
    public SentObject require(String... keys) {
        for (String key : keys) {
            if (!has(key)) {
                fault(key, "'" + key + "' is missing; it is required");
            }
        }
        return this;
    }

    /** The keys, in the order sent. */
    public List<String> keys() {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    /** Whether the key has a value other than null. */
    public boolean has(String key) {
        return node.hasNonNull(key);
    }

    /** Whether the key's value is text. */
    public boolean isText(String key) {
        return value(key).filter(value -> value.node().isTextual()).isPresent();
    }

    /** Whether the key's value is a number. */
    public boolean isNumber(String key) {
        return value(key).filter(value -> value.node().isNumber()).isPresent();
    }

    private Optional<SentValue> value(String key) {
        return has(key) ? Optional.of(new SentValue(pointer(key), node.get(key), faults)) : Optional.empty();
    }

    /** A text of 1 to {@code most} characters without control characters, blanks around it removed. */
    public Optional<String> text(String key, int most) {
        return value(key).flatMap(value -> value.text(most));
    }

    /** An identifier, as {@link Identifier#of} allows. */
    public Optional<String> identifier(String key) {
        return value(key).flatMap(SentValue::identifier);
    }

    /** Texts of an array, each as {@link #text} allows; wrong ones are noted and left out. */
    public List<String> texts(String key, int most) {
        return value(key).map(array -> array.each(value -> value.text(most))).orElse(List.of());
    }

    /** A finite number. */
    public Optional<Double> number(String key) {
        return value(key).flatMap(SentValue::number);
    }

    /** A whole number between two others, both allowed. */
    public Optional<Integer> whole(String key, int least, int most) {
        return value(key).flatMap(value -> value.whole(least, most));
    }

    /** Whole numbers of an array, each between two others; wrong ones are noted and left out. */
    public List<Integer> wholes(String key, int least, int most) {
        return value(key)
                .map(array -> array.each(value -> value.whole(least, most)))
                .orElse(List.of());
    }

    /** Finite numbers of an array; nothing when any of them is wrong. */
    public Optional<double[]> numbers(String key) {
        return value(key).flatMap(SentValue::numbers);
    }

    /** A true or false. */
    public Optional<Boolean> truth(String key) {
        return value(key).flatMap(SentValue::truth);
    }

    /** A quantity {@code {"value": number, "unit": "text"}}, made by the given constructor. */
    public <T> Optional<T> quantity(String key, QuantityOf<T> quantity) {
        return object(key).flatMap(sent -> {
            sent.allow("value", "unit").require("value", "unit");
            Optional<Double> value = sent.number("value");
            Optional<String> unit = sent.text("unit", LONGEST_UNIT);
            if (value.isEmpty() || unit.isEmpty()) {
                return Optional.empty();
            }
            return faults.attempt(pointer(key), () -> quantity.of(value.get(), unit.get()));
        });
    }

    /** A time in ISO 8601 with its offset. */
    public Optional<OffsetDateTime> time(String key) {
        return value(key).flatMap(SentValue::time);
    }

    /** A day in ISO 8601. */
    public Optional<LocalDate> date(String key) {
        return value(key).flatMap(SentValue::date);
    }

    /** An object within. */
    public Optional<SentObject> object(String key) {
        return value(key).flatMap(value -> value.object(document));
    }

    /** The objects of an array; elements that are no objects are noted and left out; none when the key is absent. */
    public List<SentObject> objects(String key) {
        return value(key)
                .map(array -> array.each(value -> value.object(document)))
                .orElse(List.of());
    }
}
