package dev.reelproof.intake;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One value of a document, with its JSON pointer.
 *
 * <p>Each reading gives the value, or nothing when it is wrong, in which case a fault with the pointer is noted.
 *
 * @param where its pointer
 * @param node the value as sent; never null
 * @param faults where faults are noted
 */
record SentValue(String where, JsonNode node, Faults faults) {
    private static final int LONGEST_TIME = 256;
    private static final int LAST_YEAR = 9999;

    private <T> Optional<T> wrong(String expected) {
        faults.add(where, "must be " + expected + ", not " + kindOf(node));
        return Optional.empty();
    }

    Optional<String> text(int most) {
        return node.isTextual() ? faults.attempt(where, () -> cleanText(node.textValue(), most)) : wrong("text");
    }

    private static String cleanText(String sent, int most) {
        String text = sent.strip();
        if (text.isEmpty()) {
            throw new IllegalArgumentException("must not be empty; leave the key out when there is nothing to say");
        }
        if (text.length() > most) {
            throw new IllegalArgumentException("has " + text.length() + " characters; at most " + most + " are kept");
        }
        if (text.codePoints().anyMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE)) {
            throw new IllegalArgumentException("holds a control or broken character; use plain text on one line");
        }
        return text;
    }

    Optional<String> identifier() {
        return node.isTextual() ? faults.attempt(where, () -> Identifier.of(node.textValue())) : wrong("text");
    }

    Optional<Boolean> truth() {
        return node.isBoolean() ? Optional.of(node.booleanValue()) : wrong("true or false");
    }

    Optional<Double> number() {
        if (!node.isNumber()) {
            return wrong("a number");
        }
        double number = node.doubleValue();
        if (!Double.isFinite(number)) {
            faults.add(where, "is " + number + " or too large; numbers must be finite");
            return Optional.empty();
        }
        return Optional.of(number);
    }

    Optional<Integer> whole(int least, int most) {
        return number().flatMap(number -> {
            if (number == Math.rint(number) && number >= least && number <= most) {
                return Optional.of((int) (double) number);
            }
            faults.add(
                    where,
                    "must be a whole number from " + least + " to " + most + ", not " + Words.quoted(node.asText()));
            return Optional.empty();
        });
    }

    Optional<OffsetDateTime> time() {
        return text(LONGEST_TIME)
                .flatMap(text -> faults.attempt(where, () -> {
                    try {
                        OffsetDateTime time = OffsetDateTime.parse(text);
                        requireYear(time.getYear());
                        return time;
                    } catch (DateTimeParseException e) {
                        throw new IllegalArgumentException(
                                Words.quoted(text)
                                        + " is not a time in ISO 8601 with its offset, such as 2026-03-02T14:05:00Z",
                                e);
                    }
                }));
    }

    Optional<LocalDate> date() {
        return text(LONGEST_TIME)
                .flatMap(text -> faults.attempt(where, () -> {
                    try {
                        LocalDate date = LocalDate.parse(text);
                        requireYear(date.getYear());
                        return date;
                    } catch (DateTimeParseException e) {
                        throw new IllegalArgumentException(
                                Words.quoted(text) + " is not a day in ISO 8601, such as 2026-12-31", e);
                    }
                }));
    }

    private static void requireYear(int year) {
        if (!(year >= 1 && year <= LAST_YEAR)) {
            throw new IllegalArgumentException("the year must lie between 1 and " + LAST_YEAR + ", not " + year);
        }
    }

    Optional<SentObject> object(String document) {
        return node.isObject() ? Optional.of(new SentObject(document, where, node, faults)) : wrong("an object {…}");
    }

    /** What each element of an array is read as; elements that are wrong are noted and left out. */
    <T> List<T> each(Function<SentValue, Optional<T>> reading) {
        List<T> values = new ArrayList<>();
        if (isArray()) {
            for (int i = 0; i < node.size(); i++) {
                reading.apply(element(i)).ifPresent(values::add);
            }
        }
        return values;
    }

    /** Finite numbers of an array; nothing when any of them is wrong. Long arrays are read without an object a number. */
    Optional<double[]> numbers() {
        if (!isArray()) {
            return Optional.empty();
        }
        int before = faults.count();
        double[] numbers = new double[node.size()];
        for (int i = 0; i < numbers.length; i++) {
            JsonNode found = node.get(i);
            numbers[i] = found.isNumber() ? found.doubleValue() : Double.NaN;
            if (!Double.isFinite(numbers[i])) {
                element(i).number();
            }
        }
        return faults.count() == before ? Optional.of(numbers) : Optional.empty();
    }

    private boolean isArray() {
        return node.isArray() || wrong("an array […]").isPresent();
    }

    private SentValue element(int index) {
        return new SentValue(where + "/" + index, node.get(index), faults);
    }

    /** What a value is, in words. */
    static String kindOf(JsonNode found) {
        return switch (found.getNodeType()) {
            case ARRAY -> "an array";
            case OBJECT -> "an object";
            case STRING -> "the text " + Words.quoted(found.textValue());
            case NUMBER -> "the number " + Words.quoted(found.asText());
            case BOOLEAN -> found.asText();
            case NULL -> "null";
            default -> "something else";
        };
    }
}
