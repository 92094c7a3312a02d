package dev.reelproof.api.result;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import java.util.UUID;
import java.util.function.DoubleUnaryOperator;

/** Writes result documents of a four-pair cable of category 6A, invented, smooth, well within the limits. */
public final class SampleResult {
    private static final int PAIRS = 4;
    private static final double TOP_MHZ = 500;

    private final List<String> readings = new ArrayList<>();
    private final List<String> sweeps = new ArrayList<>();
    private final double[] grid = grid();
    /** Makes the bytes of each sample its own: the same bytes for another reel bring a warning. */
    private final String station = "bay-" + UUID.randomUUID();

    private String product = "HD6A-4P";
    private double metres = 100;
    private double celsius = 20;
    private double resistance = 7;
    private double crosstalkWorseBy = 0;

    /** Steps of 1/50 decade or 2 MHz, whichever is wider. */
    private static double[] grid() {
        List<Double> grid = new ArrayList<>();
        double f = 1;
        while (f < TOP_MHZ) {
            grid.add(f);
            f = Math.max(f * Math.pow(10, 0.02), f + 2);
        }
        grid.add(TOP_MHZ);
        return grid.stream().mapToDouble(Double::doubleValue).toArray();
    }

    public SampleResult product(String newProduct) {
        this.product = newProduct;
        return this;
    }

    public SampleResult metres(double newMetres) {
        this.metres = newMetres;
        return this;
    }

    public SampleResult celsius(double newCelsius) {
        this.celsius = newCelsius;
        return this;
    }

    /** Ohm in 100 m of each conductor. */
    public SampleResult resistance(double newResistance) {
        this.resistance = newResistance;
        return this;
    }

    /** dB by which every combination couples more. */
    public SampleResult crosstalkWorseBy(double decibels) {
        this.crosstalkWorseBy = decibels;
        return this;
    }

    private void readings() {
        for (int pair = 1; pair <= PAIRS; pair++) {
            readings.add(
                    reading("conductor-resistance", "\"pair\": " + pair + ", \"conductor\": \"a\"", resistance, "ohm"));
            readings.add(reading(
                    "conductor-resistance", "\"pair\": " + pair + ", \"conductor\": \"b\"", resistance * 1.01, "ohm"));
            readings.add(reading("mutual-capacitance", "\"pair\": " + pair, 4.8, "nF"));
            readings.add(reading("capacitance-unbalance-to-ground", "\"pair\": " + pair, 80, "pF"));
        }
        readings.add("{\"property\": \"spark-faults\", \"value\": 0, \"unit\": \"count\"}");
        readings.add("{\"property\": \"dielectric-withstand\", \"value\": 0, \"unit\": \"count\"}");
    }

    private void sweeps() {
        for (int pair = 1; pair <= PAIRS; pair++) {
            double own = pair;
            sweeps.add(sweep("insertion-loss", "\"pair\": " + pair, "dB", f -> 1.7 * Math.sqrt(f) + 0.0085 * f));
            sweeps.add(sweep("return-loss", "\"pair\": " + pair + ", \"end\": \"near\"", "dB", f -> 33 - own / 10));
            sweeps.add(sweep("propagation-delay", "\"pair\": " + pair, "ns", f -> 480 + own + 30 / Math.sqrt(f)));
            for (int partner = 1; partner <= PAIRS; partner++) {
                String combination = "\"pair\": " + pair + ", \"partner\": " + partner + ", \"end\": \"near\"";
                double level = 60 + 0.1 * pair + 0.1 * partner - crosstalkWorseBy;
                if (partner > pair) {
                    sweeps.add(sweep("next", combination, "dB", f -> level - 15 * Math.log10(f / 100)));
                }
                if (partner != pair) {
                    sweeps.add(sweep("acr-f", combination, "dB", f -> level - 15 - 20 * Math.log10(f / 100)));
                }
            }
        }
    }

    private static String reading(String property, String subject, double per100m, String unit) {
        return "{\"property\": \"" + property + "\", " + subject + ", \"value\": " + per100m + ", \"unit\": \"" + unit
                + "/100 m\"}";
    }

    private String sweep(String property, String subject, String unit, DoubleUnaryOperator of) {
        StringJoiner values = new StringJoiner(", ", "[", "]");
        for (double f : grid) {
            values.add(String.format(Locale.ROOT, "%.3f", of.applyAsDouble(f)));
        }
        return "{\"property\": \"" + property + "\", " + subject + ", \"grid\": \"g\", \"unit\": \"" + unit
                + "\", \"values\": " + values + "}";
    }

    /** The document. */
    public String json() {
        readings.clear();
        sweeps.clear();
        readings();
        sweeps();
        StringJoiner frequencies = new StringJoiner(", ", "[", "]");
        for (double f : grid) {
            frequencies.add(Double.toString(f));
        }
        return head() + ", \"grids\": {\"g\": {\"unit\": \"MHz\", \"values\": " + frequencies + "}}, \"readings\": ["
                + String.join(",\n", readings) + "], \"sweeps\": [" + String.join(",\n", sweeps) + "]}";
    }

    /** The document with readings alone and network files for the rest: the value of its key {@code networks}. */
    String jsonWithNetworks(String networks) {
        readings.clear();
        readings();
        return head() + ", \"readings\": [" + String.join(",\n", readings) + "], \"networks\": " + networks + "}";
    }

    /** The document without anything measured; CSV files bring it. */
    public String jsonWithoutBulk() {
        return head() + "}";
    }

    private String head() {
        return "{\"product\": \"" + product + "\", \"length\": {\"value\": " + metres
                + ", \"unit\": \"m\"}, \"temperature\": {\"value\": " + celsius
                + ", \"unit\": \"°C\"}, \"station\": \"" + station + "\", \"technician\": \"M. Årsen\","
                + " \"started\": \"2026-03-02T14:05:00Z\", \"finished\": \"2026-03-02T14:09:30Z\","
                + " \"equipment\": [{\"id\": \"na-07\", \"calibrationDue\": \"2026-12-31\"}]";
    }
}
