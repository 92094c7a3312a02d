package dev.reelproof.demo.plant;

import static dev.reelproof.demo.plant.JsonText.object;
import static dev.reelproof.demo.plant.JsonText.quantity;
import static dev.reelproof.demo.plant.JsonText.rounded;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Writes {@code demo-data/}: products, reels, lots and results of an invented plant, and the verdicts that their author intends.
 *
 * <p>Run it from the root of the project after a compilation: {@code java -cp target/classes
 * dev.reelproof.demo.plant.DemoPlant demo-data}. A test fails when the committed files are not what it writes.
 */
public final class DemoPlant {
    private static final CableType HD6A = new CableType(
            "HD6A-4P",
            "Invented: 4-pair 23 AWG category 6A horizontal cable",
            "category-6a-cable",
            23,
            1.03,
            2.04,
            4e-4,
            List.of(9.1, 11.6, 10.2, 13.4),
            1.004,
            500,
            1.9e-4,
            0.45e-3,
            1.7e-3,
            0.021,
            7.1,
            0.62);
    private static final CableType RB6 = new CableType(
            "RB6-4P",
            "Invented: 4-pair 24 AWG category 6 horizontal cable",
            "category-6-cable",
            24,
            0.945,
            2.04,
            6e-4,
            List.of(11.2, 14.1, 12.4, 16.3),
            1.004,
            250,
            1.9e-4,
            0.45e-3,
            1.7e-3,
            0.017,
            5.9,
            0.55);
    private static final CableType TC24 = new CableType(
            "TC24-12P",
            "Invented: 12-pair 24 AWG terminating cable, tinned",
            "us-terminating-cable-24awg",
            24,
            0.9,
            2.15,
            6e-4,
            List.of(70.0, 95.0, 82.0, 110.0, 76.0, 102.0, 88.0, 118.0, 73.0, 98.0, 85.0, 114.0),
            1.008,
            0,
            5e-4,
            2e-4,
            18,
            0.062,
            9.6,
            1.4);

    private static final Run GOOD_6A = new Run("26-101", HD6A, 2400, 1);
    private static final Run PULLED_6A = new Run("26-102", HD6A, 640, 1, new Flaw.UnevenCapstan(3, 0.2622, 0.0068));
    private static final Run ALIKE_6A = new Run("26-103", HD6A, 320, 1, new Flaw.AlikeLays(2, 4, 2.6, 1.2));
    private static final Run OFF_CENTRE_6A = new Run("26-104", HD6A, 320, 1, new Flaw.OffCentre(4, 3820));
    private static final Run GOOD_6 = new Run("26-201", RB6, 1600, 1);
    private static final Run WARM_6 = new Run("26-202", RB6, 640, 0.981);
    private static final Run THIN_6 = new Run("26-203", RB6, 320, 0.95);
    private static final Run GOOD_TC = new Run("26-301", TC24, 650, 1);
    private static final Run ONE_VARIES_TC = new Run("26-302", TC24, 310, 1, new Flaw.DrawnThin(7, 0.9705));
    private static final Run TWO_VARY_TC =
            new Run("26-303", TC24, 310, 1, new Flaw.DrawnThin(7, 0.9705), new Flaw.DrawnThin(11, 0.971));

    private static final List<String> SWEPT = List.of(
            "insertion-loss", "next", "ps-next", "acr-f", "ps-acr-f", "return-loss", "propagation-delay", "delay-skew");
    private static final List<String> OF_THE_REEL = List.of("spark-faults", "dielectric-withstand");
    private static final List<String> PREMISES_REQUIREMENTS = Stream.of(
                    List.of(
                            "conductor-resistance",
                            "resistance-unbalance",
                            "mutual-capacitance",
                            "capacitance-unbalance-to-ground"),
                    SWEPT,
                    OF_THE_REEL)
            .flatMap(List::stream)
            .toList();

    private DemoPlant() {}

