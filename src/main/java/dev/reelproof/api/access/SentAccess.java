package dev.reelproof.api.access;

import dev.reelproof.access.AccountName;
import dev.reelproof.access.Password;
import dev.reelproof.access.Role;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads names, passwords, roles and reasons as they were sent. */
public final class SentAccess {
    /** Longer texts are no passwords; how many bytes one may have is told by {@link Password}. */
    static final int LONGEST_TEXT = 1000;

    static final int LONGEST_REASON = 1000;
    private static final int LONGEST_SHOWN_NAME = 100;

    private SentAccess() {}

    /**
     * Why something is taken away, as its address says it.
     *
     * @param address what is taken away, as the API describes it
     * @throws IntakeException when it is not said
     */
    public static String reason(@Nullable String sent, String address) {
        String why = sent == null ? "" : sent.strip();
        if (!(!why.isEmpty()
                && why.length() <= LONGEST_REASON
                && why.codePoints().noneMatch(Character::isISOControl))) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "reason",
                    "say why in 1 to " + LONGEST_REASON + " characters: DELETE " + address + "?reason=…");
        }
        return why;
    }

    static Optional<AccountName> name(SentObject sent, String key) {
        return sent.text(key, LONGEST_TEXT)
                .flatMap(text -> sent.faults().attempt(sent.pointer(key), () -> AccountName.of(text)));
    }

    static Optional<String> shownName(SentObject sent, String key) {
        return sent.text(key, LONGEST_SHOWN_NAME)
                .flatMap(text -> sent.faults().attempt(sent.pointer(key), () -> AccountName.shown(text)));
    }

    static Optional<Password> password(SentObject sent, String key) {
        return sent.text(key, LONGEST_TEXT)
                .flatMap(text -> sent.faults().attempt(sent.pointer(key), () -> Password.of(text)));
    }

    /** At least one role; nothing and a fault when any is unknown. */
    static Optional<Set<Role>> roles(SentObject sent, String key) {
        if (!sent.has(key)) {
            return Optional.empty();
        }
        int before = sent.faults().count();
        List<String> words = sent.texts(key, LONGEST_SHOWN_NAME);
        EnumSet<Role> roles = EnumSet.noneOf(Role.class);
        for (String word : words) {
            role(sent, key, word).ifPresent(roles::add);
        }
        if (roles.isEmpty() && sent.faults().count() == before) {
            sent.fault(key, "give at least one role; to shut an account out, set 'active' to false");
        }
        return sent.faults().count() == before ? Optional.of(roles) : Optional.empty();
    }

    static Optional<Role> role(SentObject sent, String key, String word) {
        Optional<Role> role = Role.named(word);
        if (role.isEmpty()) {
            sent.fault(key, "unknown role '" + word + "'; there are " + String.join(", ", Role.words()));
        }
        return role;
    }

    static List<String> words(Set<Role> roles) {
        return roles.stream().sorted().map(Role::word).toList();
    }
}
