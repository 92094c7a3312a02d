package dev.reelproof.demo.plant;

import static dev.reelproof.demo.plant.JsonText.object;
import static dev.reelproof.demo.plant.JsonText.quantity;
import static dev.reelproof.demo.plant.JsonText.rounded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * The test bay of the demo plant: measures a reel of a run and writes the result as a bay would.
 *
 * <p>Single values follow from the pair's geometry ({@link TwistedPair}, {@link Wire}); crosstalk and reflections from
 * {@link Scatter} and {@link Echoes}. An instrument adds noise of 0.02 dB and 0.05 %.
 */
final class Bay {
    private static final double METRES_PER_FOOT = 0.3048;
    private static final double METRES_PER_KFT = 304.8;
    private static final double METRES_PER_KM = 1000;
    private static final double NOISE_DECIBEL = 0.02;
    private static final double NOISE = 0.0005;
    private static final double NANO = 1e9;
    private static final String[] CONDUCTORS = {"a", "b"};
    private static final double LOGARITHMIC_UP_TO_MHZ = 34;
    private static final double STEPS_PER_DECADE = 60;
    private static final double STEP_MHZ = 2;
    private static final double VOICE_GRID_KHZ = 150;
    private static final double CARRIER_GRID_KHZ = 772;

    /** A sweep as measured. */
    private record Swept(
            String property, int pair, @Nullable Integer partner, @Nullable String end, String unit, double[] values) {}

    private final DemoReel reel;
    private final Run run;
    private final CableType type;
    private final int order;
    private final Random random;
    private final double[] grid;
    private final List<Object> readings = new ArrayList<>();
    private final List<Swept> sweeps = new ArrayList<>();

    /**
     * Tests a reel.
     *
     * @param order its place among the reels tested, from 0; sets the time
     */
    Bay(DemoReel reel, int order) {
        this.reel = reel;
        this.run = reel.run;
        this.type = run.type();
        this.order = order;
        this.random = new Random(("reel " + reel.id).hashCode());
        this.grid = type.isTelephone()
                ? new double[] {VOICE_GRID_KHZ, CARRIER_GRID_KHZ}
                : premisesGrid(reel.stopsAtMegahertz);
        direct();
        if (type.isTelephone()) {
            telephone();
        } else {
            premises();
        }
        mechanical();
    }

