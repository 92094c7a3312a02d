package dev.reelproof.api;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Two plants that ask something of tests: north that an engineer accepts a pass after a failure, south everything else. */
public class AskingPlants implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of(
                "reelproof.plants", "north,south",
                "reelproof.data", "target/test-data-asking",
                "reelproof.tests.retest-needs-engineer", "true",
                "reelproof.tests.at.south.retest-needs-engineer", "false",
                "reelproof.tests.at.south.reel-required", "true",
                "reelproof.tests.at.south.most-attempts", "2",
                "reelproof.tests.at.south.retest-reason-required", "true");
    }
}