    static List<DemoReel> reels() {
        return List.of(
                new DemoReel("R-26001", GOOD_6A, 305, 21.4).marked(1250, 1555, "m"),
                new DemoReel("R-26002", GOOD_6A, 305, 19.6).marked(1557, 1862, "m"),
                new DemoReel("R-26003", GOOD_6A, 304.8, 21.2)
                        .inCustomaryUnits()
                        .marked(1864, 2169, "m")
                        .showing("A good reel of 1000 ft, sent in feet, °F and values per kft."),
                new DemoReel("R-26004", GOOD_6A, 305, 20.7)
                        .withBulkAsCsv()
                        .showing("A good reel whose sweeps come as two CSV parts beside the JSON document."),
                new DemoReel("R-26005", GOOD_6A, 62, 22.0)
                        .showing(
                                "A short reel of 62 m: its near-end crosstalk is brought to 100 m by the length law, and passes."),
                new DemoReel("R-26006", PULLED_6A, 305, 20.9)
                        .failing("return-loss", 3, null)
                        .showing(
                                "A capstan of 0.26 m circumference pulled pair 3 unevenly: a return loss peak near 378 MHz."),
                new DemoReel("R-26007", PULLED_6A, 305, 21.1)
                        .atNearEndOnly()
                        .failing("return-loss", 3, null)
                        .showing("The second reel of the run whose pair 3 was pulled unevenly."),
                new DemoReel("R-26008", ALIKE_6A, 305, 20.2)
                        .failing("next", 2, 4)
                        .failing("ps-next", null, null)
                        .showing("Pairs 2 and 4 were twisted to nearly the same lay and couple too much."),
                new DemoReel("R-26009", OFF_CENTRE_6A, 305, 20.4)
                        .failing("capacitance-unbalance-to-ground", 4, null)
                        .showing("A conductor of pair 4 lies off the centre of its insulation."),
                new DemoReel("R-26010", GOOD_6A, 305, 20.0)
                        .stoppingAt(400)
                        .notTested(SWEPT)
                        .showing("The sweeps stop at 400 MHz; the limits run to 500 MHz."),
                new DemoReel("R-26011", GOOD_6A, 500, 26.0).showing("A good long reel on a warm day."),
                new DemoReel("R-26101", GOOD_6, 305, 20.8),
                new DemoReel("R-26102", WARM_6, 305, 31.0)
                        .showing(
                                "Measured at 31 °C: raw loss and resistance lie beyond the limits, corrected to 20 °C they pass."),
                new DemoReel("R-26103", THIN_6, 305, 5.0)
                        .failing("conductor-resistance", null, null)
                        .failing("insertion-loss", null, null)
                        .showing(
                                "Thin wire, measured at 5 °C: raw loss and resistance look good, corrected to 20 °C they fail."),
                new DemoReel("R-26104", GOOD_6, 305, 20.1)
                        .withoutPair(3)
                        .notTested(PREMISES_REQUIREMENTS.stream()
                                .filter(requirement -> !OF_THE_REEL.contains(requirement))
                                .toList())
                        .showing("Pair 3 was not connected: nothing is known of it."),
                new DemoReel("R-26105", GOOD_6, 305, 20.3)
                        .calibrationDue("2026-02-28")
                        .notTested(PREMISES_REQUIREMENTS)
                        .showing("The analyser was out of calibration on the day."),
                new DemoReel("R-26106", GOOD_6, 305, 20.5)
                        .sparkFaults(1)
                        .failing("spark-faults", null, null)
                        .showing("One spark fault in the insulation."),
                new DemoReel("R-26107", GOOD_6, 304.8, 22.8)
                        .inCustomaryUnits()
                        .marked(5102, 4102, "ft")
                        .showing("A good reel of 1000 ft in US customary units."),
                new DemoReel("R-26201", GOOD_TC, 300, 20.5),
                new DemoReel("R-26202", ONE_VARIES_TC, 300, 20.4)
                        .showing(
                                "The resistance unbalance of pair 7 is beyond the limit but within the allowance: one pair may vary."),
                new DemoReel("R-26203", TWO_VARY_TC, 300, 20.6)
                        .failing("resistance-unbalance", null, null)
                        .showing("Two pairs vary in resistance unbalance; the allowance is one."));
    }

