package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.JsonNode;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Source;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Temperature;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A mapping in a file that the schema has let pass, and where it stands; what makes no sense in it becomes a fault at that place.
 *
 * @param node the mapping
 * @param pointer its JSON pointer (RFC 6901)
 * @param faults where faults are gathered
 */
record Entry(JsonNode node, String pointer, FaultList faults) {

    /** What is made of a text such as {@code 100 m}. */
    interface OfValueAndUnit<T> {
        T of(double value, String unit);
    }

    boolean has(String key) {
        return node.has(key);
    }

    /** The entry under a key; one without any content where the key is absent. */
    Entry at(String key) {
        return new Entry(node.path(key), pointer + "/" + key, faults);
    }

    /** The entries of a list under a key, in order; none where the key is absent. */
    List<Entry> list(String key) {
        JsonNode entries = node.path(key);
        List<Entry> list = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            list.add(new Entry(entries.get(i), pointer + "/" + key + "/" + i, faults));
        }
        return list;
    }

    void fault(String message) {
        faults.add(pointer, message);
    }

    void fault(String key, String message) {
        faults.add(pointer + "/" + key, message);
    }

    /** Notes a fault where the key is there. */
    void refuse(String key, String why) {
        if (has(key)) {
            fault(key, why);
        }
    }

    /** The value, or none with its refusal noted as a fault of this entry. */
    <T> @Nullable T attempt(Supplier<T> value) {
        return faults.attempt(pointer, value);
    }

    /** The value, or none with its refusal noted as a fault under the key. */
    <T> @Nullable T attempt(String key, Supplier<T> value) {
        return faults.attempt(pointer + "/" + key, value);
    }

    String text(String key) {
        return node.path(key).asText();
    }

    Optional<String> textIfAny(String key) {
        return Optional.ofNullable(node.get(key)).map(JsonNode::asText);
    }

    /** The number under a key; 0 where the key is absent. */
    double number(String key) {
        return node.path(key).asDouble();
    }

    int whole(String key) {
        return node.path(key).asInt();
    }

    /** The figure with its decimal places as written: they are what a value is rounded to. */
    Bound.Constant constant(String key) {
        JsonNode number = node.path(key);
        return new Bound.Constant(
                number.doubleValue(), Math.max(0, number.decimalValue().scale()));
    }

    <E extends Enum<E>> E word(Class<E> type, String key) {
        return Enum.valueOf(type, text(key).toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    <E extends Enum<E>> E word(Class<E> type, String key, E otherwise) {
        return has(key) ? word(type, key) : otherwise;
    }

    /** What a text such as {@code 100 m} says; the schema has checked its form. */
    <T> T quantity(String key, OfValueAndUnit<T> of) {
        String text = text(key);
        int space = text.indexOf(' ');
        return of.of(Double.parseDouble(text.substring(0, space)), text.substring(space + 1));
    }

    /** The number of a text such as {@code 3 dB}, whose unit the schema has fixed. */
    double valueInFixedUnit(String key) {
        return quantity(key, (value, unit) -> value);
    }

    /** A frequency in MHz. */
    double megahertz(String key) {
        return quantity(key, FrequencyGrid::megahertz);
    }

    /** A temperature, or none with a fault noted. */
    @Nullable
    Temperature temperature(String key) {
        return attempt(key, () -> quantity(key, Temperature::of));
    }

    /** A day, or none with a fault noted. */
    @Nullable
    LocalDate date(String key) {
        try {
            return LocalDate.parse(text(key));
        } catch (DateTimeException e) {
            fault(key, "'" + text(key) + "' is not a day of the calendar");
            return null;
        }
    }

    /** A range of pair counts; empty where the key is absent or a fault was noted. */
    Optional<PairCount> pairs(String key) {
        if (!has(key)) {
            return Optional.empty();
        }
        Entry range = at(key);
        return Optional.ofNullable(range.attempt(() -> new PairCount(range.whole("from"), range.whole("to"))));
    }

    /** Where the figures of this entry come from. */
    Source source() {
        return new Source(text("source"), node.path("read").asBoolean());
    }
}
