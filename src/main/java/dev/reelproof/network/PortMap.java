package dev.reelproof.network;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Which conductor each port of a file is connected to: every port once, every place once, both conductors of a pair at an end.
 * Immutable.
 */
public final class PortMap {
    private final Map<Integer, Port> byNumber;
    private final List<ModePort> modePorts;

    /**
     * A pair at one end: where a differential and a common mode enter.
     *
     * @param end the end
     * @param pair the pair, from 1
     * @param a the port of conductor a, from 1
     * @param b the port of conductor b, from 1
     */
    record ModePort(End end, int pair, int a, int b) {

        /** In words: "ports 1, 2 (near end, pair 1, conductors a, b)". */
        String words() {
            return "ports " + a + ", " + b + " (" + end.word() + " end, pair " + pair + ", conductors a, b)";
        }
    }

    private record Place(End end, int pair) {}

    private PortMap(Map<Integer, Port> byNumber, List<ModePort> modePorts) {
        this.byNumber = byNumber;
        this.modePorts = List.copyOf(modePorts);
    }

    /**
     * The map of these ports.
     *
     * @throws PortMapException when a port or a place stands twice, or a pair at an end has one conductor only
     */
    public static PortMap of(List<Port> ports) {
        Map<Integer, Port> byNumber = new TreeMap<>();
        Map<String, Integer> byPlace = new HashMap<>();
        Map<Place, Map<Conductor, Integer>> places = new HashMap<>();
        for (int i = 0; i < ports.size(); i++) {
            Port port = ports.get(i);
            if (byNumber.putIfAbsent(port.number(), port) != null) {
                throw new PortMapException(
                        i, "port " + port.number() + " stands twice; each port is connected to one place");
            }
            Integer taken = byPlace.putIfAbsent(port.place(), port.number());
            if (taken != null) {
                throw new PortMapException(
                        i,
                        "port " + port.number() + " is connected to the " + port.place() + ", and so is port " + taken
                                + "; each place has one port");
            }
            places.computeIfAbsent(new Place(port.end(), port.pair()), place -> new HashMap<>())
                    .put(port.conductor(), port.number());
        }
        List<ModePort> modePorts = new ArrayList<>();
        for (Port port : byNumber.values()) {
            Map<Conductor, Integer> both = places.getOrDefault(new Place(port.end(), port.pair()), Map.of());
            Integer a = both.get(Conductor.A);
            Integer b = both.get(Conductor.B);
            if (a == null || b == null) {
                throw new PortMapException(
                        PortMapException.WHOLE,
                        "port " + port.number() + " is connected to the " + port.place()
                                + ", but no port is to the other conductor there; a pair needs both");
            }
            ModePort modePort = new ModePort(port.end(), port.pair(), a, b);
            if (!modePorts.contains(modePort)) {
                modePorts.add(modePort);
            }
        }
        return new PortMap(byNumber, modePorts);
    }

    /**
     * Requires that the map names each port of a file, and no other.
     *
     * @param ports how many the file has
     * @throws PortMapException when it does not
     */
    public void requireFits(int ports) {
        SortedSet<Integer> missing = new TreeSet<>();
        for (int port = 1; port <= ports; port++) {
            if (!byNumber.containsKey(port)) {
                missing.add(port);
            }
        }
        SortedSet<Integer> beyond = new TreeSet<>(byNumber.keySet());
        beyond.removeIf(port -> port <= ports);
        if (!beyond.isEmpty()) {
            throw new PortMapException(
                    PortMapException.WHOLE,
                    "the file has " + ports + " ports; the map names port " + beyond.first() + " too");
        }
        if (!missing.isEmpty()) {
            throw new PortMapException(
                    PortMapException.WHOLE,
                    "the file has " + ports + " ports; the map does not say where port " + missing.first()
                            + (missing.size() > 1 ? " and " + (missing.size() - 1) + " more are" : " is")
                            + " connected");
        }
    }

    /** The pairs at their ends, in the order of their lowest port. */
    List<ModePort> modePorts() {
        return modePorts;
    }

    /** A pair at an end in words, such as "near end of pair 1". */
    String words(int modePort) {
        ModePort port = modePorts.get(modePort);
        return port.end().word() + " end of pair " + port.pair();
    }

    /** The index of a pair at an end among {@link #modePorts()}; empty when it is not connected. */
    Optional<Integer> indexOf(End end, int pair) {
        for (int i = 0; i < modePorts.size(); i++) {
            if (modePorts.get(i).end() == end && modePorts.get(i).pair() == pair) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }
}
