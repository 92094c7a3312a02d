package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Formulas;
import dev.reelproof.limit.Interpolation;
import dev.reelproof.limit.Segment;
import java.util.ArrayList;
import java.util.List;

/** Reads a limit that is printed as a table of frequencies and figures. */
final class TableReader {
    private TableReader() {}

    /** The requirement as written; of a table without interpolation, one requirement for each of its points. */
    static List<Entry> oneForEachPointWithoutInterpolation(Entry requirement) {
        Entry table = requirement.at("table");
        if (!(requirement.has("table") && interpolation(table) == Interpolation.NONE)) {
            return List.of(requirement);
        }
        if (!isSound(requirement)) {
            return List.of();
        }
        List<Entry> requirements = new ArrayList<>();
        for (Entry point : table.list("points")) {
            ObjectNode one = requirement.node().deepCopy();
            one.remove("table");
            one.put("id", RequirementReader.id(requirement) + "-at-" + Formulas.number(point.megahertz("at")) + "-mhz");
            one.set("at", point.node().path("at"));
            one.set("value", point.node().path("value"));
            requirements.add(new Entry(one, requirement.pointer(), requirement.faults()));
        }
        return requirements;
    }

    private static Interpolation interpolation(Entry table) {
        return table.word(Interpolation.class, "interpolation");
    }

    /** Whether a requirement's table stands alone and its frequencies rise; what is wrong with it is noted. */
    static boolean isSound(Entry requirement) {
        int faultsBefore = requirement.faults().size();
        for (String other : List.of("value", "segments", "at")) {
            requirement.refuse(other, "the limit is given as a table already; leave out '" + other + "'");
        }
        if (requirement.text("limit").equals(LimitReader.BETWEEN)) {
            requirement.fault(
                    "limit", "a table gives one figure a frequency; write a two-sided one as two requirements");
        }
        Entry table = requirement.at("table");
        List<Entry> points = table.list("points");
        checkFrequenciesRise(points);
        if (points.size() < 2 && interpolation(table) != Interpolation.NONE) {
            table.fault("points", "nothing lies between fewer than two points; give two or more");
        }
        return requirement.faults().size() == faultsBefore;
    }

    private static void checkFrequenciesRise(List<Entry> points) {
        double before = 0;
        for (int i = 0; i < points.size(); i++) {
            Entry point = points.get(i);
            double megahertz = point.megahertz("at");
            if (!(megahertz > before)) {
                String least = i == 0
                        ? "0"
                        : "that of the point before, " + points.get(i - 1).text("at");
                point.fault("at", "the frequency " + point.text("at") + " must be above " + least);
            }
            before = megahertz;
        }
    }

    /** The lines between the points of a sound table. */
    static Bound.Curve curve(Entry table) {
        boolean logarithmic = interpolation(table) == Interpolation.LOG_FREQUENCY;
        List<Entry> points = table.list("points");
        List<Segment> lines = new ArrayList<>();
        for (int i = 1; i < points.size(); i++) {
            Entry before = points.get(i - 1);
            Entry point = points.get(i);
            lines.add(new Segment.Interpolated(
                    before.megahertz("at"),
                    point.megahertz("at"),
                    before.number("value"),
                    point.number("value"),
                    logarithmic));
        }
        return new Bound.Curve(lines);
    }
}
