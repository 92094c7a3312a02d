package dev.reelproof.app.access;

import dev.reelproof.access.Action;
import io.quarkus.arc.All;
import jakarta.inject.Singleton;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** What each approval does. */
@Singleton
public class ApprovalEffects {
    private final Map<Action, ApprovalEffect> effects = new EnumMap<>(Action.class);

    ApprovalEffects(@All List<ApprovalEffect> all) {
        for (ApprovalEffect effect : all) {
            if (effects.put(effect.action(), effect) != null) {
                throw new IllegalStateException(
                        "an approval of '" + effect.action().word() + "' would do two things");
            }
        }
    }

    /** What the approval of an action does; empty when it would do nothing. */
    Optional<ApprovalEffect> of(Action action) {
        return Optional.ofNullable(effects.get(action));
    }

    /** The words of the actions that can be asked for, as a refusal lists them. */
    String inWords() {
        return effects.keySet().stream()
                .sorted(Comparator.naturalOrder())
                .map(Action::word)
                .collect(Collectors.joining(", "));
    }
}