    /** 60 points a decade to 34 MHz, then every 2 MHz. */
    private static double[] premisesGrid(double top) {
        List<Double> values = new ArrayList<>();
        for (int k = 0; ; k++) {
            double f = rounded(StrictMath.pow(10, k / STEPS_PER_DECADE), 3).doubleValue();
            if (f >= LOGARITHMIC_UP_TO_MHZ) {
                break;
            }
            values.add(f);
        }
        for (double f = LOGARITHMIC_UP_TO_MHZ; f <= top; f += STEP_MHZ) {
            values.add(f);
        }
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private boolean skips(int pair) {
        return pair == reel.missingPair;
    }

    private double noisy(double value) {
        return value * (1 + NOISE * random.nextGaussian());
    }

    /** Adds a reading that grows with length, given per metre: of the whole reel, or per kft in customary units. */
    private void reading(
            String property,
            int pair,
            @Nullable Integer partner,
            @Nullable String conductor,
            double perMetre,
            String unit,
            int decimals) {
        double value = noisy(perMetre) * (reel.customary ? METRES_PER_KFT : reel.lengthM);
        readings.add(object(
                "property", property,
                "pair", pair,
                "partner", partner,
                "conductor", conductor,
                "value", rounded(value, decimals),
                "unit", reel.customary ? unit + "/kft" : unit));
    }

    private void direct() {
        for (int pair = 1; pair <= type.pairs(); pair++) {
            double usual = type.isTelephone() ? 330 + 110 * random.nextDouble() : 250 + 900 * random.nextDouble();
            if (skips(pair)) {
                continue;
            }
            for (String conductor : CONDUCTORS) {
                double ohm = run.wire(pair, conductor).ohmPerMetre(reel.celsius)
                        * run.pair(pair).takeUp();
                reading("conductor-resistance", pair, null, conductor, ohm, "ohm", 3);
            }
            double spread = type.isTelephone() ? 1 + 0.006 * random.nextGaussian() : 1;
            reading("mutual-capacitance", pair, null, null, run.pair(pair).faradPerMetre() * spread * NANO, "nF", 3);
            reading(
                    "capacitance-unbalance-to-ground",
                    pair,
                    null,
                    null,
                    run.groundUnbalance(pair, usual) / METRES_PER_KM,
                    "pF",
                    1);
        }
        readings.add(object("property", "dielectric-withstand", "value", 0, "unit", "count"));
        readings.add(object("property", "spark-faults", "value", reel.sparkFaults, "unit", "count"));
    }

    private void premises() {
        for (int pair = 1; pair <= type.pairs(); pair++) {
            TwistedPair line = run.pair(pair);
            double[] values = new double[grid.length];
            double[] delay = new double[grid.length];
            for (int i = 0; i < grid.length; i++) {
                values[i] = 20 * StrictMath.log10(Math.E) * line.neperPerMetre(grid[i], reel.celsius) * reel.lengthM
                        + NOISE_DECIBEL * random.nextGaussian();
                delay[i] = noisyDelay(line.nanosecondPerMetre(grid[i], reel.celsius));
            }
            sweep("insertion-loss", pair, null, null, "dB", values);
            sweep("propagation-delay", pair, null, null, "ns", delay);
            double usualPeriod = 0.19 + 0.02 * pair;
            Echoes echoes = new Echoes(
                    random, line, reel.lengthM, type.scatter(), run.swing(pair), run.periodM(pair, usualPeriod));
            for (String end : ends()) {
                double[] returned = new double[grid.length];
                for (int i = 0; i < grid.length; i++) {
                    returned[i] = echoes.returnLossDecibel(grid[i], reel.celsius, end.equals("far"));
                }
                sweep("return-loss", pair, null, end, "dB", returned);
            }
        }
        for (int pair = 1; pair <= type.pairs(); pair++) {
            for (int partner = pair + 1; partner <= type.pairs(); partner++) {
                crosstalk(pair, partner);
            }
        }
    }

    private double noisyDelay(double nanosecondPerMetre) {
        return (nanosecondPerMetre + NOISE / 10 * random.nextGaussian()) * reel.lengthM;
    }

    private List<String> ends() {
        return reel.measuredAtBothEnds ? List.of("near", "far") : List.of("near");
    }

    private void crosstalk(int pair, int partner) {
        TwistedPair one = run.pair(pair);
        TwistedPair other = run.pair(partner);
        double usual = 0.8 + 0.2 * random.nextDouble();
        Scatter near = new Scatter(random, reel.lengthM);
        Scatter far = new Scatter(random, reel.lengthM);
        for (String end : ends()) {
            double[] values = new double[grid.length];
            for (int i = 0; i < grid.length; i++) {
                double f = grid[i];
                values[i] = near.sum(
                                f,
                                one.neperPerMetre(f, reel.celsius) + other.neperPerMetre(f, reel.celsius),
                                one.radianPerMetre(f, reel.celsius) + other.radianPerMetre(f, reel.celsius),
                                type.nearCoupling() * usual * run.nearAlikeness(pair, partner),
                                end.equals("far"))
                        .decibel();
            }
            sweep("next", pair, partner, end, "dB", values);
        }
        equalLevel(far, pair, partner, usual * run.farAlikeness(pair, partner));
        equalLevel(far, partner, pair, usual * run.farAlikeness(pair, partner));
    }

    private void equalLevel(Scatter far, int pair, int partner, double more) {
        TwistedPair disturbed = run.pair(pair);
        TwistedPair disturbing = run.pair(partner);
        double[] values = new double[grid.length];
        for (int i = 0; i < grid.length; i++) {
            double f = grid[i];
            values[i] = far.sum(
                            f,
                            disturbing.neperPerMetre(f, reel.celsius) - disturbed.neperPerMetre(f, reel.celsius),
                            disturbing.radianPerMetre(f, reel.celsius) - disturbed.radianPerMetre(f, reel.celsius),
                            type.farCoupling() * more,
                            false)
                    .decibel();
        }
        sweep("acr-f", pair, partner, "near", "dB", values);
    }

    /**
     * Telephone values follow the same laws in the mean: pair-to-pair unbalance is a random sum, √L; far-end coupling at 150 kHz
     * one normal amplitude a combination, √L; near-end coupling at 772 kHz a complex normal amplitude, independent of the length of a long cable.
     */
    private void telephone() {
        double kilometres = reel.lengthM / METRES_PER_KM;
        for (int pair = 1; pair <= type.pairs(); pair++) {
            for (int partner = pair + 1; partner <= type.pairs(); partner++) {
                double unbalance = Math.abs(random.nextGaussian()) * type.scatter() * Math.sqrt(kilometres);
                readings.add(object(
                        "property",
                        "capacitance-unbalance-pair-to-pair",
                        "pair",
                        pair,
                        "partner",
                        partner,
                        "value",
                        rounded(unbalance, 2),
                        "unit",
                        "pF"));
                double far = type.farCoupling() * Math.sqrt(kilometres) * random.nextGaussian();
                double rising = CARRIER_GRID_KHZ / VOICE_GRID_KHZ;
                sweep("fext", pair, partner, "near", "dB", new double[] {
                    -20 * StrictMath.log10(Math.abs(far)), -20 * StrictMath.log10(Math.abs(far) * rising)
                });
                double near = type.nearCoupling()
                        * Math.sqrt(-StrictMath.log(1 - random.nextDouble()))
                        * run.nearAlikeness(pair, partner);
                sweep("next", pair, partner, "near", "dB", new double[] {
                    -20 * StrictMath.log10(near) + 15 * StrictMath.log10(rising), -20 * StrictMath.log10(near)
                });
            }
        }
        for (int pair = 1; pair <= type.pairs(); pair++) {
            for (String conductor : CONDUCTORS) {
                double megohm = (9000 + 4000 * random.nextDouble()) / kilometres;
                readings.add(object(
                        "property",
                        "insulation-resistance",
                        "pair",
                        pair,
                        "conductor",
                        conductor,
                        "value",
                        rounded(megohm, 0),
                        "unit",
                        "megohm"));
            }
        }
    }

    private void mechanical() {
        sample("jacket-thickness", type.jacketMm() * 1.03, "mm", 3);
        sample("overall-diameter", type.overallMm(), "mm", 2);
        sample("jacket-tensile-strength", 17.5, "MPa", 1);
        sample("jacket-elongation", 285, "%", 0);
        sample("conductor-elongation", 21, "%", 1);
        sample("insulation-tensile-strength", 21, "MPa", 1);
        sample("insulation-elongation", 410, "%", 0);
        sample("insulation-compression", 2450, "N", 0);
        sample("strip-force", 8.5, "N", 1);
    }

    private void sample(String property, double about, String unit, int decimals) {
        double value = about * (1 + 0.01 * random.nextGaussian());
        readings.add(object("property", property, "value", rounded(value, decimals), "unit", unit));
    }

    private void sweep(
            String property, int pair, @Nullable Integer partner, @Nullable String end, String unit, double[] values) {
        if (!skips(pair) && !(partner != null && skips(partner))) {
            sweeps.add(new Swept(property, pair, partner, end, unit, values));
        }
    }

    private static int decimals(Swept swept) {
        return swept.unit().equals("ns") ? 1 : 2;
    }

    /** The JSON document; without the sweeps when they go as CSV. */
    String json() {
        List<Object> rows = new ArrayList<>();
        for (Swept swept : sweeps) {
            rows.add(object(
                    "property", swept.property(),
                    "pair", swept.pair(),
                    "partner", swept.partner(),
                    "end", swept.end(),
                    "grid", "g",
                    "unit", swept.unit(),
                    "values", rounded(swept.values(), decimals(swept))));
        }
        String day = String.format(Locale.ROOT, "2026-03-%02d", 2 + order / 8);
        int minute = 7 * 60 + 5 + order % 8 * 55;
        Map<String, Object> document = new LinkedHashMap<>(object(
                "product",
                type.product(),
                "length",
                length(reel),
                "temperature",
                reel.customary
                        ? quantity(rounded(reel.celsius * 9 / 5 + 32, 1), "°F")
                        : quantity(rounded(reel.celsius, 1), "°C"),
                "station",
                type.isTelephone() ? "bay-3" : "bay-" + (1 + order % 2),
                "technician",
                "Invented Technician " + (1 + order % 3),
                "started",
                day + time(minute),
                "finished",
                day + time(minute + (type.isTelephone() ? 21 : 6)),
                "equipment",
                List.of(
                        object("id", "analyser-invented-1", "calibrationDue", reel.calibrationDue),
                        object("id", "bridge-invented-4", "calibrationDue", "2026-11-30"))));
        if (!reel.csv) {
            document.put(
                    "grids",
                    object("g", object("unit", type.isTelephone() ? "kHz" : "MHz", "values", rounded(grid, 3))));
        }
        document.put("readings", readings);
        if (!reel.csv) {
            document.put("sweeps", rows);
        }
        return JsonText.of(document, 2);
    }

    /** The length as the bay states it. */
    static Map<String, Object> length(DemoReel reel) {
        return reel.customary
                ? quantity(rounded(reel.lengthM / METRES_PER_FOOT, 1), "ft")
                : quantity(rounded(reel.lengthM, 1), "m");
    }

    private static String time(int minute) {
        return String.format(Locale.ROOT, "T%02d:%02d:00Z", minute / 60, minute % 60);
    }

    /** The sweeps of the given properties as CSV. */
    String csv(List<String> properties) {
        StringBuilder text =
                new StringBuilder("property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit\n");
        for (Swept swept : sweeps) {
            if (properties.contains(swept.property())) {
                for (int i = 0; i < grid.length; i++) {
                    text.append(swept.property())
                            .append(',')
                            .append(swept.pair())
                            .append(',')
                            .append(swept.partner() == null ? "" : swept.partner())
                            .append(",,")
                            .append(swept.end() == null ? "" : swept.end())
                            .append(',')
                            .append(rounded(grid[i], 3).toPlainString())
                            .append(",MHz,")
                            .append(rounded(swept.values()[i], decimals(swept)).toPlainString())
                            .append(',')
                            .append(swept.unit())
                            .append('\n');
                }
            }
        }
        return text.toString();
    }
}
