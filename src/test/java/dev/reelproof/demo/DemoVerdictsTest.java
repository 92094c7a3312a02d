package dev.reelproof.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.correction.Laws;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.reel.ProductFit;
import dev.reelproof.intake.reel.ProductReader;
import dev.reelproof.intake.result.ReadResult;
import dev.reelproof.intake.result.ResultReader;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judge;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.limit.LimitLibrary;
import dev.reelproof.limit.UncertaintyLibrary;
import dev.reelproof.limit.file.LimitFiles;
import dev.reelproof.limit.file.UncertaintyFiles;
import dev.reelproof.measurement.Product;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The demo's reels come to the verdicts that their author intends, for the reasons intended. No HTTP, no database. */
class DemoVerdictsTest {
    private static final Path DEMO = Path.of("demo-data");
    private static final OffsetDateTime RECEIVED = OffsetDateTime.parse("2026-03-10T08:00:00Z");
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Map<String, Product> PRODUCTS = new HashMap<>();
    private static final Map<String, JsonNode> REELS = new TreeMap<>();
    private static final Map<String, Judgement> JUDGED = new TreeMap<>();
    private static final Map<String, ReadResult> READ = new TreeMap<>();

    @BeforeAll
    static void judgeAll() throws IOException {
        for (JsonNode product : JSON.readTree(Files.readAllBytes(DEMO.resolve("products.json")))) {
            String id = product.get("product").asText();
            PRODUCTS.put(id, ProductReader.read(id, JSON.writeValueAsBytes(product.get("register"))));
        }
        UncertaintyLibrary models = UncertaintyFiles.load(Optional.empty());
        LimitLibrary limits = LimitFiles.load(Optional.empty(), Laws::named);
        for (JsonNode reel : JSON.readTree(Files.readAllBytes(DEMO.resolve("reels.json")))) {
            List<Part> parts = new ArrayList<>();
            parts.add(new Part(
                    Part.RESULT,
                    "application/json",
                    Files.readAllBytes(DEMO.resolve(reel.get("result").asText()))));
            for (JsonNode csv : reel.path("csv")) {
                Path file = DEMO.resolve(csv.asText());
                parts.add(new Part(file.getFileName().toString(), "text/csv", Files.readAllBytes(file)));
            }
            ReadResult read = ResultReader.read(new Upload(parts), RECEIVED);
            Product product = PRODUCTS.get(read.result().product());
            assertEquals(0, ProductFit.check(read.result(), product).count());
            String id = reel.get("reel").asText();
            REELS.put(id, reel);
            READ.put(id, read);
            JUDGED.put(
                    id,
                    Judge.judge(
                            read.result(),
                            product,
                            limits.current(product.limitSet(), RECEIVED.toLocalDate())
                                    .orElseThrow(),
                            models.current("test-bay", RECEIVED.toLocalDate()),
                            "test"));
        }
    }

