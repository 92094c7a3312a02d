package dev.reelproof.app.result;

import dev.reelproof.app.Settings;
import dev.reelproof.record.RetestRule;
import dev.reelproof.store.result.InstallationDefaults;
import jakarta.inject.Singleton;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What each plant asks of tests: as configured for the plant, else for all, else as the installation began. The invented demo plant asks
 * for nothing that is not configured.
 */
@Singleton
public class TestRules {
    private final Settings settings;
    private final TestSettings asked;
    private final InstallationDefaults defaults;

    TestRules(Settings settings, TestSettings asked, InstallationDefaults defaults) {
        this.settings = settings;
        this.asked = asked;
        this.defaults = defaults;
        for (String plant : asked.at().keySet()) {
            if (!settings.plants().contains(plant)) {
                throw new IllegalStateException("reelproof.tests.at names plant " + plant
                        + ", which is not one of reelproof.plants: " + String.join(", ", settings.plants()));
            }
        }
        settings.plants().forEach(this::requireUsable);
    }

    /** A number of attempts that cannot be is found at the start, not with the first test. */
    private void requireUsable(String plant) {
        new RetestRule(mostAttempts(plant), false, false);
    }

    /** Whether a result must name its reel. */
    public boolean requiresReel(String plant) {
        return holds(plant, TestSettings.Asked::reelRequired, defaults::requiresReel);
    }

    /** What is asked of a reel that is tested again. */
    public RetestRule retests(String plant) {
        return new RetestRule(
                mostAttempts(plant),
                holds(plant, TestSettings.Asked::retestReasonRequired, defaults::requiresRetestReason),
                holds(plant, TestSettings.Asked::retestNeedsEngineer, () -> false));
    }

    private @Nullable Integer mostAttempts(String plant) {
        return configured(plant, TestRules::mostAttempts).orElse(null);
    }

    private static Optional<Integer> mostAttempts(TestSettings.Asked asked) {
        OptionalInt most = asked.mostAttempts();
        return most.isPresent() ? Optional.of(most.getAsInt()) : Optional.empty();
    }

    private boolean holds(
            String plant, Function<TestSettings.Asked, Optional<Boolean>> setting, BooleanSupplier asItBegan) {
        return configured(plant, setting).orElseGet(() -> !settings.demo() && asItBegan.getAsBoolean());
    }

    private <T> Optional<T> configured(String plant, Function<TestSettings.Asked, Optional<T>> setting) {
        return Optional.ofNullable(asked.at().get(plant)).flatMap(setting).or(() -> setting.apply(asked.asked()));
    }
}
