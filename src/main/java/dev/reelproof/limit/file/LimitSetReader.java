package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.JsonNode;
import dev.reelproof.digest.Sha256;
import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Reads a limit set file, strictly: YAML, then the published JSON Schema, then the sense of what is written.
 *
 * <p>Every fault names the file, the line and the path. The faults of one stage are all reported; a later stage is reached only when
 * the one before found none.
 */
public final class LimitSetReader {
    private final LimitSetSchema schema = new LimitSetSchema();
    private final RequirementsReader requirementsReader;

    /**
     * A reader.
     *
     * @param lawCheck is given each correction law's name and coefficients, and throws an {@link IllegalArgumentException} that says
     *     what is wrong with them when something is
     */
    public LimitSetReader(BiConsumer<String, Map<String, Double>> lawCheck) {
        this.requirementsReader = new RequirementsReader(new RequirementReader(lawCheck));
    }

    /**
     * The limit set of a file.
     *
     * @param fileName for messages, such as {@code limits/category-6-cable.yaml}
     * @param text the whole file
     * @throws LimitSetException with every fault found
     */
    public LimitSet read(String fileName, String text) {
        FaultList faults = new FaultList(fileName);
        JsonNode root = YamlDocument.parse(text, faults).root();
        if (faults.isEmpty()) {
            schema.check(root, faults);
        }
        faults.throwIfAny();
        LimitSet set = set(new Entry(root, "", faults), text);
        faults.throwIfAny();
        return Objects.requireNonNull(set, "a limit set without fault has all its parts");
    }

    /** The limit set, or none where a fault was noted. */
    private @Nullable LimitSet set(Entry root, String text) {
        Entry reference = root.at("reference");
        LocalDate effective = root.date("effective");
        PairCount pairs = root.pairs("pairs").orElse(null);
        Temperature temperature = reference.temperature("temperature");
        Length length = reference.attempt("length", () -> reference.quantity("length", Length::of));
        GridRule grid = grid(root.at("sweep-grid"));
        List<Requirement> requirements = requirementsReader.read(root, pairs);
        Optional<Allowance> allowance = AllowanceReader.read(root, requirements);
        DecisionRule decisionRule = DecisionRuleReader.read(root).orElse(DecisionRule.SIMPLE_ACCEPTANCE);
        List<LimitSet.LeftOut> leftOut = root.list("left-out").stream()
                .map(entry -> new LimitSet.LeftOut(entry.text("what"), entry.text("why")))
                .toList();
        NetworkTerms terms = networkTerms(root.at("network"));
        if (!root.faults().isEmpty()
                || effective == null
                || pairs == null
                || temperature == null
                || length == null
                || grid == null
                || terms == null) {
            return null;
        }
        return new LimitSet(
                root.text("id"),
                root.whole("revision"),
                effective,
                root.text("title"),
                pairs,
                temperature,
                length,
                root.word(RoundingRule.class, "rounding"),
                grid,
                requirements,
                allowance,
                leftOut,
                terms,
                Sha256.hex(text),
                text,
                decisionRule);
    }

    private static @Nullable GridRule grid(Entry entry) {
        return entry.attempt(() -> new GridRule(
                entry.number("widest-step-decades"), entry.quantity("widest-step", FrequencyGrid::megahertz)));
    }

    private static @Nullable NetworkTerms networkTerms(Entry entry) {
        NetworkTerms usual = NetworkTerms.USUAL;
        return entry.attempt(() -> new NetworkTerms(
                ohm(entry, "differential", usual.differentialOhm()),
                ohm(entry, "common", usual.commonOhm()),
                entry.text("acr-f-loss").equals("disturbing")));
    }

    private static double ohm(Entry entry, String key, double otherwise) {
        return entry.has(key) ? entry.valueInFixedUnit(key) : otherwise;
    }
}
