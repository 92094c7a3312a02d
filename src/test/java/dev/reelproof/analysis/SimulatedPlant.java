package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;

/**
 * A plant that makes four-pair cable, from a seed. All is invented.
 *
 * <p>Confounded as plants are: a rod coil becomes the wire of a hundred reels and more; a machine runs through one lot after the other,
 * so that a lot met one machine alone; a compound lot lasts an insulating line some runs; shifts take turns on every machine, and an
 * operator belongs to a shift; a die is changed after some runs of its machine. A reel meets each of these through up to eight
 * conductors.
 */
final class SimulatedPlant {
    private static final int CONDUCTORS = 8;
    private static final int REELS_OF_A_CORE = 10;
    private static final int CORES_OF_AN_INSULATED_LOT = 14;
    private static final int DRAWN_LOTS_OF_A_ROD = 5;
    private static final int INSULATED_LOTS_OF_A_DRAWN = 5;
    private static final int RUNS_OF_A_COMPOUND = 5;
    private static final int RUNS_OF_A_DIE = 4;
    private static final int CORES_OF_A_JACKET_COMPOUND = 7;

    /** What a lot or reel has behind it. */
    private record Made(Set<Exposure> behind) {}

    private final Random random;
    private final Map<String, Integer> counters = new HashMap<>();
    private final Map<String, List<Exposure>> running = new HashMap<>();
    private final List<Set<Exposure>> reels = new ArrayList<>();

    private SimulatedPlant(long seed) {
        this.random = new Random(seed);
    }

    /** What each reel met, from a seed. */
    static List<Set<Exposure>> reels(long seed, int count) {
        SimulatedPlant plant = new SimulatedPlant(seed);
        while (plant.reels.size() < count) {
            plant.makeCore();
        }
        return plant.reels.subList(0, count);
    }

    /** The reels by what they met. */
    static Map<Exposure, BitSet> exposed(List<Set<Exposure>> reels) {
        Map<Exposure, BitSet> exposed = new HashMap<>();
        for (int i = 0; i < reels.size(); i++) {
            for (Exposure exposure : reels.get(i)) {
                exposed.computeIfAbsent(exposure, met -> new BitSet()).set(i);
            }
        }
        return new TreeMap<>(exposed);
    }

    private final List<Made> drawn = new ArrayList<>();
    private final List<List<Made>> insulated = new ArrayList<>();
    private final List<Integer> coresLeft = new ArrayList<>();
    private Made rod;
    private int drawnOfRod;
    private int insulatedOfDrawn;

    /** Eight spools of insulated conductor feed one core after the other; each is replaced when it has run out. */
    private void makeCore() {
        Set<Exposure> core = new LinkedHashSet<>();
        for (int conductor = 0; conductor < CONDUCTORS; conductor++) {
            if (insulated.size() <= conductor) {
                insulated.add(new ArrayList<>());
                coresLeft.add(0);
            }
            if (coresLeft.get(conductor) == 0) {
                insulated.set(conductor, List.of(insulate()));
                coresLeft.set(conductor, CORES_OF_AN_INSULATED_LOT - random.nextInt(7));
            }
            coresLeft.set(conductor, coresLeft.get(conductor) - 1);
            core.addAll(insulated.get(conductor).get(0).behind);
        }
        for (int pair = 0; pair < CONDUCTORS / 2; pair++) {
            core.addAll(run("TW", 6, null, 0).behind);
        }
        core.addAll(run("CAB", 2, null, 0).behind);
        Set<Exposure> jacketed = new LinkedHashSet<>(core);
        jacketed.addAll(run("JKT", 2, "PVC", CORES_OF_A_JACKET_COMPOUND).behind);
        for (int reel = 0; reel < REELS_OF_A_CORE; reel++) {
            reels.add(jacketed);
        }
    }

    private Made insulate() {
        if (drawn.isEmpty() || insulatedOfDrawn == INSULATED_LOTS_OF_A_DRAWN) {
            drawn.clear();
            drawn.add(draw());
            insulatedOfDrawn = 0;
        }
        insulatedOfDrawn++;
        Made made = run("INS", 4, "PE", RUNS_OF_A_COMPOUND);
        made.behind.addAll(drawn.get(0).behind);
        return made;
    }

    private Made draw() {
        if (rod == null || drawnOfRod == DRAWN_LOTS_OF_A_ROD) {
            rod = new Made(new LinkedHashSet<>(Set.of(lot("ROD"))));
            drawnOfRod = 0;
        }
        drawnOfRod++;
        Made made = run("DRAW", 3, null, 0);
        made.behind.addAll(rod.behind);
        return made;
    }

    /** One run of a step on one of its machines: a lot, its machine, die, operator and shift, and the material that runs there. */
    private Made run(String step, int machines, String material, int runsOfMaterial) {
        String machine = step + "-" + (1 + random.nextInt(machines));
        int run = next(machine);
        int shift = run % 3;
        Set<Exposure> behind = new LinkedHashSet<>();
        behind.add(lot(step));
        behind.add(new Exposure(Factor.MACHINE, machine));
        behind.add(new Exposure(Factor.DIE, machine + "-die-" + run / RUNS_OF_A_DIE));
        behind.add(new Exposure(Factor.SHIFT, "shift-" + shift));
        behind.add(new Exposure(Factor.OPERATOR, step + "-operator-" + shift + random.nextInt(3)));
        if (material != null) {
            if (run % runsOfMaterial == 0) {
                running.put(machine, List.of(lot(material)));
            }
            behind.addAll(running.get(machine));
        }
        return new Made(behind);
    }

    private Exposure lot(String prefix) {
        return new Exposure(Factor.LOT, prefix + "-" + next("lot " + prefix));
    }

    private int next(String counter) {
        return counters.merge(counter, 1, Integer::sum) - 1;
    }
}
