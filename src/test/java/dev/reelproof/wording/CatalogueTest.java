package dev.reelproof.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.analysis.Factor;
import dev.reelproof.certificate.CertificateType;
import dev.reelproof.correction.Laws;
import dev.reelproof.judgement.Message;
import dev.reelproof.judgement.Obstacle;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.advice.CuttingEffect;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.record.ShippingNeed;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The English words are complete, and none of them is kept for nothing. */
class CatalogueTest {
    /** What a column of the certificate holds. */
    private static final int LONGEST_PLAIN = 60;

    /** The kinds of paper, which the package {@code certificate} above knows. */
    private static final List<String> DECLARED =
            Arrays.stream(CertificateType.values()).map(CertificateType::word).toList();

    private static final Path SOURCES = Path.of("src/main/java/dev/reelproof/wording");
    private static final Pattern LITERAL = Pattern.compile("\"([a-z]+(?:[.-][a-z]+)*)\"");

    private static Set<String> keys(String file) throws IOException {
        Properties properties = new Properties();
        try (InputStream in = Obstacle.class.getResourceAsStream(file);
                Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8)) {
            properties.load(reader);
        }
        return new TreeSet<>(properties.stringPropertyNames());
    }

    /** The keys that are put together from a word of the core. */
    private static Set<String> madeOfWords() {
        return Stream.of(
                        Arrays.stream(Property.values())
                                .flatMap(one -> Stream.of(
                                        "property." + one.id() + ".title", "property." + one.id() + ".plain")),
                        Arrays.stream(Statistic.values())
                                .filter(one -> one != Statistic.INDIVIDUAL)
                                .map(one -> "statistic." + one.word()),
                        Arrays.stream(Scope.values())
                                .filter(one -> one != Scope.CORE)
                                .map(one -> "scope." + one.word()),
                        Arrays.stream(Scope.values()).map(one -> "per-unit." + one.word()),
                        Arrays.stream(Outcome.values())
                                .flatMap(one -> Stream.of("outcome." + one.word(), "outcome." + one.word() + ".sign")),
                        Arrays.stream(Look.values())
                                .flatMap(one ->
                                        Stream.of("verdict." + one.word(), "verdict." + one.word() + ".sentence")),
                        Arrays.stream(DecisionRule.Form.values())
                                .map(one -> one.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                                .flatMap(one -> Stream.of("rule." + one, "rule-in-full." + one)),
                        Stream.of("rule-in-full.simple-acceptance-rounded"),
                        Arrays.stream(RoundingRule.values())
                                .map(one -> "rounding."
                                        + one.name().toLowerCase(Locale.ROOT).replace('_', '-')),
                        Arrays.stream(Obstacle.Kind.values()).map(one -> "remedy." + one.id()),
                        Arrays.stream(CuttingEffect.values()).map(one -> "cutting." + one.id()),
                        Arrays.stream(End.values()).map(one -> "end." + one.word()),
                        Arrays.stream(Factor.values())
                                .map(one -> (one.isOfTest() ? "tested." : "factor.") + one.word()),
                        Arrays.stream(PaperWord.values()).map(PaperWord::key),
                        DECLARED.stream().map(one -> "declared." + one),
                        Laws.names().stream()
                                .flatMap(law -> Stream.concat(
                                        Stream.of("law." + law),
                                        Laws.parameters(law).stream().map(part -> "law-part." + part))),
                        Role.words().stream().map(word -> "role." + word),
                        Arrays.stream(ShippingNeed.values()).map(one -> "need." + one.word()),
                        Stream.of("limit.at-most", "limit.at-least", "limit.between"),
                        Stream.of("shortfall.short", "shortfall.over", "shortfall.guard"))
                .flatMap(keys -> keys)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The texts between quotation marks in the sources of the package that could be keys. */
    private static Set<String> literals() throws IOException {
        Set<String> literals = new TreeSet<>();
        try (Stream<Path> files = Files.list(SOURCES)) {
            for (Path file : files.toList()) {
                LITERAL.matcher(Files.readString(file))
                        .results()
                        .map(MatchResult::group)
                        .forEach(literals::add);
            }
        }
        return literals.stream()
                .map(one -> one.substring(1, one.length() - 1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void whateverIsAskedForIsThere() throws IOException {
        Set<String> asked = madeOfWords();
        literals().stream().filter(one -> one.contains(".")).forEach(asked::add);
        asked.removeAll(keys("/dev/reelproof/wording/Catalogue.properties"));
        assertEquals(Set.of(), asked);
    }

    @Test
    void whateverIsThereIsAskedFor() throws IOException {
        Set<String> kept = keys("/dev/reelproof/wording/Catalogue.properties");
        kept.removeAll(madeOfWords());
        kept.removeAll(literals());
        assertEquals(Set.of(), kept);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/dev/reelproof/wording/Catalogue.properties", "/dev/reelproof/judgement/Obstacles.properties"})
    void noFilledMessageShowsABrace(String file) throws IOException {
        Properties messages = new Properties();
        try (InputStream in = CatalogueTest.class.getResourceAsStream(file)) {
            messages.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
        messages.forEach((key, message) -> {
            Map<String, String> parts = Pattern.compile("\\w+")
                    .matcher((String) message)
                    .results()
                    .collect(Collectors.toMap(MatchResult::group, MatchResult::group, (one, same) -> one));
            String filled = Message.fill((String) message, parts);
            assertFalse(filled.contains("{") || filled.contains("}"), key + ": " + filled);
        });
    }

    @Test
    void everyKindOfObstacleHasItsMessageAndNoMessageIsWithoutKind() throws IOException {
        assertEquals(
                Arrays.stream(Obstacle.Kind.values())
                        .map(Obstacle.Kind::id)
                        .collect(Collectors.toCollection(TreeSet::new)),
                keys("/dev/reelproof/judgement/Obstacles.properties"));
    }

    @ParameterizedTest
    @EnumSource(Property.class)
    void aPropertyHasATitleOfItsOwnAndPlainWordsThatFitAColumn(Property property) {
        Wording wording = Wording.english();
        assertFalse(wording.plain(property).isBlank());
        assertTrue(wording.plain(property).length() <= LONGEST_PLAIN, wording.plain(property));
        assertEquals(
                List.of(property),
                Arrays.stream(Property.values())
                        .filter(other -> wording.title(other).equals(wording.title(property)))
                        .toList());
    }

    @Test
    void theLanguageOfTheMachineChangesNothing() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMAN);
            assertEquals("Return loss", Wording.english().title(Property.RETURN_LOSS));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void wordsThatAreNotThereAreRefused() {
        Catalogue words = Catalogue.of(Locale.ENGLISH);
        assertThrows(MissingResourceException.class, () -> words.text("no.such.words"));
        assertThrows(IllegalArgumentException.class, () -> words.text("place.pair", "partner", "1"));
    }
}
