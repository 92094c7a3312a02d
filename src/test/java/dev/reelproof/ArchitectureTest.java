package dev.reelproof;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The arrows of the house: what each room may use. Data goes down; nothing in the core knows HTTP, SQL, PDF or the clock. */
class ArchitectureTest {
    private static final String ROOT = "dev.reelproof.";

    /** For each room of the core the rooms that it may use, itself aside. */
    private static final Map<String, Set<String>> MAY_USE = Map.of(
            "quantity", Set.of(),
            "measurement", Set.of("quantity"),
            "network", Set.of("quantity", "measurement"),
            "correction", Set.of("quantity", "measurement"),
            "limit", Set.of("quantity", "measurement"),
            "judgement", Set.of("quantity", "measurement", "correction", "limit"),
            "genealogy", Set.of("quantity", "correction"),
            "analysis", Set.of("quantity", "measurement", "judgement", "genealogy"),
            "wording", Set.of("quantity", "measurement", "limit", "judgement"),
            "certificate", Set.of("quantity", "measurement", "limit", "judgement", "wording"));

    private static final Set<String> EDGES = Set.of("access", "digest", "intake", "store", "pdf", "app", "api", "demo");

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.reelproof");

    static Stream<String> rooms() {
        return MAY_USE.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void aRoomOfTheCoreUsesOnlyWhatItMay(String room) {
        String[] others = Stream.concat(MAY_USE.keySet().stream(), EDGES.stream())
                .filter(other -> !other.equals(room) && !MAY_USE.get(room).contains(other))
                .map(other -> ROOT + other + "..")
                .toArray(String[]::new);
        noClasses()
                .that()
                .resideInAPackage(ROOT + room + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(others)
                .check(CLASSES);
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void aRoomOfTheCoreIsPlainJava(String room) {
        // The readers of files in limits/ are the one place of the core that speaks YAML and JSON Schema.
        String[] allowed = Stream.concat(
                        Stream.of("dev.reelproof..", "java.lang..", "java.util..", "java.math..", "java.time.."),
                        switch (room) {
                            case "judgement" -> Stream.of("org.apache.commons.statistics..");
                            case "quantity" -> Stream.of("javax.measure..", "tech.units..", "systems.uom..");
                            case "analysis" -> Stream.of("org.apache.commons.statistics..");
                            case "limit" -> Stream.of(
                                    "com.fasterxml.jackson..",
                                    "com.networknt..",
                                    "org.yaml.snakeyaml..",
                                    "java.io..",
                                    "java.nio..",
                                    "java.security..");
                                // It reads its files as a stream, so that a large one is never held as text.
                            case "network" -> Stream.of("java.io..");
                            default -> Stream.<String>empty();
                        })
                .toArray(String[]::new);
        classes()
                .that()
                .resideInAPackage(ROOT + room + "..")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(allowed)
                .check(CLASSES);
    }

    @Test
    void theCoreReadsNoClock() {
        noClasses()
                .that()
                .resideInAnyPackage(MAY_USE.keySet().stream()
                        .map(room -> ROOT + room + "..")
                        .toArray(String[]::new))
                .should()
                .callMethod(java.time.OffsetDateTime.class, "now")
                .orShould()
                .callMethod(java.time.Instant.class, "now")
                .orShould()
                .callMethod(java.time.LocalDate.class, "now")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .check(CLASSES);
    }

    @Test
    void roomsHaveNoCycles() {
        slices().matching(ROOT + "(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void everyPackageIsInThePicture() {
        Set<String> rooms = CLASSES.stream()
                .map(type -> type.getPackageName().substring(ROOT.length() - 1))
                .filter(name -> !name.isEmpty())
                .map(name -> name.substring(1).split("\\.")[0])
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> known = new TreeSet<>(MAY_USE.keySet());
        known.addAll(EDGES);
        assertEquals(known, rooms, "rooms drawn here and packages that exist");
        assertEquals(
                List.of(),
                rooms.stream()
                        .filter(room -> room.matches("util|common|impl|manager"))
                        .toList());
    }
}
