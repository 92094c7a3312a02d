package dev.reelproof.app.result;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithParentName;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** What is asked of tests. */
@ConfigMapping(prefix = "reelproof.tests")
public interface TestSettings {

    /** What is asked at every plant. */
    @WithParentName
    Asked asked();

    /** What a plant asks instead, by plant. */
    Map<String, Asked> at();

    /** What is asked; what is left out is as at every plant, and else as it was when the installation began. */
    interface Asked {

        /** Whether a result must name its reel. */
        Optional<Boolean> reelRequired();

        /** How many tests of a reel may come in before a pass is refused; any number when left out. */
        OptionalInt mostAttempts();

        /** Whether every test of a reel from the second on needs a reason. */
        Optional<Boolean> retestReasonRequired();

        /** Whether a pass after a failure counts only once an engineer has accepted it. */
        Optional<Boolean> retestNeedsEngineer();
    }
}
