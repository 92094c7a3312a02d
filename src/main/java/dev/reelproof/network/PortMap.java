package dev.reelproof.network;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What each port of a file is connected to: every port once, every place once, and at a pair's end either both conductors or modes
 * of the pair. Immutable.
 */
public final class PortMap {
    private final Map<Integer, Port> byNumber;
    private final List<ModePort> modePorts;

    private record Place(End end, int pair) {}

    private PortMap(Map<Integer, Port> byNumber, List<ModePort> modePorts) {
        this.byNumber = byNumber;
        this.modePorts = List.copyOf(modePorts);
    }

    /**
     * The map of these ports.
     *
     * @throws PortMapException when a port or a place stands twice, a pair at an end has one conductor only, or conductors and
     *     modes both, or no port carries a differential signal
     */
    public static PortMap of(List<Port> ports) {
        Map<Integer, Port> byNumber = new TreeMap<>();
        Map<String, Integer> byPlace = new HashMap<>();
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
        }
        Map<Place, List<Port>> places = new LinkedHashMap<>();
        for (Port port : byNumber.values()) {
            places.computeIfAbsent(new Place(port.end(), port.pair()), place -> new ArrayList<>())
                    .add(port);
        }
        return new PortMap(
                byNumber, places.values().stream().map(PortMap::modePort).toList());
    }

    private static ModePort modePort(List<Port> here) {
        Port first = here.get(0);
        boolean single = first.mode() == PortMode.SINGLE;
        for (Port other : here) {
            if ((other.mode() == PortMode.SINGLE) != single) {
                throw new PortMapException(
                        PortMapException.WHOLE,
                        "port " + first.number() + " is connected to the " + first.place() + " and port "
                                + other.number() + " to the " + other.place()
                                + "; a pair at an end is connected by its conductors or by its modes");
            }
        }
        if (!single) {
            return ModePort.ofModes(
                    first.end(), first.pair(), number(here, PortMode.DIFFERENTIAL), number(here, PortMode.COMMON));
        }
        Integer a = number(here, Conductor.A);
        Integer b = number(here, Conductor.B);
        if (a == null || b == null) {
            throw new PortMapException(
                    PortMapException.WHOLE,
                    "port " + first.number() + " is connected to the " + first.place()
                            + ", but no port is to the other conductor there; a pair needs both");
        }
        return ModePort.ofConductors(first.end(), first.pair(), a, b);
    }

    private static @Nullable Integer number(List<Port> here, Object modeOrConductor) {
        return here.stream()
                .filter(port -> port.mode() == modeOrConductor || port.conductor() == modeOrConductor)
                .map(Port::number)
                .findFirst()
                .orElse(null);
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

    /**
     * The map of the rows of a file's matrix: this one, or where the file says that its rows are modes, what they are of.
     *
     * @throws PortMapException when the map does not fit the file, or no row carries a differential signal
     */
    public PortMap rowsOf(NetworkData data) {
        requireFits(data.ports());
        PortMap rows = data.order().map(order -> order.rowsOf(this)).orElse(this);
        if (rows.modePorts.stream().noneMatch(ModePort::hasDifferential)) {
            throw new PortMapException(
                    PortMapException.WHOLE,
                    "every port is of a common mode; what is derived needs a port in mode differential, or the conductors of"
                            + " a pair");
        }
        return rows;
    }

    /** The same ports, with what the rows of the matrix are told otherwise. */
    PortMap withModePorts(List<ModePort> rows) {
        return new PortMap(byNumber, rows);
    }

    /** The port of a number that fits the file. */
    Port port(int number) {
        return Objects.requireNonNull(byNumber.get(number), "the map was asked before whether it fits");
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
