package dev.reelproof.limit.file;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DecimalNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/**
 * One YAML document as a JSON tree that remembers the line of each value, and its numbers with the decimal places as written.
 *
 * <p>Only what JSON can say is accepted: no aliases, no repeated keys, no numbers in the older notations of YAML (octal, with
 * underscores, base sixty), since an engineer would not expect them.
 */
final class YamlDocument {
    private static final Pattern PLAIN_NUMBER = Pattern.compile("-?(0|[1-9]\\d*)(\\.\\d+)?([eE][+-]?\\d+)?");
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final Map<String, Integer> lines = new HashMap<>();
    private final String what;
    private final FaultList faults;
    private JsonNode root = MissingNode.getInstance();

    private YamlDocument(String what, FaultList faults) {
        this.what = what;
        this.faults = faults;
    }

    /** Reads a limit set's document; what cannot be read is added to the faults. */
    static YamlDocument parse(String text, FaultList faults) {
        return parse(text, "limit set", faults);
    }

    /**
     * Reads a document; what cannot be read is added to the faults.
     *
     * @param what the document holds, for messages
     */
    static YamlDocument parse(String text, String what, FaultList faults) {
        YamlDocument document = new YamlDocument(what, faults);
        faults.locateBy(document::line);
        try (YAMLParser parser = new YAMLFactory().createParser(text)) {
            document.read(parser);
        } catch (JsonProcessingException e) {
            JsonLocation location = e.getLocation();
            faults.addAtLine(location == null ? 1 : location.getLineNr(), "", "this is not YAML: " + problem(e));
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory cannot fail to be read", e);
        }
        return document;
    }

    private static String problem(JsonProcessingException e) {
        return e.getCause() instanceof MarkedYAMLException marked && marked.getProblem() != null
                ? marked.getProblem()
                : e.getOriginalMessage();
    }

    JsonNode root() {
        return root;
    }

    /** The line of the value at a JSON pointer, or of the nearest value that holds it. */
    int line(String pointer) {
        for (String place = pointer; ; place = place.substring(0, place.lastIndexOf('/'))) {
            Integer line = lines.get(place);
            if (line != null) {
                return line;
            }
            if (place.isEmpty()) {
                return 1;
            }
        }
    }

    /** A key as a step of a JSON pointer (RFC 6901). */
    static String step(String key) {
        return "/" + key.replace("~", "~0").replace("/", "~1");
    }

    private void read(YAMLParser parser) throws IOException {
        if (parser.nextToken() == null) {
            faults.add("", "the file is empty; it must hold one " + what);
            return;
        }
        root = value(parser, "", line(parser));
        if (parser.nextToken() != null) {
            faults.addAtLine(line(parser), "", "a second document begins here; a file holds one " + what);
        }
    }

    private static int line(YAMLParser parser) {
        return parser.currentTokenLocation().getLineNr();
    }

    private JsonNode value(YAMLParser parser, String pointer, int line) throws IOException {
        lines.put(pointer, line);
        if (parser.isCurrentAlias()) {
            faults.add(pointer, "an alias (*) is not accepted; write the value out");
        }
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(parser, pointer);
            case START_ARRAY -> array(parser, pointer);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(parser, pointer);
            case VALUE_TRUE -> NODES.booleanNode(true);
            case VALUE_FALSE -> NODES.booleanNode(false);
            case VALUE_NULL -> NODES.nullNode();
            default -> NODES.textNode(parser.getText());
        };
    }

    private JsonNode object(YAMLParser parser, String pointer) throws IOException {
        ObjectNode object = NODES.objectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            int line = line(parser);
            String place = pointer + step(key);
            boolean repeated = object.has(key);
            if (repeated) {
                faults.addAtLine(
                        line, place, "the key '" + key + "' stands here again; it was given on line " + line(place));
            }
            parser.nextToken();
            if (repeated) {
                parser.skipChildren();
            } else {
                object.set(key, value(parser, place, line));
            }
        }
        return object;
    }

    private JsonNode array(YAMLParser parser, String pointer) throws IOException {
        ArrayNode array = NODES.arrayNode();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            array.add(value(parser, pointer + "/" + array.size(), line(parser)));
        }
        return array;
    }

    private JsonNode number(YAMLParser parser, String pointer) throws IOException {
        String text = parser.getText();
        if (!PLAIN_NUMBER.matcher(text).matches()) {
            faults.add(pointer, "'" + text + "' is not a plain decimal number such as 60.7");
            return NODES.textNode(text);
        }
        BigDecimal number = new BigDecimal(text);
        if (!Double.isFinite(number.doubleValue())) {
            faults.add(pointer, "'" + text + "' is beyond the range of figures");
            return NODES.textNode(text);
        }
        return number.scale() == 0 ? NODES.numberNode(number.toBigInteger()) : DecimalNode.valueOf(number);
    }
}