    @TestFactory
    List<DynamicTest> everyReelComesToTheVerdictIntended() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (JsonNode intended : JSON.readTree(Files.readAllBytes(DEMO.resolve("expected.json")))) {
            String reel = intended.get("reel").asText();
            tests.add(DynamicTest.dynamicTest(
                    reel + ": " + intended.get("why").asText(), () -> check(intended, JUDGED.get(reel))));
        }
        assertEquals(REELS.size(), tests.size(), "every reel has its intended verdict");
        return tests;
    }

    private static void check(JsonNode intended, Judgement judgement) {
        assertEquals(intended.get("verdict").asText(), judgement.verdict().word(), () -> judgement.findings().stream()
                .filter(finding -> finding.outcome() != Outcome.PASS)
                .map(DemoVerdictsTest::words)
                .collect(Collectors.joining("\n")));
        Set<String> failing = new TreeSet<>();
        for (JsonNode fail : intended.get("failing")) {
            String requirement = fail.get("requirement").asText();
            failing.add(requirement);
            Finding finding = judgement.findings().stream()
                    .filter(each -> each.requirement().equals(requirement))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError("no requirement " + requirement + " in the set"));
            if (fail.has("pair")) {
                assertEquals(
                        fail.get("pair").asInt(), finding.figure().subject().pair(), requirement);
            }
            if (fail.has("partner")) {
                assertEquals(
                        fail.get("partner").asInt(), finding.figure().subject().partner(), requirement);
            }
        }
        assertEquals(failing, with(judgement, Outcome.FAIL), "failing");
        Set<String> notTested = new TreeSet<>();
        intended.get("notTested").forEach(requirement -> notTested.add(requirement.asText()));
        assertEquals(notTested, with(judgement, Outcome.NOT_TESTED), "not tested");
    }

    private static Set<String> with(Judgement judgement, Outcome outcome) {
        return judgement.findings().stream()
                .filter(finding -> finding.outcome() == outcome)
                .map(Finding::requirement)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String words(Finding finding) {
        return finding.requirement() + " " + finding.outcome().word()
                + (finding.figure() == null
                        ? ""
                        : " " + finding.figure().subject().words() + " "
                                + finding.figure().value() + " against "
                                + finding.figure().limit() + " "
                                + finding.figure().unit())
                + (finding.reason() == null ? "" : " (" + finding.reason() + ")");
    }

    private static Finding finding(String reel, String requirement) {
        return JUDGED.get(reel).findings().stream()
                .filter(each -> each.requirement().equals(requirement))
                .findFirst()
                .orElseThrow();
    }

    /** The most of a property's values per 100 m, as measured, over the limit there: above 1 when the raw values fail. */
    private static double worstRawResistance(String reel) {
        double metres = JSON.convertValue(REELS.get(reel).at("/register/length/value"), Double.class);
        return READ.get(reel).result().readings().stream()
                .filter(reading -> reading.property().id().equals("conductor-resistance"))
                .mapToDouble(reading -> reading.value() * 100 / metres)
                .max()
                .orElseThrow();
    }

    @Test
    void theWarmReelPassesOnlyBecauseItIsCorrected() {
        double limit = finding("R-26102", "conductor-resistance").figure().limit();
        assertTrue(worstRawResistance("R-26102") > limit);
        assertTrue(finding("R-26102", "conductor-resistance").figure().margin() > 0);
        var loss = finding("R-26102", "insertion-loss").figure();
        assertTrue(loss.measured() / 3.05 > loss.limit(), "raw " + loss.measured() / 3.05 + " dB/100 m");
        assertTrue(loss.margin() > 0);
    }

    @Test
    void theColdReelFailsAlthoughItsRawValuesPass() {
        double limit = finding("R-26103", "conductor-resistance").figure().limit();
        assertTrue(worstRawResistance("R-26103") < limit);
        assertTrue(finding("R-26103", "conductor-resistance").figure().margin() < 0);
        var loss = finding("R-26103", "insertion-loss").figure();
        assertTrue(loss.measured() / 3.05 < loss.limit(), "raw " + loss.measured() / 3.05 + " dB/100 m");
        assertTrue(loss.margin() < 0);
    }

    @Test
    void theShortReelNeedsTheLengthLawOfNearEndCrosstalk() {
        var next = finding("R-26005", "next").figure();
        assertTrue(next.value() < next.measured(), next.measured() + " dB measured, " + next.value() + " dB at 100 m");
    }

    /** The demo is of 2026 and judged by first revisions; from 2027 on the second ones judge, and come to the same verdicts. */
    @Test
    void theSecondRevisionsOfThePremisesSetsKeepTheVerdicts() {
        LimitLibrary limits = LimitFiles.load(Optional.empty(), Laws::named);
        JUDGED.forEach((reel, first) -> {
            Product product = PRODUCTS.get(READ.get(reel).result().product());
            if (product.limitSet().startsWith("category-")) {
                Judgement second = Judge.judge(
                        READ.get(reel).result(),
                        product,
                        limits.revision(product.limitSet(), 2).orElseThrow(),
                        Optional.empty(),
                        "test");
                assertEquals(first.verdict(), second.verdict(), reel);
                for (Outcome outcome : List.of(Outcome.FAIL, Outcome.NOT_TESTED)) {
                    assertEquals(with(first, outcome), with(second, outcome), reel);
                }
            }
        });
    }

    @Test
    void theReturnLossOfTheShortReelIsJudgedInBothFamilies() {
        LimitLibrary limits = LimitFiles.load(Optional.empty(), Laws::named);
        ReadResult read = READ.get("R-26005");
        for (String set : List.of("category-6a-cable", "iec-category-6a-cable")) {
            Judgement judgement = Judge.judge(
                    read.result(),
                    PRODUCTS.get(read.result().product()),
                    limits.revision(set, 2).orElseThrow(),
                    Optional.empty(),
                    "test");
            assertTrue(
                    judgement.findings().stream()
                            .anyMatch(finding ->
                                    finding.requirement().equals("return-loss") && finding.outcome() == Outcome.PASS),
                    set);
        }
    }

    @Test
    void thePairThatMayVaryIsNamed() {
        assertEquals(List.of(7), finding("R-26202", "resistance-unbalance").varyingPairs());
    }

    @Test
    void theReelsShowEveryVerdictAndEveryProduct() {
        assertTrue(REELS.size() >= 14);
        assertEquals(
                Set.of("accepted", "rejected", "incomplete"),
                JUDGED.values().stream()
                        .map(judgement -> judgement.verdict().word())
                        .collect(Collectors.toSet()));
        assertEquals(
                PRODUCTS.keySet(),
                READ.values().stream().map(read -> read.result().product()).collect(Collectors.toSet()));
    }
}
