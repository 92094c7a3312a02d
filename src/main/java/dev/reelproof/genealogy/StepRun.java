package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One run of one step on one machine. A run may have several outputs: lots that name the same run tell the same of it.
 *
 * @param id the run's identifier; by default that of its only lot
 * @param step the process step; null when not said
 * @param machine the machine; null when not said
 * @param line the line that the machine stands in; null when not said
 * @param operator the operator's code; null when not said
 * @param shift the shift; null when not said
 * @param started when it began, in UTC to the microsecond; null when not said
 * @param finished when it ended, likewise
 * @param settings what the machine was set to, by name
 */
public record StepRun(
        RunId id,
        @Nullable String step,
        @Nullable String machine,
        @Nullable String line,
        @Nullable String operator,
        @Nullable String shift,
        @Nullable OffsetDateTime started,
        @Nullable OffsetDateTime finished,
        Map<String, Setting> settings) {
    private static final int LONGEST_SETTING = 50;
    private static final int MOST_SETTINGS = 100;

    public StepRun {
        Lot.checkName("step", step);
        Lot.checkName("machine", machine);
        Lot.checkName("line", line);
        Lot.checkName("operator", operator);
        Lot.checkName("shift", shift);
        started = inUtc("started", started);
        finished = inUtc("finished", finished);
        if (started != null && finished != null && finished.isBefore(started)) {
            throw new IllegalArgumentException("run " + id + " finished at " + finished + ", before it started ("
                    + started + "); a run ends after it begins");
        }
        for (String name : settings.keySet()) {
            if (name.isBlank()
                    || name.length() > LONGEST_SETTING
                    || name.chars().anyMatch(Character::isISOControl)) {
                throw new IllegalArgumentException("a setting's name has 1 to " + LONGEST_SETTING
                        + " characters, none of them a control character");
            }
        }
        if (settings.size() > MOST_SETTINGS) {
            throw new IllegalArgumentException(
                    "a run has at most " + MOST_SETTINGS + " settings, not " + settings.size());
        }
        settings = Collections.unmodifiableMap(new TreeMap<>(settings));
    }

    private static @Nullable OffsetDateTime inUtc(String what, @Nullable OffsetDateTime time) {
        if (time == null) {
            return null;
        }
        Lot.checkYear("a run is " + what, time);
        return time.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
    }

    /** The names of the parts in which another report of this run differs. */
    public List<String> differencesFrom(StepRun other) {
        List<String> differences = new ArrayList<>();
        compare("run", id, other.id, differences);
        compare("step", step, other.step, differences);
        compare("machine", machine, other.machine, differences);
        compare("line", line, other.line, differences);
        compare("operator", operator, other.operator, differences);
        compare("shift", shift, other.shift, differences);
        compare("started", started, other.started, differences);
        compare("finished", finished, other.finished, differences);
        compare("settings", settings, other.settings, differences);
        return differences;
    }

    private static void compare(String part, @Nullable Object mine, @Nullable Object theirs, List<String> differences) {
        if (!Objects.equals(mine, theirs)) {
            differences.add(part);
        }
    }
}