    private static List<CableType> types() {
        return List.of(HD6A, RB6, TC24);
    }

    /** The files by their path within {@code demo-data/}. */
    public static Map<String, String> files() {
        Map<String, String> files = new TreeMap<>();
        List<Object> registered = new ArrayList<>();
        List<Object> intended = new ArrayList<>();
        int order = 0;
        for (DemoReel reel : reels()) {
            Bay bay = new Bay(reel, order);
            String result = "results/" + reel.id + ".json";
            files.put(result, bay.json());
            List<Object> csv = null;
            if (reel.csv) {
                String transmission = "results/" + reel.id + "-transmission.csv";
                String crosstalk = "results/" + reel.id + "-crosstalk.csv";
                files.put(transmission, bay.csv(List.of("insertion-loss", "return-loss", "propagation-delay")));
                files.put(crosstalk, bay.csv(List.of("next", "acr-f")));
                csv = List.of(transmission, crosstalk);
            }
            registered.add(object(
                    "reel",
                    reel.id,
                    "register",
                    object(
                            "plant",
                            "north",
                            "product",
                            reel.run.type().product(),
                            "length",
                            Bay.length(reel),
                            "lengthMarks",
                            reel.lengthMarks
                                    .map(marks -> object(
                                            "first", rounded(marks.first(), 0),
                                            "last", rounded(marks.last(), 0),
                                            "unit", marks.unit()))
                                    .orElse(null),
                            "order",
                            "SO-26-" + (101 + order / 3),
                            "customer",
                            "Invented Customer " + (char) ('A' + order / 3 % 5)),
                    "result",
                    result,
                    "csv",
                    csv));
            intended.add(object(
                    "reel", reel.id,
                    "verdict", reel.verdict,
                    "why", reel.why,
                    "failing", reel.failing,
                    "notTested", reel.notTested));
            order++;
        }
        files.put("reels.json", JsonText.of(registered, 1));
        files.put("expected.json", JsonText.of(intended, 1));
        files.put("products.json", JsonText.of(products(), 1));
        files.put("lots.ndjson", pedigree().text());
        return files;
    }

    private static List<Object> products() {
        List<Object> products = new ArrayList<>();
        for (CableType type : types()) {
            List<Object> lays = new ArrayList<>();
            for (int pair = 1; pair <= type.pairs(); pair++) {
                lays.add(object(
                        "pair", pair, "lay", quantity(rounded(type.laysMm().get(pair - 1), 1), "mm")));
            }
            products.add(object(
                    "product", type.product(),
                    "register",
                            object(
                                    "description", type.description(),
                                    "limitSet", type.limitSet(),
                                    "pairs", type.pairs(),
                                    "gauge", type.gauge() + " AWG",
                                    "nominalVelocity", rounded(1 / Math.sqrt(type.permittivity()), 2),
                                    "lays", lays)));
        }
        return products;
    }

    private static Pedigree pedigree() {
        Pedigree pedigree = new Pedigree();
        List<Run> runs = reels().stream().map(reel -> reel.run).distinct().toList();
        pedigree.buy();
        pedigree.draw(1, runs.stream().filter(run -> run.type().equals(HD6A)).toList());
        pedigree.draw(2, runs.stream().filter(run -> run.type().equals(RB6)).toList());
        pedigree.draw(3, runs.stream().filter(run -> run.type().equals(TC24)).toList());
        for (int i = 0; i < runs.size(); i++) {
            pedigree.make(runs.get(i), i);
        }
        reels().forEach(pedigree::cut);
        return pedigree;
    }

    /**
     * Writes the files.
     *
     * @param arguments the folder to write into
     * @throws IOException when it cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("name the folder to write into, such as demo-data");
        }
        Path folder = Path.of(arguments[0]);
        for (Map.Entry<String, String> file : files().entrySet()) {
            Path path = folder.resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.writeString(path, file.getValue(), StandardCharsets.UTF_8);
        }
    }
}
