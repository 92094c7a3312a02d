package dev.reelproof.demo.plant;

import static dev.reelproof.demo.plant.JsonText.object;
import static dev.reelproof.demo.plant.JsonText.quantity;
import static dev.reelproof.demo.plant.JsonText.rounded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Source: constancy of copper volume, density 8.89 g/cm³ (from memory). The lots that the demo's reels descend from.
 *
 * <p>Equations: metres of child = metres of parent / take-up; kilograms of copper = metres × π d²/4 × density. Symbols: take-up of the twist and
 * of the core as in {@link TwistedPair}; each step takes a little more than it makes, its start-up scrap, 0.3 %. Range: the runs of the demo. Edge cases: a
 * lot that would give out more than it has is an error of the plan and stops the generator. Known error: none, the plan defines the plant.
 */
final class Pedigree {
    private static final double SCRAP = 1.003;
    private static final double SPARE = 1.01;
    private static final double ROD_COIL_KG = 2268;
    private static final double BREAKDOWN_KG = 1100;
    private static final double ANNEALED_KG = 240;
    private static final double INSULATION_KG_PER_M_PER_MM2 = 0.93e-3;
    private static final double COLOUR_SHARE = 0.012;
    private static final double FEET_PER_METRE = 1 / 0.3048;
    private static final List<String> COLOURS = List.of("blue", "orange", "green", "brown", "slate");
    private static final List<String> GROUPS = List.of("white", "red", "black");
    private static final int PAIRS_PER_GROUP = 5;

    private final Map<String, Map<String, Object>> lots = new LinkedHashMap<>();
    private final Map<String, Double> left = new LinkedHashMap<>();
    private int minutes = 6 * 60;

    /** An input: so much of a lot. */
    private record Input(String lot, double amount, String unit) {}

    private void add(
            String id,
            String kind,
            double amount,
            String unit,
            String step,
            @Nullable String machine,
            Input... inputs) {
        List<Object> taken = new ArrayList<>();
        for (Input input : inputs) {
            int decimals = input.unit().equals("kg") ? 3 : 1;
            double amountTaken = rounded(input.amount(), decimals).doubleValue();
            double remaining = left(input.lot()) - amountTaken;
            if (!(remaining >= 0)) {
                throw new IllegalStateException("lot " + id + " would take " + amountTaken + " " + input.unit() + " of "
                        + input.lot() + ", " + -remaining + " more than is left of it");
            }
            left.put(input.lot(), remaining);
            taken.add(
                    object("lot", input.lot(), "quantity", quantity(rounded(input.amount(), decimals), input.unit())));
        }
        minutes += 17;
        String made = String.format(
                Locale.ROOT, "2026-02-%02dT%02d:%02d:00Z", 2 + minutes / (24 * 60), minutes / 60 % 24, minutes % 60);
        lots.put(
                id,
                object(
                        "id", id,
                        "plant", "north",
                        "kind", kind,
                        "quantity", quantity(rounded(amount, 1), unit),
                        "made", made,
                        "step", step,
                        "machine", machine,
                        "inputs", taken));
        left.put(id, rounded(amount, 1).doubleValue());
    }

    private double left(String lot) {
        return Objects.requireNonNull(left.get(lot), () -> "lot " + lot + " is used before it is made");
    }

    /** What the plant buys: compounds and colours. */
    void buy() {
        for (String compound : List.of("PE-2601", "PE-2602")) {
            add(compound, "insulation-compound", 1000, "kg", "receiving", null);
        }
        for (List<String> colours : List.of(COLOURS, GROUPS)) {
            for (String colour : colours) {
                add("CC-" + colour + "-26", "colour-concentrate", 25, "kg", "receiving", null);
            }
        }
        add("JC-PVC-2601", "jacket-compound", 1000, "kg", "receiving", null);
        add("JC-PVC-2602", "jacket-compound", 1000, "kg", "receiving", null);
    }

