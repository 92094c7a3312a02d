package dev.reelproof;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What each package may use, the edges included: api, then app, then core and store. Nothing in the core knows HTTP, SQL or PDF. */
class ArchitectureTest {
    private static final String ROOT = "dev.reelproof.";
    private static final String HOUSE = ROOT + ".";

    /** For each room of the core the rooms that it may use, itself and the one digest aside. */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
            Map.entry("quantity", Set.of()),
            Map.entry("measurement", Set.of("quantity")),
            Map.entry("network", Set.of("quantity", "measurement")),
            Map.entry("seal", Set.of()),
            Map.entry("correction", Set.of("quantity", "measurement")),
            Map.entry("limit", Set.of("quantity", "measurement")),
            Map.entry("judgement", Set.of("quantity", "measurement", "correction", "limit")),
            Map.entry("record", Set.of("quantity", "measurement", "judgement")),
            Map.entry("genealogy", Set.of("quantity", "correction")),
            Map.entry("analysis", Set.of("quantity", "measurement", "judgement", "genealogy")),
            Map.entry("search", Set.of()),
            Map.entry("wording", Set.of("quantity", "measurement", "limit", "judgement", "analysis", "record")),
            Map.entry("certificate", Set.of("quantity", "measurement", "limit", "judgement", "record", "wording")));

    /** For each room of the edges the other edges that it may use. */
    private static final Map<String, Set<String>> EDGE_MAY_USE = Map.of(
            "access", Set.of(),
            "digest", Set.of(),
            "intake", Set.of("digest"),
            "pdf", Set.of("digest"),
            // It keeps originals as they were received: intake.Upload and its parts.
            "store", Set.of("access", "digest", "intake"),
            "app", Set.of("access", "digest", "intake", "pdf", "store"),
            "api", Set.of("access", "digest", "intake", "app"),
            "demo", Set.of("access", "app"));

    /** What api, app and store are cut by. */
    private static final Set<String> SUBJECTS = Set.of(
            "access",
            "certificate",
            "concession",
            "hold",
            "limits",
            "lot",
            "order",
            "reel",
            "result",
            "seal",
            "search",
            "suspect");

    private static final Map<String, Set<String>> OF_ONE_FLOOR_ALONE =
            Map.of("api", Set.of("page", "description"), "app", Set.of(), "store", Set.of("server"));

    /** The edges that may use the whole core. */
    private static final Set<String> CORE_IS_OPEN_TO = Set.of("intake", "pdf", "store", "app", "api", "demo");

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("dev.reelproof");

    static Stream<String> rooms() {
        return MAY_USE.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void aRoomOfTheCoreUsesOnlyWhatItMay(String room) {
        String[] others = Stream.concat(MAY_USE.keySet().stream(), EDGE_MAY_USE.keySet().stream())
                .filter(other -> !other.equals(room)
                        && !other.equals("digest")
                        && !MAY_USE.get(room).contains(other))
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
                        Stream.of(
                                "dev.reelproof..",
                                "java.lang..",
                                "java.util..",
                                "java.math..",
                                "java.time..",
                                "org.jspecify.annotations.."),
                        switch (room) {
                            case "judgement" -> Stream.of("org.apache.commons.statistics..");
                            case "quantity" -> Stream.of("javax.measure..", "tech.units..", "systems.uom..");
                            case "analysis" -> Stream.of("org.apache.commons.statistics..");
                            case "limit" -> Stream.of(
                                    "com.fasterxml.jackson..",
                                    "com.networknt..",
                                    "org.yaml.snakeyaml..",
                                    "java.io..",
                                    "java.net..",
                                    "java.nio..");
                                // It reads its files as a stream, so that a large one is never held as text.
                            case "network" -> Stream.of("java.io..");
                                // The normal forms of Unicode; its formats follow a locale, which no other room may.
                            case "search" -> Stream.of("java.text");
                                // It signs by the JDK.
                            case "seal" -> Stream.of("java.security..", "java.nio.charset..");
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

    static Stream<String> edges() {
        return EDGE_MAY_USE.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("edges")
    void anEdgeUsesOnlyWhatItMay(String edge) {
        String[] allowed = Stream.of(
                        EDGE_MAY_USE.get(edge).stream(),
                        Stream.of(edge),
                        CORE_IS_OPEN_TO.contains(edge) ? MAY_USE.keySet().stream() : Stream.<String>empty())
                .flatMap(rooms -> rooms)
                .map(room -> ROOT + room + "..")
                .toArray(String[]::new);
        classes()
                .that()
                .resideInAPackage(ROOT + edge + "..")
                .should()
                .onlyDependOnClassesThat(resideOutsideOfPackage(HOUSE).or(resideInAnyPackage(allowed)))
                .check(CLASSES);
    }

    @Test
    void accessIsPlainJava() {
        classes()
                .that()
                .resideInAPackage(ROOT + "access..")
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(
                        ROOT + "access..",
                        "java.lang..",
                        "java.util..",
                        "java.time..",
                        "java.text..",
                        "java.security..",
                        "java.nio.charset..",
                        "org.jspecify.annotations..")
                .check(CLASSES);
    }

    @Test
    void useCasesKnowNeitherHttpNorSqlNorJson() {
        classes()
                .that()
                .resideInAPackage(ROOT + "app..")
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        HOUSE,
                        "java.lang..",
                        "java.util..",
                        "java.math..",
                        "java.time..",
                        "java.io..",
                        "java.nio..",
                        "org.jboss.logging..",
                        "org.jspecify.annotations..",
                        // Who makes them, who opens their transactions, and how their settings are read.
                        "jakarta.inject..",
                        "jakarta.enterprise..",
                        "jakarta.transaction..",
                        "jakarta.annotation",
                        "io.quarkus.arc..",
                        "io.quarkus.narayana.jta..",
                        "io.quarkus.runtime..",
                        "io.smallrye.config..",
                        "org.eclipse.microprofile.config..",
                        // bcrypt.
                        "io.quarkus.elytron.security.common.."))
                .check(CLASSES);
    }

    @Test
    void sqlIsInTheStoreAlone() {
        classes()
                .that(dependOn(
                        "org.hibernate..",
                        "io.quarkus.hibernate..",
                        "jakarta.persistence..",
                        "java.sql..",
                        "javax.sql..",
                        "org.postgresql..",
                        "org.flywaydb..",
                        "io.agroal.."))
                .should()
                .resideInAPackage(ROOT + "store..")
                .check(CLASSES);
    }

    @Test
    void aSubjectHasTheSameNameOnEveryFloor() {
        for (String floor : List.of("api", "app", "store")) {
            Set<String> subjects = new TreeSet<>(SUBJECTS);
            subjects.addAll(OF_ONE_FLOOR_ALONE.get(floor));
            String start = ROOT + floor + ".";
            Set<String> others = CLASSES.stream()
                    .map(JavaClass::getPackageName)
                    .filter(name -> name.startsWith(start))
                    .map(name -> name.substring(start.length()).split("\\.")[0])
                    .filter(name -> !subjects.contains(name))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(Set.of(), others, "packages of " + floor + " that are no subject");
        }
    }

    @Test
    void httpIsInTheApiAlone() {
        // The demo is a client of the API and learns from the server where it listens.
        classes()
                .that(dependOn("jakarta.ws..", "org.jboss.resteasy..", "io.vertx..", "io.quarkus.vertx.."))
                .should()
                .resideInAnyPackage(ROOT + "api..", ROOT + "demo..")
                .check(CLASSES);
    }

    @Test
    void jsonShapesAreAtTheEdgesAlone() {
        // The store has them for its jsonb columns, the pdf for what it attaches, the demo as a client of the API,
        // limit.file for its
        // schemas.
        classes()
                .that(dependOn("com.fasterxml..", "com.networknt.."))
                .should()
                .resideInAnyPackage(
                        ROOT + "api..",
                        ROOT + "intake..",
                        ROOT + "store..",
                        ROOT + "pdf..",
                        ROOT + "demo..",
                        ROOT + "limit.file..")
                .check(CLASSES);
    }

    @Test
    void timeIsReadFromTheInjectedClockAlone() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName(ROOT + "app.Clocks")
                .should()
                .callCodeUnitWhere(new DescribedPredicate<JavaCall<?>>("reads a clock that nobody injected") {
                    @Override
                    public boolean test(JavaCall<?> call) {
                        return readsItsOwnClock(call.getTarget());
                    }
                })
                .check(CLASSES);
    }

    private static boolean readsItsOwnClock(AccessTarget.CodeUnitCallTarget called) {
        String owner = called.getOwner().getName();
        List<String> parameters =
                called.getRawParameterTypes().stream().map(JavaClass::getName).toList();
        return switch (owner) {
            case "java.lang.System" -> called.getName().equals("currentTimeMillis");
            case "java.time.Clock" -> called.getName().matches("system.*|tick.+");
            case "java.util.Date" -> called.getName().equals("<init>") && parameters.isEmpty();
            case "java.util.Calendar" -> called.getName().equals("getInstance");
            default -> owner.startsWith("java.time.")
                    && called.getName().equals("now")
                    && !parameters.contains("java.time.Clock");
        };
    }

    /** Whether a class depends on one of these packages. */
    private static DescribedPredicate<JavaClass> dependOn(String... packages) {
        DescribedPredicate<JavaClass> inside = resideInAnyPackage(packages);
        return new DescribedPredicate<>("depend on " + String.join(", ", packages)) {
            @Override
            public boolean test(JavaClass type) {
                return type.getDirectDependenciesFromSelf().stream()
                        .anyMatch(dependency -> inside.test(dependency.getTargetClass()));
            }
        };
    }

    @Test
    void roomsHaveNoCycles() {
        slices().matching(ROOT + "(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    /** A package without the annotation would not be checked for null, and nobody would see that. */
    @Test
    void everyPackageIsCheckedForNull() {
        Set<String> unmarked = CLASSES.stream()
                .map(JavaClass::getPackage)
                .filter(each -> !each.getClasses().isEmpty() && !each.isAnnotatedWith(NullMarked.class))
                .map(JavaPackage::getName)
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(Set.of(), unmarked);
    }

    @Test
    void everyPackageIsInThePicture() {
        Set<String> rooms = CLASSES.stream()
                .map(type -> type.getPackageName().substring(ROOT.length() - 1))
                .filter(name -> !name.isEmpty())
                .map(name -> name.substring(1).split("\\.")[0])
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> known = new TreeSet<>(MAY_USE.keySet());
        known.addAll(EDGE_MAY_USE.keySet());
        assertEquals(known, rooms, "rooms drawn here and packages that exist");
        assertEquals(
                List.of(),
                rooms.stream()
                        .filter(room -> room.matches("util|common|impl|manager"))
                        .toList());
    }
}
