package dev.reelproof.limit;

import dev.reelproof.limit.file.LimitSetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/** Limit set files for tests, and what a test knows of correction laws: {@code limit} itself knows none. */
public final class LimitSamples {
    private static final Path SHIPPED = Path.of("limits");

    private static final Map<String, Set<String>> COEFFICIENTS_OF_LAWS = Map.of(
            "copper-temperature", Set.of("coefficient"),
            "unscreened-loss-temperature", Set.of("to-40", "above-40"),
            "linear-length", Set.of(),
            "square-root-length", Set.of(),
            "near-end-crosstalk-length", Set.of(),
            "far-end-crosstalk-length", Set.of(),
            "insulation-resistance-length", Set.of(),
            "screened-loss-temperature", Set.of("coefficient"),
            "cable-loss-temperature", Set.of("coefficient", "lowest", "highest"));

    /** Refuses a law that the files do not use, and coefficients other than its own. */
    public static final BiConsumer<String, Map<String, Double>> LAW_CHECK = (name, coefficients) -> {
        Set<String> known = COEFFICIENTS_OF_LAWS.get(name);
        if (known == null) {
            throw new IllegalArgumentException("unknown correction law '" + name + "'");
        }
        if (!known.equals(coefficients.keySet())) {
            throw new IllegalArgumentException("wrong coefficients of the correction law " + name);
        }
    };

    private LimitSamples() {}

    /** A set that ships with the program. */
    public static LimitSet shipped(String id) {
        Path file = SHIPPED.resolve(id + ".yaml");
        return new LimitSetReader(LAW_CHECK).read(file.toString(), text(file));
    }

    /** A later revision of a set that ships with the program. */
    public static LimitSet shipped(String id, int revision) {
        return shipped(id + "-revision-" + revision);
    }

    /** Every file that ships with the program, in the order of the names. */
    static List<Path> shippedFiles() {
        try (Stream<Path> files = Files.list(SHIPPED)) {
            return files.filter(file -> file.toString().endsWith(".yaml"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot list " + SHIPPED, e);
        }
    }

    /** The only requirement of a set with that id. */
    public static Requirement requirement(LimitSet set, String id) {
        return set.requirements().stream()
                .filter(requirement -> requirement.id().equals(id))
                .reduce((one, another) -> {
                    throw new IllegalStateException(set.id() + " has more than one requirement " + id);
                })
                .orElseThrow(() -> new IllegalStateException(set.id() + " has no requirement " + id));
    }

    public static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
    }
}
