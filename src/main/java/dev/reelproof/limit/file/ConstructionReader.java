package dev.reelproof.limit.file;

import com.fasterxml.jackson.databind.JsonNode;
import dev.reelproof.limit.Construction;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Reads the file of a construction as strictly as {@link LimitSetReader} reads a limit set: YAML, then the schema, then the sense. */
public final class ConstructionReader {
    private static final String WHAT = "construction";

    private final LimitSetSchema schema = new LimitSetSchema("/schemas/construction.schema.json");
    private final Set<String> knownSets;

    /**
     * A reader.
     *
     * @param knownSets the ids of all limit sets; another one is a fault
     */
    public ConstructionReader(Set<String> knownSets) {
        this.knownSets = Set.copyOf(knownSets);
    }

    /**
     * The construction of a file.
     *
     * @param fileName for messages, such as {@code limits/constructions/us-buried-wire.yaml}
     * @param text the whole file
     * @throws LimitSetException with every fault found
     */
    public Construction read(String fileName, String text) {
        FaultList faults = new FaultList(fileName);
        JsonNode root = YamlDocument.parse(text, WHAT, faults).root();
        if (faults.isEmpty()) {
            schema.check(root, faults);
        }
        faults.throwIfAny();
        List<Construction.Grade> grades = new ArrayList<>();
        JsonNode entries = root.path("limit-sets");
        for (int i = 0; i < entries.size(); i++) {
            String place = "/limit-sets/" + i + "/limit-set";
            String limitSet = entries.get(i).path("limit-set").asText();
            if (!knownSets.contains(limitSet)) {
                faults.add(
                        place,
                        "there is no limit set '" + limitSet + "'; there are "
                                + String.join(", ", knownSets.stream().sorted().toList()));
            }
            if (grades.stream().anyMatch(grade -> grade.limitSet().equals(limitSet))) {
                faults.add(place, "the limit set '" + limitSet + "' stands here twice; give it once");
            }
            grades.add(new Construction.Grade(
                    limitSet, Optional.ofNullable(entries.get(i).get("gauge")).map(JsonNode::asText)));
        }
        faults.throwIfAny();
        return new Construction(root.path("id").asText(), root.path("title").asText(), grades);
    }
}