    /** Copper of one gauge for some runs: a rod coil, broken down, and one annealed lot a wire size. */
    void draw(int coil, List<Run> runs) {
        String rod = "RC-26-" + coil;
        String breakdown = "BW-26-" + coil;
        add(rod, "rod", ROD_COIL_KG, "kg", "receiving", null);
        add(
                breakdown,
                "breakdown-wire",
                BREAKDOWN_KG,
                "kg",
                "breakdown",
                "RBD-1",
                new Input(rod, BREAKDOWN_KG * SCRAP, "kg"));
        for (Run run : runs) {
            String annealed = annealed(run);
            if (!lots.containsKey(annealed)) {
                double metres = Math.floor(ANNEALED_KG / run.wire().kilogramsPerMetre());
                add(
                        annealed,
                        "annealed-conductor",
                        metres,
                        "m",
                        "drawing and annealing",
                        "DRW-" + (1 + coil % 2),
                        new Input(breakdown, metres * run.wire().kilogramsPerMetre() * SCRAP, "kg"));
            }
        }
    }

    /** One annealed lot a wire size: runs of one size share it. */
    private static String annealed(Run run) {
        return "AC-" + run.type().gauge() + "-" + Math.round(run.wire().diameterMm() * 1e4);
    }

    /** Everything from the insulated conductors to the jacketed cable of a run. */
    void make(Run run, int order) {
        CableType type = run.type();
        double jacketed = run.lengthM();
        double core = Math.ceil(jacketed * SPARE);
        String cable = "JK-" + run.number();
        List<Input> pairs = new ArrayList<>();
        String compound = "PE-260" + (1 + order % 2);
        for (int pair = 1; pair <= type.pairs(); pair++) {
            TwistedPair line = run.pair(pair);
            double pairMetres = Math.ceil(core * line.core() * SPARE);
            double wireMetres = Math.ceil(pairMetres * line.twist() * SPARE);
            String twisted = "TP-" + run.number() + "-" + pair;
            double insulation = INSULATION_KG_PER_M_PER_MM2
                    * (Math.PI * run.insulatedMm() * run.insulatedMm() / 4
                            - run.wire().areaMm2());
            List<Input> wires = new ArrayList<>();
            for (String conductor : List.of("a", "b")) {
                String colour = conductor.equals("a")
                        ? GROUPS.get((pair - 1) / PAIRS_PER_GROUP)
                        : COLOURS.get((pair - 1) % PAIRS_PER_GROUP);
                String insulated = "IC-" + run.number() + "-" + pair + conductor;
                add(
                        insulated,
                        "insulated-conductor",
                        wireMetres,
                        "m",
                        "insulating",
                        "INS-" + (1 + (order + pair) % 3),
                        new Input(annealed(run), wireMetres * SCRAP, "m"),
                        new Input(compound, wireMetres * insulation * SCRAP, "kg"),
                        new Input("CC-" + colour + "-26", wireMetres * insulation * COLOUR_SHARE, "kg"));
                wires.add(new Input(insulated, pairMetres * line.twist() * SCRAP, "m"));
            }
            add(
                    twisted,
                    "twisted-pair",
                    pairMetres,
                    "m",
                    "twinning",
                    "TWN-" + (1 + (pair - 1) % 4),
                    wires.toArray(new Input[0]));
            pairs.add(new Input(twisted, core * line.core() * SCRAP, "m"));
        }
        add(
                "CO-" + run.number(),
                "core",
                core,
                "m",
                "stranding",
                "STR-" + (1 + order % 2),
                pairs.toArray(new Input[0]));
        add(
                cable,
                "jacketed-cable",
                jacketed,
                "m",
                "jacketing",
                "JKT-1",
                new Input("CO-" + run.number(), jacketed * SCRAP, "m"),
                new Input("JC-PVC-260" + (1 + order % 2), jacketed * type.jacketKgPerMetre() * SCRAP, "kg"));
    }

    /** A reel cut from its run. */
    void cut(DemoReel reel) {
        boolean feet = reel.customary;
        add(
                reel.id,
                "reel",
                feet ? reel.lengthM * FEET_PER_METRE : reel.lengthM,
                feet ? "ft" : "m",
                "rewinding",
                "RWD-1",
                new Input("JK-" + reel.run.number(), reel.lengthM, "m"));
    }

    /** One lot a line. */
    String text() {
        StringBuilder text = new StringBuilder();
        for (Map<String, Object> lot : lots.values()) {
            text.append(JsonText.of(lot, 0));
        }
        return text.toString();
    }
}
