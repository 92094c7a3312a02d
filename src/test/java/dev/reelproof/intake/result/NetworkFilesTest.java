package dev.reelproof.intake.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.intake.Fault;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.Part;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.network.SyntheticCable;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class NetworkFilesTest {
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-03-02T15:00:00Z");
    private static final SyntheticCable CABLE = new SyntheticCable(2, 100, 0.68);
    private static final double[] GRID = {1, 1.5, 2, 2.5, 3};
    private static final String PORTS = SyntheticCable.json(CABLE.ports());
    private static final String FILE = CABLE.touchstone(GRID);
    private static final String MIXED = CABLE.mixedMode(GRID);
    private static final String BALUN_FILE = CABLE.differential("R 100", GRID);
    private static final String BALUNS = SyntheticCable.json(CABLE.differentialPorts());
    private static final String FAR_COMMON =
            SyntheticCable.json(CABLE.differentialPorts().subList(0, 2)).replace("]", ", ")
                    + SyntheticCable.json(CABLE.differentialPorts().subList(2, 4))
                            .replace("[", "")
                            .replace("differential", "common");
    private static final LimitSet SET = limitSet("");

    private static LimitSet limitSet(String more) {
        try (InputStream in = NetworkFilesTest.class.getResourceAsStream("/limits/category-6a-cable.yaml")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return new LimitSetReader((law, parameters) -> {}).read("set.yaml", text + more);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Product product(int pairs) {
        return new Product("P", "invented", "category-6a-cable", pairs, "23 AWG", 0.68, Map.of(), List.of());
    }

    private static String document(String networks, String more) {
        return "{\"product\": \"P\", \"length\": {\"value\": 100, \"unit\": \"m\"}, \"temperature\": {\"value\": 20, \"unit\":"
                + " \"°C\"}, \"finished\": \"2026-03-02T14:09:30Z\", \"equipment\": [{\"id\": \"na\"}], \"networks\": "
                + networks
                + more + "}";
    }

    private static String entry(String file, String ports) {
        return "{\"file\": \"" + file + "\", \"ports\": " + ports + "}";
    }

    private static Part part(String name, byte[] bytes) {
        return new Part(name, "", bytes);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static ReadResult read(String document, Part... files) {
        List<Part> parts = new ArrayList<>(List.of(part("result", bytes(document))));
        parts.addAll(Arrays.asList(files));
        return ResultReader.read(new Upload(parts), RECEIVED);
    }

    private static ReadResult derived(String document, Part... files) {
        return NetworkDerivation.derive(read(document, files), product(2), SET);
    }

    private static Fault only(IntakeException refused) {
        assertEquals(1, refused.faults().size(), () -> refused.faults().toString());
        return refused.faults().get(0);
    }

    private static void assertRefused(String where, String words, String document, Part... files) {
        Fault fault = only(assertThrows(IntakeException.class, () -> derived(document, files)));
        assertTrue(fault.message().contains(words), fault::message);
        assertEquals(where, fault.where(), fault::message);
    }

    /** A ZIP file of these members; a name may stand twice, which the JDK's own writer refuses. */
    private static byte[] zip(String... namesAndTexts) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (int i = 0; i < namesAndTexts.length; i += 2) {
                zip.putNextEntry(new ZipEntry(namesAndTexts[i]));
                zip.write(bytes(namesAndTexts[i + 1]));
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return bytes.toByteArray();
    }

    @Test
    void derivesFromPartsAndFromMembersAlike() {
        String document = document("[" + entry("a.s8p", PORTS) + "]", "");
        List<Sweep> loose =
                derived(document, part("a.s8p", bytes(FILE))).result().sweeps();
        List<Sweep> zipped = derived(
                        document, part("b.zip", zip("folder/", "", "folder/a.s8p", FILE, "__MACOSX/._a.s8p", "icon")))
                .result()
                .sweeps();
        assertEquals(loose.size(), zipped.size());
        for (int i = 0; i < loose.size(); i++) {
            assertEquals(loose.get(i).property(), zipped.get(i).property());
            assertEquals(loose.get(i).value(0), zipped.get(i).value(0));
        }
        assertEquals("a.s8p:3", loose.get(0).origin().of(0));
    }

    @Test
    void differentialPortsAndMixedModeFilesGiveWhatConductorsGive() {
        List<Sweep> conductors = derived(document("[" + entry("a.s8p", PORTS) + "]", ""), part("a.s8p", bytes(FILE)))
                .result()
                .sweeps();
        List<Sweep> mixed = derived(document("[" + entry("m.ts", PORTS) + "]", ""), part("m.ts", bytes(MIXED)))
                .result()
                .sweeps();
        assertEquals(conductors.size(), mixed.size());
        String stated = BALUNS.replace("\"port\"", "\"reference\": {\"value\": 0.1, \"unit\": \"kohm\"}, \"port\"");
        List<Sweep> baluns = derived(
                        document("[" + entry("b.s4p", stated) + "]", ""),
                        part("b.s4p", bytes(CABLE.differential("R 75", GRID))))
                .result()
                .sweeps();
        int compared = 0;
        for (Sweep sweep : conductors) {
            for (List<Sweep> others : List.of(mixed, baluns)) {
                for (Sweep other : others) {
                    if (other.property() == sweep.property() && other.subject().equals(sweep.subject())) {
                        assertEquals(
                                Math.min(120, sweep.value(2)),
                                Math.min(120, other.value(2)),
                                1e-3 * Math.abs(sweep.value(2)),
                                sweep.property().id());
                        compared++;
                    }
                }
            }
        }
        assertEquals(mixed.size() + baluns.size(), compared);
        // single may be said too
        String single = PORTS.replace("\"port\"", "\"mode\": \"single\", \"port\"");
        assertEquals(
                conductors.size(),
                derived(document("[" + entry("a.s8p", single) + "]", ""), part("a.s8p", bytes(FILE)))
                        .result()
                        .sweeps()
                        .size());
    }

    @Test
    void takesCsvFilesFromAZipToo() {
        String csv =
                "property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit\nmutual-capacitance,1,,,,,,4.8,nF\n";
        ReadResult read = read(
                document("[" + entry("a.s8p", PORTS) + "]", ""), part("b.zip", zip("a.s8p", FILE, "values.csv", csv)));
        assertEquals("values.csv:2", read.result().readings().get(0).origin().of(0));
        assertEquals(1, read.networks().size());
    }

    @Test
    void theTermsOfTheLimitSetCount() {
        LimitSet other = limitSet("\nnetwork: { differential: 120 ohm, common: 60 ohm, acr-f-loss: disturbing }\n");
        assertEquals(120, other.networkTerms().differentialOhm());
        assertEquals(60, other.networkTerms().commonOhm());
        assertTrue(other.networkTerms().lossOfDisturbing());
        ReadResult read = read(document("[" + entry("a.s8p", PORTS) + "]", ""), part("a.s8p", bytes(FILE)));
        double usual = returnLoss(NetworkDerivation.derive(read, product(2), SET));
        double mismatched = returnLoss(NetworkDerivation.derive(read, product(2), other));
        assertTrue(usual > mismatched + 20, usual + " dB to 100 ohm, " + mismatched + " dB to 120 ohm");
    }

    private static double returnLoss(ReadResult read) {
        return read.result().sweeps().stream()
                .filter(sweep -> sweep.property() == Property.RETURN_LOSS)
                .findFirst()
                .orElseThrow()
                .value(4);
    }

    @Test
    void derivesWhatIsAskedForAlone() {
        String asked = "[{\"file\": \"a.s8p\", \"derive\": [\"next\", \"fext\"], \"ports\": " + PORTS + "}]";
        Set<Property> got = derived(document(asked, ""), part("a.s8p", bytes(FILE))).result().sweeps().stream()
                .map(Sweep::property)
                .collect(Collectors.toSet());
        assertEquals(Set.of(Property.NEXT, Property.FEXT), got);
        // a property that is not derived may be sent
        String sent =
                ", \"readings\": [{\"property\": \"propagation-delay\", \"pair\": 1, \"frequency\": {\"value\": 1, \"unit\":"
                        + " \"MHz\"}, \"value\": 500, \"unit\": \"ns\"}]";
        derived(document(asked, sent), part("a.s8p", bytes(FILE)));
        assertRefused(
                "/readings/0",
                "propagation-delay is given here and derived from a.s8p too",
                document("[" + entry("a.s8p", PORTS) + "]", sent),
                part("a.s8p", bytes(FILE)));
        String one = "[{\"file\": \"a.s4p\", \"derive\": [\"next\"], \"ports\": "
                + SyntheticCable.json(new SyntheticCable(1, 100, 0.68).ports()) + "}]";
        assertRefused(
                "/networks/0/derive",
                "next cannot be derived from a.s4p",
                document(one, ""),
                part("a.s4p", bytes(new SyntheticCable(1, 100, 0.68).touchstone(GRID))));
    }

    @Test
    void theSameSweepFromTwoFilesMustBeTheSame() {
        String document = document("[" + entry("a.s8p", PORTS) + ", " + entry("b.s8p", PORTS) + "]", "");
        int once = derived(document("[" + entry("a.s8p", PORTS) + "]", ""), part("a.s8p", bytes(FILE)))
                .result()
                .sweeps()
                .size();
        assertEquals(
                once,
                derived(document, part("a.s8p", bytes(FILE)), part("b.s8p", bytes(FILE)))
                        .result()
                        .sweeps()
                        .size());
        String other = new SyntheticCable(2, 100, 0.68).flaw(50).touchstone(GRID);
        assertRefused(
                "b.s8p:3",
                "next of pair 1 and pair 2, near end is derived from this file and from a.s8p:3 too, and the two differ",
                document,
                part("a.s8p", bytes(FILE)),
                part("b.s8p", bytes(other)));
    }

    /** Something wrong with the document or the files, that is told once. */
    record Broken(String where, String words, String networks, List<Part> files) {
        @Override
        public String toString() {
            return where + ": " + words;
        }
    }

    private static Broken balun(String where, String words, String reference) {
        return new Broken(
                where,
                words,
                "["
                        + entry(
                                "b.s4p",
                                BALUNS.replaceFirst("\"port\": 1,", "\"port\": 1, \"reference\": " + reference + ","))
                        + "]",
                List.of(part("b.s4p", bytes(BALUN_FILE))));
    }

    static Stream<Broken> broken() {
        Part good = part("a.s8p", bytes(FILE));
        String entry = "[" + entry("a.s8p", PORTS) + "]";
        return Stream.of(
                new Broken(
                        "/networks/0/ports/1",
                        "port 1 stands twice",
                        entry.replace("\"port\": 2", "\"port\": 1"),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports",
                        "names port 9 too",
                        entry.replace("\"port\": 8", "\"port\": 9"),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/1",
                        "and so is port 1",
                        entry.replaceFirst("\"conductor\": \"b\"", "\"conductor\": \"a\""),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/end",
                        "'near' or 'far'",
                        entry.replaceFirst("\"near\"", "\"here\""),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/pair",
                        "whole number",
                        entry.replaceFirst("\"pair\": 1", "\"pair\": 0"),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/conductor",
                        "'a' or 'b'",
                        entry.replaceFirst("\"conductor\": \"a\"", "\"conductor\": \"tip\""),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/conductor",
                        "a differential port with a conductor",
                        entry.replaceFirst("\"port\": 1,", "\"port\": 1, \"mode\": \"differential\","),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/conductor",
                        "a common port with a conductor",
                        entry.replaceFirst("\"port\": 1,", "\"port\": 1, \"mode\": \"common\","),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/mode",
                        "mode must be 'single', 'differential' or 'common', not 'balanced'",
                        entry.replaceFirst("\"port\": 1,", "\"port\": 1, \"mode\": \"balanced\","),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/conductor",
                        "'conductor' is missing",
                        entry.replaceFirst(", \"conductor\": \"a\"", ""),
                        List.of(good)),
                new Broken(
                        "/networks/0/ports/0/reference",
                        "a single port with a reference",
                        entry.replaceFirst(
                                "\"port\": 1,", "\"port\": 1, \"reference\": {\"value\": 100, \"unit\": \"ohm\"},"),
                        List.of(good)),
                balun("/networks/0/ports/0/reference", "must be positive", "{\"value\": 0, \"unit\": \"ohm\"}"),
                balun("/networks/0/ports/0/reference", "'ohm/km'", "{\"value\": 100, \"unit\": \"ohm/km\"}"),
                balun("/networks/0/ports/0/reference", "nF", "{\"value\": 100, \"unit\": \"nF\"}"),
                new Broken(
                        "/networks/0/ports",
                        "every port is of a common mode",
                        "[" + entry("b.s4p", BALUNS.replace("differential", "common")) + "]",
                        List.of(part("b.s4p", bytes(BALUN_FILE)))),
                new Broken(
                        "/networks/0/derive",
                        "insertion-loss cannot be derived from b.s4p: its ports do not reach both ends",
                        "["
                                + entry("b.s4p", FAR_COMMON)
                                        .replace("\"ports\"", "\"derive\": [\"insertion-loss\"], \"ports\"")
                                + "]",
                        List.of(part("b.s4p", bytes(BALUN_FILE)))),
                new Broken(
                        "/networks/0/derive",
                        "structural-return-loss cannot be derived from b.s4p: it takes a pair in differential mode, and 20"
                                + " frequencies",
                        "["
                                + entry("b.s4p", BALUNS)
                                        .replace("\"ports\"", "\"derive\": [\"structural-return-loss\"], \"ports\"")
                                + "]",
                        List.of(part("b.s4p", bytes(BALUN_FILE)))),
                new Broken(
                        "m.ts:4",
                        "names port 1 in D1,2 and in D1,2",
                        "[" + entry("m.ts", PORTS) + "]",
                        List.of(part("m.ts", bytes(MIXED.replace("D3,4", "D1,2"))))),
                new Broken(
                        "m.ts:4",
                        "has 7 entries for 8 ports",
                        "[" + entry("m.ts", PORTS) + "]",
                        List.of(part("m.ts", bytes(MIXED.replace(" D3,4", ""))))),
                new Broken(
                        "/networks/0/ports",
                        "the file has D1,2, so that ports 1 and 2 are one pair at one end",
                        "[" + entry("m.ts", SyntheticCable.json(CABLE.ports(0, 2, 1, 3, 4, 5, 6, 7))) + "]",
                        List.of(part("m.ts", bytes(MIXED)))),
                new Broken(
                        "/networks/0/ports/2/pair",
                        "beyond the 2 pairs",
                        entry.replace("\"pair\": 2", "\"pair\": 3"),
                        List.of(good)),
                new Broken("/networks/0/ports", "names no port", "[" + entry("a.s8p", "[]") + "]", List.of(good)),
                new Broken(
                        "/networks/0/ports",
                        "does not say where port 5 and 3 more",
                        "[" + entry("a.s8p", SyntheticCable.json(CABLE.ports().subList(0, 4))) + "]",
                        List.of(good)),
                new Broken("/networks/0/file", "no part of the upload", entry, List.of()),
                new Broken(
                        "/networks/1/file",
                        "stands twice",
                        "[" + entry("a.s8p", PORTS) + ", " + entry("a.s8p", PORTS) + "]",
                        List.of(good)),
                new Broken("b.s8p", "no entry of networks names", entry, List.of(good, part("b.s8p", bytes(FILE)))),
                new Broken("a.s8p", "twice", entry, List.of(good, part("c.zip", zip("a.s8p", FILE)))),
                new Broken(
                        "c.zip/b.s8p",
                        "no entry of networks names",
                        entry,
                        List.of(good, part("c.zip", zip("b.s8p", FILE)))),
                new Broken("c.zip/note.txt", "neither", entry, List.of(good, part("c.zip", zip("note.txt", "x")))),
                new Broken("c.zip/d.zip", "neither", entry, List.of(good, part("c.zip", zip("d.zip", "x")))),
                new Broken("c.zip", "leads out", entry, List.of(good, part("c.zip", zip("../x.csv", "x")))),
                new Broken("c.zip", "leads out", entry, List.of(good, part("c.zip", zip("/x.csv", "x")))),
                new Broken("c.zip", "leads out", entry, List.of(good, part("c.zip", zip("a\\x.csv", "x")))),
                new Broken("c.zip", "two members are named 'x.csv'", entry, List.of(good, part("c.zip", twice()))),
                new Broken(
                        "c.zip",
                        "not a whole ZIP file",
                        entry,
                        List.of(good, part("c.zip", Arrays.copyOf(zip("a.s8p", FILE), 1000)))),
                new Broken(
                        "/networks/0/derive",
                        "ps-next cannot be derived",
                        entry.replace("\"ports\"", "\"derive\": [\"ps-next\"], \"ports\""),
                        List.of(good)),
                new Broken(
                        "/networks/0/derive",
                        "names no property",
                        entry.replace("\"ports\"", "\"derive\": [], \"ports\""),
                        List.of(good)),
                new Broken("a.s8p:4", "'x'", entry, List.of(part("a.s8p", bytes("! a\n# MHz S RI R 50\n\n1 x 0\n")))));
    }

    /** Two members of one name: the two halves of a ZIP file of two names that differ in one letter, made the same. */
    private static byte[] twice() {
        byte[] bytes = zip("x.csv", "1", "y.csv", "2");
        String text = new String(bytes, StandardCharsets.ISO_8859_1).replace("y.csv", "x.csv");
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    @ParameterizedTest
    @MethodSource("broken")
    void tellsEachFaultOnce(Broken broken) {
        assertRefused(broken.where, broken.words, document(broken.networks, ""), broken.files.toArray(Part[]::new));
    }

    @Test
    void aZipThatUnpacksToMoreThanIsTakenIsRefusedWhileItIsRead() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] comment = bytes("!" + " ".repeat(99_998) + "\n");
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("a.s8p"));
            for (long written = 0; written <= ZipPart.MOST_EXPANDED_BYTES; written += comment.length) {
                zip.write(comment);
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        assertTrue(bytes.size() < 1_000_000, "a small file");
        assertRefused(
                "bomb.zip",
                "more than 200000000 bytes",
                document("[" + entry("a.s8p", PORTS) + "]", ""),
                part("bomb.zip", bytes.toByteArray()));
    }

    @Test
    void theDocumentMayBeInTheZip() {
        String document = document("[" + entry("a.s8p", PORTS) + "]", "");
        Upload upload = new Upload(List.of(part("all.zip", zip("result.json", document, "a.s8p", FILE))));
        assertEquals(1, ResultReader.read(upload, RECEIVED).networks().size());
        Upload without = new Upload(List.of(part("all.zip", zip("a.s8p", FILE))));
        IntakeException refused = assertThrows(IntakeException.class, () -> ResultReader.read(without, RECEIVED));
        assertTrue(only(refused).message().contains("no ZIP file holds a 'result.json'"), refused::getMessage);
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.s8p", "a.ts"})
    void theFieldOfANetworkFileTellsUploadsApart(String name) {
        Part document = part("result", bytes("{}"));
        Upload one = new Upload(List.of(document, new Part("x", name, "", bytes(FILE))));
        Upload other = new Upload(List.of(document, new Part("x", "b.s8p", "", bytes(FILE))));
        assertNotEquals(one.sha256(), other.sha256());
        Upload csv = new Upload(List.of(document, new Part("x.csv", "bulk", "", bytes(FILE))));
        Upload sameCsv = new Upload(List.of(document, new Part("x.csv", "other", "", bytes(FILE))));
        assertEquals(csv.sha256(), sameCsv.sha256());
    }
}
