package dev.reelproof.intake.result;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The contract's sample document, and what can be wrong with it: one change each. */
public final class BrokenResults {
    private BrokenResults() {}

    /**
     * A fault put into the sample.
     *
     * @param from a text that stands once in the sample
     * @param to what is put in its place
     * @param where where the reader must see the fault
     * @param words what its message must say
     * @param schemaToo whether the schema alone can see it as well
     */
    record Broken(String from, String to, String where, String words, boolean schemaToo) {
        String json() {
            String sample = sample();
            int at = sample.indexOf(from);
            if (at < 0 || sample.indexOf(from, at + 1) >= 0) {
                throw new IllegalArgumentException("must stand once in the sample: " + from);
            }
            return sample.replace(from, to);
        }

        @Override
        public String toString() {
            return from + " -> " + to;
        }
    }

    public static String sample() {
        try (InputStream in = BrokenResults.class.getResourceAsStream("/intake/result.json")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Broken> all() {
        return List.of(
                // keys
                new Broken("\"station\"", "\"staton\"", "/staton", "did you mean 'station'?", true),
                new Broken("\"product\": \"HD6A-4P\",", "", "/product", "missing", true),
                new Broken("\"length\": {\"value\": 305, \"unit\": \"m\"},", "", "/length", "missing", true),
                new Broken(
                        "\"temperature\": {\"value\": 31.0, \"unit\": \"°C\"},", "", "/temperature", "missing", true),
                new Broken("15.1, \"unit\": \"nF\"", "15.1", "/readings/1/unit", "missing", true),
                new Broken("\"value\": 15.1,", "", "/readings/1/value", "missing", true),
                new Broken(
                        "\"value\": 15.1", "\"volume\": 1, \"value\": 15.1", "/readings/1/volume", "unknown key", true),
                new Broken("\"conductor\"", "\"conducter\"", "/readings/0/conducter", "'conductor'?", true),
                new Broken("[6.1, ", "[6.1, null, ", "/sweeps/0/values/1", "a number, not null", true),
                // conditions
                new Broken("305", "-305", "/length", "positive", true),
                new Broken("305", "0", "/length", "positive", true),
                new Broken("305", "\"305\"", "/length/value", "a number, not the text", true),
                new Broken("\"m\"", "\"furlong\"", "/length", "unknown unit of length", true),
                new Broken("\"m\"", "\"nF\"", "/length", "unknown unit of length", true),
                new Broken("\"°C\"", "\"K\"", "/temperature", "use °C or °F", true),
                new Broken("31.0", "-460", "/temperature", "absolute zero", true),
                new Broken("HD6A-4P", "HD/6A", "/product", "identifier", true),
                new Broken("14:05:00Z", "14:05:00", "/started", "offset", false),
                new Broken("14:05:00Z", "14:25:00Z", "/started", "after it finished", false),
                new Broken("\"2026-12-31\"", "\"2026-13-31\"", "/equipment/0/calibrationDue", "a day", false),
                new Broken("\"id\": \"na-07\", ", "", "/equipment/0/id", "missing", true),
                new Broken(
                        "\"2026-12-31\"",
                        "\"2026-12-31\", \"properties\": [\"nextt\"]",
                        "/equipment/0/properties",
                        "did you mean 'next'?",
                        true),
                new Broken(
                        "\"2026-12-31\"}", "\"2026-12-31\"}, {\"id\": \"na-07\"}", "/equipment/1/id", "twice", false),
                // grids
                new Broken("[1.0, 1.5,", "[1.5, 1.0,", "/grids/g/values/1", "must ascend", false),
                new Broken("[1.0, 1.5,", "[1.0, 1.0,", "/grids/g/values/1", "without repeats", true),
                new Broken("[1.0, 1.5,", "[0, 1.5,", "/grids/g/values/0", "positive", true),
                new Broken("[1.0, 1.5, 2.25]", "[]", "/grids/g/values", "at least one", true),
                new Broken("\"MHz\"", "\"dB\"", "/grids/g/unit", "unit of frequency", true),
                new Broken("[1.0, 1.5,", "[1.0, 1.5, 1.75,", "/sweeps/0/values", "3 values for the 4", false),
                new Broken("[6.1, 7.4, 9.1]", "[6.1, 7.4]", "/sweeps/0/values", "2 values for the 3", false),
                new Broken("1, \"grid\": \"g\"", "1, \"grid\": \"h\"", "/sweeps/0/grid", "unknown grid 'h'", false),
                // properties, subjects, units
                new Broken(
                        "\"mutual-capacitance\"", "\"mutual-capacity\"", "/readings/1/property", "'mutual-cap", true),
                new Broken("\"insertion-loss\"", "\"spark-test\"", "/sweeps/0/property", "unknown property", true),
                new Broken(
                        "15.1, \"unit\": \"nF\"", "15.1, \"unit\": \"nf\"", "/readings/1/unit", "unknown unit", false),
                new Broken(
                        "15.1, \"unit\": \"nF\"", "15.1, \"unit\": \"ohm\"", "/readings/1/unit", "capacitance", false),
                new Broken("\"nF\"", "\"nF·km\"", "/readings/1/unit", "nF/km, not as the product", false),
                new Broken("\"count\"", "\"count/km\"", "/readings/4/unit", "no value per length", false),
                new Broken(
                        "\"unit\": \"dB\", \"values\": [74.3",
                        "\"unit\": \"dB/100 m\", \"values\": [74.3",
                        "/sweeps/1/unit",
                        "no value per length",
                        false),
                new Broken(
                        "\"unit\": \"dB\", \"values\": [24",
                        "\"unit\": \"dB/100 m\", \"values\": [24",
                        "/sweeps/3/unit",
                        "no value per length",
                        false),
                new Broken(
                        "\"pair\": 1, \"value\": 15.1",
                        "\"pair\": 0, \"value\": 15.1",
                        "/readings/1/pair",
                        "from 1",
                        true),
                new Broken(
                        "\"pair\": 1, \"value\": 15.1",
                        "\"pair\": 1.5, \"value\": 15.1",
                        "/readings/1/pair",
                        "whole",
                        true),
                new Broken("\"conductor\": \"a\"", "\"conductor\": \"c\"", "/readings/0/conductor", "'a' or 'b'", true),
                new Broken("\"conductor\": \"a\", ", "", "/readings/0", "conductor (pair and conductor)", false),
                new Broken(
                        "\"partner\": 2, \"value\"",
                        "\"partner\": 1, \"value\"",
                        "/readings/3",
                        "its own partner",
                        false),
                new Broken("\"partner\": 2, \"value\"", "\"value\"", "/readings/3", "combination", false),
                new Broken("\"spark-faults\", ", "\"spark-faults\", \"pair\": 1, ", "/readings/4", "a reel", false),
                new Broken("\"end\": \"far\", ", "", "/sweeps/3/values", "needs an end", false),
                new Broken("\"end\": \"far\"", "\"end\": \"west\"", "/sweeps/3/end", "'near' or 'far'", true),
                new Broken("1, \"grid\"", "1, \"end\": \"near\", \"grid\"", "/sweeps/0/values", "has no end", false),
                new Broken(
                        "\"pair\": 1, \"value\": 15.1",
                        "\"pair\": 1, \"sample\": 1, \"value\": 15.1",
                        "/readings/1",
                        "not sampled",
                        false),
                new Broken("\"insertion-loss\"", "\"mutual-capacitance\"", "/sweeps/0/unit", "capacitance", true),
                new Broken(
                        "\"mutual-capacitance\", \"pair\": 1, \"value\": 15.1, \"unit\": \"nF\"",
                        "\"insertion-loss\", \"pair\": 1, \"value\": 15.1, \"unit\": \"dB\"",
                        "/readings/1",
                        "against frequency",
                        false),
                new Broken(
                        "\"value\": 15.1",
                        "\"frequency\": {\"value\": 1, \"unit\": \"MHz\"}, \"value\": 15.1",
                        "/readings/1/frequency",
                        "leave 'frequency' out",
                        false),
                // values
                new Broken("21.05", "-21.05", "/readings/0", "above 0", false),
                new Broken("15.1", "0", "/readings/1", "above 0", false),
                new Broken("\"value\": 0,", "\"value\": -1,", "/readings/4", "0 or more", false),
                new Broken("\"value\": 0,", "\"value\": 0.5,", "/readings/4", "whole number", false),
                new Broken("21.05", "\"21,05\"", "/readings/0/value", "a number, not the text '21,05'", true),
                new Broken("21.05", "true", "/readings/0/value", "a number, not true", true),
                // twice
                new Broken(
                        "{\"property\": \"spark-faults\"",
                        "{\"property\": \"mutual-capacitance\", \"pair\": 1, \"value\": 15.2, \"unit\": \"nF\"}, {\"property\": \"spark-faults\"",
                        "/readings/4",
                        "given already at /readings/1",
                        false));
    }
}
