package dev.reelproof.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.reelproof.intake.IntakeException.Kind;
import java.io.IOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
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
    private static final int DEEPEST = 16;
    private static final int LONGEST_NUMBER = 64;
    private static final int LONGEST_TEXT = 10_000;
    private static final int LONGEST_KEY = 256;
    private static final long MOST_TOKENS = 10_000_000;
    private static final int LAST_YEAR = 9999;

    private static final ObjectMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(DEEPEST)
                            .maxNumberLength(LONGEST_NUMBER)
                            .maxStringLength(LONGEST_TEXT)
                            .maxNameLength(LONGEST_KEY)
                            .maxTokenCount(MOST_TOKENS)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    // let in as tokens, so that the refusal can give their pointer
                    .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private final String document;
    private final String pointer;
    private final JsonNode node;
    private final Faults faults;

    private SentObject(String document, String pointer, JsonNode node, Faults faults) {
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
     * @throws IntakeException MALFORMED at {@code document:line:column} when it is not JSON; CONTENT when it is no object
     */
    public static SentObject read(String document, byte[] json, Faults faults) {
        JsonNode root;
        try {
            root = MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            JsonLocation at = e.getLocation();
            String where = at == null ? document : document + ":" + at.getLineNr() + ":" + at.getColumnNr();
            throw IntakeException.of(Kind.MALFORMED, where, syntaxMessage(e));
        } catch (IOException e) {
            throw IntakeException.of(Kind.MALFORMED, document, "is not JSON in UTF-8: " + e.getMessage());
        }
        if (root == null || root.isMissingNode()) {
            throw IntakeException.of(Kind.MALFORMED, document, "is empty; send one JSON object");
        }
        if (!root.isObject()) {
            throw IntakeException.of(Kind.CONTENT, document, "must be one JSON object, not " + kindOf(root));
        }
        return new SentObject(document, "", root, faults);
    }

    private static String syntaxMessage(JsonProcessingException e) {
        String said = e.getOriginalMessage();
        if (e instanceof JsonEOFException || said.startsWith("Unexpected end-of-input")) {
            return "the JSON ends before it is complete; was the file cut short?";
        }
        if (said.startsWith("Duplicate")) {
            return "the same key stands twice in one object (" + said + "); give it once";
        }
        if (said.startsWith("Trailing token")) {
            return "something follows the JSON object; send one object and nothing after it";
        }
        return "is not JSON: " + said;
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
        return value(key).filter(JsonNode::isTextual).isPresent();
    }

    /** Whether the key's value is a number. */
    public boolean isNumber(String key) {
        return value(key).filter(JsonNode::isNumber).isPresent();
    }

    private Optional<JsonNode> value(String key) {
        return has(key) ? Optional.of(node.get(key)) : Optional.empty();
    }

    private <T> Optional<T> wrong(String where, String expected, JsonNode found) {
        faults.add(where, "must be " + expected + ", not " + kindOf(found));
        return Optional.empty();
    }

    /** A text of 1 to {@code most} characters without control characters, blanks around it removed. */
    public Optional<String> text(String key, int most) {
        return value(key).flatMap(found -> text(pointer(key), found, most));
    }

    private Optional<String> text(String where, JsonNode found, int most) {
        if (!found.isTextual()) {
            return wrong(where, "text", found);
        }
        return faults.attempt(where, () -> cleanText(found.textValue(), most));
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

    /** An identifier, as {@link Identifier#of} allows. */
    public Optional<String> identifier(String key) {
        return value(key)
                .flatMap(found -> found.isTextual()
                        ? faults.attempt(pointer(key), () -> Identifier.of(found.textValue()))
                        : wrong(pointer(key), "text", found));
    }

    /** Texts of an array, each as {@link #text} allows; wrong ones are noted and left out. */
    public List<String> texts(String key, int most) {
        List<String> texts = new ArrayList<>();
        array(key).ifPresent(array -> {
            for (int i = 0; i < array.size(); i++) {
                text(pointer(key) + "/" + i, array.get(i), most).ifPresent(texts::add);
            }
        });
        return texts;
    }

    /** A finite number. */
    public Optional<Double> number(String key) {
        return value(key).flatMap(found -> number(pointer(key), found));
    }

    private Optional<Double> number(String where, JsonNode found) {
        if (!found.isNumber()) {
            return wrong(where, "a number", found);
        }
        double number = found.doubleValue();
        if (!Double.isFinite(number)) {
            faults.add(where, "is " + number + " or too large; numbers must be finite");
            return Optional.empty();
        }
        return Optional.of(number);
    }

    /** A whole number between two others, both allowed. */
    public Optional<Integer> whole(String key, int least, int most) {
        return value(key).flatMap(found -> whole(pointer(key), found, least, most));
    }

    private Optional<Integer> whole(String where, JsonNode found, int least, int most) {
        return number(where, found).flatMap(number -> {
            if (number == Math.rint(number) && number >= least && number <= most) {
                return Optional.of((int) (double) number);
            }
            faults.add(
                    where,
                    "must be a whole number from " + least + " to " + most + ", not " + Words.quoted(found.asText()));
            return Optional.empty();
        });
    }

    /** Whole numbers of an array, each between two others; wrong ones are noted and left out. */
    public List<Integer> wholes(String key, int least, int most) {
        List<Integer> wholes = new ArrayList<>();
        array(key).ifPresent(array -> {
            for (int i = 0; i < array.size(); i++) {
                whole(pointer(key) + "/" + i, array.get(i), least, most).ifPresent(wholes::add);
            }
        });
        return wholes;
    }

    /** Finite numbers of an array; nothing when any of them is wrong. */
    public Optional<double[]> numbers(String key) {
        return array(key).flatMap(array -> {
            int before = faults.count();
            double[] numbers = new double[array.size()];
            for (int i = 0; i < numbers.length; i++) {
                JsonNode found = array.get(i);
                numbers[i] = found.isNumber() ? found.doubleValue() : Double.NaN;
                if (!Double.isFinite(numbers[i])) {
                    number(pointer(key) + "/" + i, found);
                }
            }
            return faults.count() == before ? Optional.of(numbers) : Optional.empty();
        });
    }

    /** A true or false. */
    public Optional<Boolean> truth(String key) {
        return value(key)
                .flatMap(found -> found.isBoolean()
                        ? Optional.of(found.booleanValue())
                        : wrong(pointer(key), "true or false", found));
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

    /** The longest text that can be a unit. */
    public static final int LONGEST_UNIT = 32;

    /** A time in ISO 8601 with its offset. */
    public Optional<OffsetDateTime> time(String key) {
        return text(key, LONGEST_KEY)
                .flatMap(text -> faults.attempt(pointer(key), () -> {
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

    /** A day in ISO 8601. */
    public Optional<LocalDate> date(String key) {
        return text(key, LONGEST_KEY)
                .flatMap(text -> faults.attempt(pointer(key), () -> {
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

    /** An object within. */
    public Optional<SentObject> object(String key) {
        return value(key).flatMap(found -> object(pointer(key), found));
    }

    private Optional<SentObject> object(String where, JsonNode found) {
        return found.isObject()
                ? Optional.of(new SentObject(document, where, found, faults))
                : wrong(where, "an object {…}", found);
    }

    /** The objects of an array; elements that are no objects are noted and left out; none when the key is absent. */
    public List<SentObject> objects(String key) {
        List<SentObject> objects = new ArrayList<>();
        array(key).ifPresent(array -> {
            for (int i = 0; i < array.size(); i++) {
                object(pointer(key) + "/" + i, array.get(i)).ifPresent(objects::add);
            }
        });
        return objects;
    }

    private Optional<JsonNode> array(String key) {
        return value(key)
                .flatMap(found -> found.isArray() ? Optional.of(found) : wrong(pointer(key), "an array […]", found));
    }

    private static String kindOf(JsonNode found) {
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
