package dev.reelproof.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.reelproof.intake.IntakeException.Kind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** From bytes to one JSON object, within bounds; says in our own words why bytes are none. */
final class SentDocument {
    private static final int DEEPEST = 16;
    private static final int LONGEST_NUMBER = 64;
    private static final int LONGEST_TEXT = 10_000;
    private static final int LONGEST_KEY = 256;
    private static final long MOST_TOKENS = 10_000_000;
    private static final int SHOWN_EACH_SIDE = 20;
    private static final String WHAT_IS_RIGHT = "send one JSON object, as text in UTF-8";

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

    private SentDocument() {}

    /**
     * The object that a document is.
     *
     * @param document its name in messages, such as {@code result}
     * @throws IntakeException MALFORMED when it is not JSON, at {@code document:line:column} where it is text; CONTENT when it is
     *     no object
     */
    static JsonNode object(String document, byte[] json) {
        JsonNode root = tree(document, json);
        if (root == null || root.isMissingNode()) {
            throw IntakeException.of(Kind.MALFORMED, document, "is empty; send one JSON object");
        }
        if (!root.isObject()) {
            throw IntakeException.of(Kind.CONTENT, document, "must be one JSON object, not " + SentValue.kindOf(root));
        }
        return root;
    }

    private static JsonNode tree(String document, byte[] json) {
        try {
            return MAPPER.readTree(json);
        } catch (IOException e) {
            String kind = KnownFile.nameOf(json);
            if (kind != null) {
                throw IntakeException.of(
                        Kind.MALFORMED, document, "is " + kind + ", not a JSON document; " + WHAT_IS_RIGHT);
            }
            throw e instanceof JsonProcessingException syntax
                    ? IntakeException.of(Kind.MALFORMED, where(document, syntax), message(syntax, json))
                    : IntakeException.of(Kind.MALFORMED, document, "is not text in UTF-8; " + WHAT_IS_RIGHT);
        }
    }

    private static String where(String document, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        return at == null ? document : document + ":" + at.getLineNr() + ":" + at.getColumnNr();
    }

    private static String message(JsonProcessingException e, byte[] json) {
        String said = e.getOriginalMessage();
        if (e instanceof StreamConstraintsException) {
            return beyondBounds(said);
        }
        if (e instanceof JsonEOFException || said.startsWith("Unexpected end-of-input")) {
            return "the JSON ends before it is complete; was the file cut short?";
        }
        if (said.startsWith("Duplicate")) {
            return "the key " + said.substring(said.indexOf('\'')) + " stands twice in one object; give it once";
        }
        if (said.startsWith("Trailing token")) {
            return "something follows the JSON object; send one object and nothing after it";
        }
        if (said.startsWith("Invalid UTF-8")) {
            return "is not text in UTF-8 here: a byte stands for no character; save the file as UTF-8";
        }
        return "is not JSON at " + Words.quoted(around(e.getLocation(), json))
                + "; look there for a quotation mark, a comma, a colon or a bracket that is missing or too much";
    }

    private static String beyondBounds(String said) {
        if (said.contains("nesting depth")) {
            return "objects and arrays lie in one another to a depth of more than " + DEEPEST + "; that is no document "
                    + "that is read here";
        }
        if (said.startsWith("Number")) {
            return "a number has a length of more than " + LONGEST_NUMBER + " characters; give fewer digits";
        }
        if (said.startsWith("String")) {
            return "a text has a length of more than " + LONGEST_TEXT + " characters; give a shorter one";
        }
        return said.contains("Token count")
                ? "has more than " + MOST_TOKENS + " values; send fewer in one document"
                : "a key has a length of more than " + LONGEST_KEY + " characters; no key is so long";
    }

    /** What stands on both sides of a place, on its line. */
    private static String around(JsonLocation at, byte[] json) {
        int place = (int) Math.max(0, Math.min(at == null ? 0 : at.getByteOffset(), json.length));
        int from = place;
        while (from > 0 && place - from < SHOWN_EACH_SIDE && json[from - 1] != '\n') {
            from--;
        }
        int to = place;
        while (to < json.length && to - place < SHOWN_EACH_SIDE && json[to] != '\n') {
            to++;
        }
        return new String(json, from, to - from, StandardCharsets.UTF_8)
                .replaceAll("\\p{Cntrl}", " ")
                .strip();
    }
}
