package dev.reelproof.demo.plant;

import dev.reelproof.measurement.LengthMarks;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A reel of the demo, how it was tested, and what its author intends it to show.
 *
 * <p>A small builder rather than a record of fifteen parts, since most reels differ from the usual in one thing only.
 */
final class DemoReel {
    final String id;
    final Run run;
    final double lengthM;
    final double celsius;
    String why = "An ordinary good reel.";
    String verdict = "accepted";
    final List<Map<String, Object>> failing = new ArrayList<>();
    final List<String> notTested = new ArrayList<>();
    boolean customary;
    boolean csv;
    boolean measuredAtBothEnds = true;
    double stopsAtMegahertz;
    int missingPair;
    String calibrationDue = "2026-12-31";
    int sparkFaults;
    Optional<LengthMarks> lengthMarks = Optional.empty();

    DemoReel(String id, Run run, double lengthM, double celsius) {
        this.id = id;
        this.run = run;
        this.lengthM = lengthM;
        this.celsius = celsius;
        this.stopsAtMegahertz = run.type().topMegahertz();
    }

    DemoReel showing(String why) {
        this.why = why;
        return this;
    }

    /** Rejected by a requirement, at that pair and partner, if any. */
    DemoReel failing(String requirement, @Nullable Integer pair, @Nullable Integer partner) {
        verdict = "rejected";
        failing.add(JsonText.object("requirement", requirement, "pair", pair, "partner", partner));
        return this;
    }

    DemoReel notTested(List<String> requirements) {
        verdict = "incomplete";
        notTested.addAll(requirements);
        return this;
    }

    DemoReel inCustomaryUnits() {
        customary = true;
        return this;
    }

    DemoReel withBulkAsCsv() {
        csv = true;
        measuredAtBothEnds = false;
        return this;
    }

    DemoReel atNearEndOnly() {
        measuredAtBothEnds = false;
        return this;
    }

    DemoReel stoppingAt(double megahertz) {
        stopsAtMegahertz = megahertz;
        return this;
    }

    DemoReel withoutPair(int pair) {
        missingPair = pair;
        return this;
    }

    DemoReel calibrationDue(String date) {
        calibrationDue = date;
        return this;
    }

    /** The first and last mark on its jacket; a run is marked in one unit, whatever a reel is sold in. */
    DemoReel marked(int first, int last, String unit) {
        lengthMarks = Optional.of(new LengthMarks(first, last, unit));
        return this;
    }

    DemoReel sparkFaults(int faults) {
        sparkFaults = faults;
        return this;
    }
}
