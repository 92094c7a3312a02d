package dev.reelproof.intake.result;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.SentObject;
import dev.reelproof.intake.Words;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.network.NetworkData;
import dev.reelproof.network.NetworkException;
import dev.reelproof.network.NetworkSweeps;
import dev.reelproof.network.Port;
import dev.reelproof.network.PortMap;
import dev.reelproof.network.PortMapException;
import dev.reelproof.network.PortMode;
import dev.reelproof.network.TouchstoneReader;
import dev.reelproof.quantity.ReadingUnit;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.regex.Pattern;

/** The network-analyser files of an upload: what {@code networks} says of them, and what they hold. */
public final class NetworkFiles {
    private static final int LONGEST_FILE_NAME = 200;
    private static final Pattern TOUCHSTONE_NAME = Pattern.compile("(?i).*\\.(s\\d+p|ts)");

    private final Faults faults;
    private final List<Entry> entries = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private final Map<Integer, SentNetwork> read = new TreeMap<>();
    private final TouchstoneReader touchstone = new TouchstoneReader();

    /** An entry of {@code networks}; its map is empty when that has a fault. */
    private record Entry(
            SentObject sent,
            String file,
            int portsSent,
            List<Port> ports,
            Optional<PortMap> map,
            Set<Property> derive) {}

    private NetworkFiles(Faults faults) {
        this.faults = faults;
    }

    /** What the document says of network files; nothing when it has no {@code networks}. */
    static NetworkFiles of(SentObject root) {
        NetworkFiles files = new NetworkFiles(root.faults());
        for (SentObject sent : root.objects("networks")) {
            sent.allow("file", "ports", "derive").require("file", "ports");
            List<SentObject> portsSent = sent.objects("ports");
            List<Port> ports = files.ports(portsSent);
            Set<Property> derive = files.derive(sent);
            Optional<String> file = sent.text("file", LONGEST_FILE_NAME);
            if (file.isPresent() && files.entries.stream().anyMatch(entry -> entry.file.equals(file.get()))) {
                sent.fault("file", "the file " + Words.quoted(file.get()) + " stands twice in networks; give it once");
            } else if (file.isPresent()) {
                files.entries.add(new Entry(
                        sent, file.get(), portsSent.size(), ports, files.map(sent, portsSent, ports), derive));
            }
        }
        return files;
    }

    /** Whether a file's name is one that Touchstone files have. */
    public static boolean isTouchstoneName(String name) {
        return TOUCHSTONE_NAME.matcher(name).matches();
    }

    private List<Port> ports(List<SentObject> sent) {
        List<Port> ports = new ArrayList<>();
        for (SentObject one : sent) {
            one.allow("port", "end", "pair", "mode", "conductor", "reference").require("port", "end", "pair");
            Optional<Integer> number = one.whole("port", 1, TouchstoneReader.MOST_PORTS);
            Optional<Integer> pair = one.whole("pair", 1, Product.MOST_PAIRS);
            Optional<End> end = one.text("end", SentObject.LONGEST_NAME)
                    .flatMap(text -> faults.attempt(one.pointer("end"), () -> Measurements.end(text)));
            Optional<PortMode> mode = mode(one);
            Optional<Conductor> conductor = one.text("conductor", SentObject.LONGEST_NAME)
                    .flatMap(text -> faults.attempt(one.pointer("conductor"), () -> Measurements.conductor(text)));
            Optional<Double> reference = one.quantity("reference", NetworkFiles::ohm);
            if (mode.isPresent() && mode.get() == PortMode.SINGLE) {
                one.require("conductor");
            }
            boolean whole = mode.isPresent()
                    && conductor.isPresent() == (one.has("conductor") || mode.get() == PortMode.SINGLE)
                    && reference.isPresent() == one.has("reference");
            if (number.isPresent() && pair.isPresent() && end.isPresent() && whole) {
                faults.attempt(
                                one.pointer(mode.get() == PortMode.SINGLE ? "reference" : "conductor"),
                                () -> new Port(
                                        number.get(),
                                        end.get(),
                                        pair.get(),
                                        mode.get(),
                                        conductor.orElse(null),
                                        reference.orElse(null)))
                        .ifPresent(ports::add);
            }
        }
        return ports;
    }

