package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * A lot as its plant reported it.
 *
 * @param id the lot's identifier
 * @param plant the plant that made or received it
 * @param kind what it is
 * @param quantity how much was made or received
 * @param made when it was finished or received; held in UTC, to the microsecond
 * @param step the process step; null when not said
 * @param machine the machine; null when not said
 * @param inputs what went into it, in the order of the report; empty for bought material
 * @param run the run of the step that it is an output of, with the same step and machine; null when nothing else is known of it
 * @param samples what was measured on it while it was made, in the order of the report
 */
public record Lot(
        LotId id,
        String plant,
        LotKind kind,
        Amount quantity,
        OffsetDateTime made,
        String step,
        String machine,
        List<LotInput> inputs,
        StepRun run,
        List<Sample> samples) {
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 9999;
    private static final int LONGEST_NAME = 100;
    private static final int MOST_INPUTS = 10_000;
    private static final int MOST_SAMPLES = 10_000;

    public Lot {
        checkYear("a lot is made", made);
        made = made.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
        checkName("step", step);
        checkName("machine", machine);
        inputs = List.copyOf(inputs);
        if (inputs.size() > MOST_INPUTS) {
            throw new IllegalArgumentException("a lot has at most " + MOST_INPUTS + " inputs, not " + inputs.size()
                    + "; report the lots between, such as units, as lots of their own");
        }
        samples = List.copyOf(samples);
        if (samples.size() > MOST_SAMPLES) {
            throw new IllegalArgumentException("a lot has at most " + MOST_SAMPLES + " samples, not " + samples.size());
        }
        if (run != null) {
            if (!Objects.equals(step, run.step()) || !Objects.equals(machine, run.machine())) {
                throw new IllegalArgumentException(
                        "lot " + id + " and its run " + run.id() + " have the same step and machine");
            }
            if (run.started() != null && made.isBefore(run.started())) {
                throw new IllegalArgumentException("lot " + id + " was made at " + made + ", before its run started ("
                        + run.started() + "); a lot is made after its run begins");
            }
        }
    }

    /** A lot whose report tells no more of its making than step and machine. */
    public Lot(
            LotId id,
            String plant,
            LotKind kind,
            Amount quantity,
            OffsetDateTime made,
            String step,
            String machine,
            List<LotInput> inputs) {
        this(id, plant, kind, quantity, made, step, machine, inputs, null, List.of());
    }

    public static void checkYear(String what, OffsetDateTime time) {
        if (time.getYear() < FIRST_YEAR || time.getYear() > LAST_YEAR) {
            throw new IllegalArgumentException(
                    what + " between the years " + FIRST_YEAR + " and " + LAST_YEAR + ", not in " + time.getYear());
        }
    }

    public static void checkName(String what, String name) {
        if (name != null
                && (name.isBlank()
                        || name.length() > LONGEST_NAME
                        || name.chars().anyMatch(Character::isISOControl))) {
            throw new IllegalArgumentException("a lot's " + what + " is left out or has 1 to " + LONGEST_NAME
                    + " characters, none of them a control character");
        }
    }

    /** The names of the parts in which another report of this lot differs; the order of the inputs does not count. */
    public List<String> differencesFrom(Lot other) {
        List<String> differences = new ArrayList<>();
        compare("id", id, other.id, differences);
        compare("plant", plant, other.plant, differences);
        compare("kind", kind, other.kind, differences);
        compare("quantity", quantity, other.quantity, differences);
        compare("made", made, other.made, differences);
        if (run != null && other.run != null) {
            differences.addAll(run.differencesFrom(other.run));
        } else {
            compare("step", step, other.step, differences);
            compare("machine", machine, other.machine, differences);
            compare("run", run, other.run, differences);
        }
        compare("samples", samples, other.samples, differences);
        compare("inputs", countedInputs(), other.countedInputs(), differences);
        return differences;
    }

    private Map<LotInput, Long> countedInputs() {
        return inputs.stream().collect(Collectors.groupingBy(input -> input, Collectors.counting()));
    }

    private static void compare(String part, Object mine, Object theirs, List<String> differences) {
        if (!Objects.equals(mine, theirs)) {
            differences.add(part);
        }
    }
}
