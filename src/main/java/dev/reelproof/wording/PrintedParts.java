package dev.reelproof.wording;

import dev.reelproof.judgement.Obstacle;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The parts of an obstacle as they are printed: a record keeps all digits of its figures, a reader needs few. */
final class PrintedParts {
    private static final Set<String> FIGURES = Set.of(
            "from",
            "to",
            "limitFrom",
            "limitTo",
            "at",
            "within",
            "widest",
            "widestDecades",
            "least",
            "leastToReject",
            "smallest",
            "tested");
    private static final String TEMPERATURE = "temperature";
    private static final int DIGITS = 6;

    private PrintedParts() {}

    static Map<String, String> of(Obstacle obstacle) {
        Map<String, String> printed = new TreeMap<>();
        obstacle.parts().forEach((name, value) -> printed.put(name, printed(name, value)));
        return printed;
    }

    private static String printed(String name, String value) {
        if (name.equals(TEMPERATURE)) {
            return Figures.fixed(Double.parseDouble(value), 1);
        }
        return FIGURES.contains(name) ? Figures.significant(Double.parseDouble(value), DIGITS) : value;
    }
}