    /** The mode of a port, single when it says none. */
    private Optional<PortMode> mode(SentObject port) {
        if (!port.has("mode")) {
            return Optional.of(PortMode.SINGLE);
        }
        return port.text("mode", SentObject.LONGEST_NAME)
                .flatMap(text -> faults.attempt(port.pointer("mode"), () -> Arrays.stream(PortMode.values())
                        .filter(mode -> mode.word().equals(text))
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException(
                                "mode must be 'single', 'differential' or 'common', not " + Words.quoted(text)))));
    }

    private static double ohm(double value, String unit) {
        double ohm = value * ReadingUnit.parse(unit).numeratorFactorTo("ohm");
        if (!(ohm > 0 && Double.isFinite(ohm))
                || ReadingUnit.parse(unit).referredTo().isPresent()) {
            throw new IllegalArgumentException(
                    "a reference impedance must be positive, such as 100 ohm, not " + value + " " + Words.quoted(unit));
        }
        return ohm;
    }

    private Optional<PortMap> map(SentObject sent, List<SentObject> portsSent, List<Port> ports) {
        if (portsSent.isEmpty() && sent.has("ports")) {
            sent.fault("ports", "names no port; say of each port of the file where it is connected");
        }
        if (ports.isEmpty() || ports.size() != portsSent.size()) {
            return Optional.empty();
        }
        try {
            return Optional.of(PortMap.of(ports));
        } catch (PortMapException e) {
            noteFault(sent, e);
            return Optional.empty();
        }
    }

    private static void noteFault(SentObject sent, PortMapException e) {
        boolean whole = e.index() == PortMapException.WHOLE;
        sent.faults().add(sent.pointer("ports") + (whole ? "" : "/" + e.index()), String.valueOf(e.getMessage()));
    }

    private Set<Property> derive(SentObject sent) {
        Set<Property> derive = EnumSet.noneOf(Property.class);
        List<String> stated = sent.texts("derive", SentObject.LONGEST_NAME);
        for (String name : stated) {
            faults.attempt(sent.pointer("derive"), () -> Measurements.property(name))
                    .ifPresent(property -> {
                        if (NetworkSweeps.DERIVABLE.contains(property)) {
                            derive.add(property);
                        } else {
                            sent.fault(
                                    "derive",
                                    property + " cannot be derived from network data; what can is "
                                            + String.join(
                                                    ", ",
                                                    NetworkSweeps.DERIVABLE.stream()
                                                            .map(Property::id)
                                                            .toList()));
                        }
                    });
        }
        if (sent.has("derive") && stated.isEmpty()) {
            sent.fault("derive", "names no property; leave it out to derive all that the ports give");
        }
        return derive;
    }

    /**
     * Reads the files that {@code networks} names, from parts and from the members of ZIP files.
     *
     * @param parts the files of the upload, the document aside
     * @param others takes every other file, as CSV
     */
    void readAll(List<Part> parts, Consumer<Part> others) {
        for (Part part : parts) {
            if (ZipPart.isZip(part)) {
                ZipPart.each(part, (name, in) -> member(part, name, in, others));
            } else {
                part(part, others);
            }
        }
        for (Entry entry : entries) {
            boolean found = names.contains(entry.file);
            if (!found) {
                entry.sent.fault(
                        "file",
                        "no part of the upload and no member of a ZIP file is named " + Words.quoted(entry.file)
                                + (parts.isEmpty() ? "; the upload has no other files" : "")
                                + ". Send the file beside the document, or in a ZIP file");
            }
        }
    }

    private void part(Part part, Consumer<Part> others) {
        Optional<Entry> byName = named(part.name());
        Optional<Entry> entry = byName.isPresent() ? byName : named(part.field());
        if (entry.isPresent()) {
            try (InputStream in = part.open()) {
                read(entry.get(), in);
            } catch (IOException e) {
                throw new IllegalStateException("bytes in memory cannot fail to be read", e);
            }
        } else if (isTouchstoneName(part.name())) {
            notNamed(part.name());
        } else {
            others.accept(part);
        }
    }

    private void member(Part zip, String name, InputStream in, Consumer<Part> others) throws IOException {
        Optional<Entry> byPath = named(name);
        Optional<Entry> entry = byPath.isPresent() ? byPath : named(name.substring(name.lastIndexOf('/') + 1));
        if (entry.isPresent()) {
            read(entry.get(), in);
        } else if (isTouchstoneName(name)) {
            notNamed(zip.name() + "/" + name);
        } else if (name.toLowerCase(Locale.ROOT).endsWith(".csv")) {
            others.accept(new Part(name, "text/csv", in.readAllBytes()));
        } else if (!name.equals(ZipPart.DOCUMENT)) {
            faults.add(
                    zip.name() + "/" + name,
                    "is neither a file that networks names nor a CSV file; take it out of the ZIP file");
        }
    }

    private void notNamed(String name) {
        faults.add(
                name, "is a Touchstone file that no entry of networks names; say there where its ports are connected");
    }

    private Optional<Entry> named(String name) {
        return entries.stream().filter(entry -> entry.file.equals(name)).findFirst();
    }

    private void read(Entry entry, InputStream in) throws IOException {
        if (names.contains(entry.file)) {
            faults.add(entry.file, "is in the upload twice; send it once");
            return;
        }
        names.add(entry.file);
        try {
            NetworkData data = touchstone.read(entry.file, entry.portsSent, in);
            entry.map.ifPresent(map -> {
                map.rowsOf(data);
                read.put(
                        entries.indexOf(entry),
                        new SentNetwork(entry.sent.pointer(), data, entry.ports, map, entry.derive));
            });
        } catch (NetworkException e) {
            faults.add(e.where(), String.valueOf(e.getMessage()));
        } catch (PortMapException e) {
            noteFault(entry.sent, e);
        }
    }

    /** The files that could be read, in the order of {@code networks}. */
    List<SentNetwork> read() {
        return List.copyOf(read.values());
    }
}
