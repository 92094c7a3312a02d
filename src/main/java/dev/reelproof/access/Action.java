package dev.reelproof.access;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What not everybody may do, and the roles that may. */
public enum Action {
    UPLOAD("upload", Role.TECHNICIAN, Role.ENGINEER, Role.QUALITY_MANAGER),
    REGISTER("register", Role.TECHNICIAN, Role.ENGINEER, Role.QUALITY_MANAGER),
    DISPATCH("dispatch", Role.TECHNICIAN, Role.CUSTOMER_SERVICE, Role.ENGINEER, Role.QUALITY_MANAGER),
    DEFINE_PRODUCTS("define-products", Role.ENGINEER, Role.QUALITY_MANAGER),
    ISSUE("issue", Role.CUSTOMER_SERVICE, Role.QUALITY_MANAGER),
    REISSUE("reissue", Role.CUSTOMER_SERVICE, Role.QUALITY_MANAGER),
    WITHDRAW("withdraw", Role.QUALITY_MANAGER),
    HOLD("hold", Role.ENGINEER, Role.QUALITY_MANAGER),
    RELEASE("release", Role.ENGINEER, Role.QUALITY_MANAGER),
    ACCEPT_RETEST("accept-retest", Role.ENGINEER, Role.QUALITY_MANAGER),
    CHANGE_LIMITS("change-limits", Role.QUALITY_MANAGER),
    MANAGE_USERS("manage-users", Role.ADMINISTRATOR),
    READ_AUDIT("read-audit", Role.QUALITY_MANAGER, Role.ADMINISTRATOR),
    APPROVE("approve", Role.QUALITY_MANAGER, Role.ENGINEER),
    ASK_CONCESSION("ask-concession", Role.ENGINEER),
    DECIDE_CONCESSION("decide-concession", Role.QUALITY_MANAGER);

    private final String word;
    private final Set<Role> roles;

    Action(String word, Role first, Role... others) {
        this.word = word;
        this.roles = EnumSet.of(first, others);
    }

    /** The action as requests and answers spell it. */
    public String word() {
        return word;
    }

    /** The words of all actions, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Action::word).toList();
    }

    /** The action of that word; empty when there is none. */
    public static Optional<Action> named(String word) {
        return Arrays.stream(values())
                .filter(action -> action.word.equals(word))
                .findFirst();
    }

    /** Whether one of these roles may do it. */
    public boolean isAllowedTo(Set<Role> held) {
        return held.stream().anyMatch(roles::contains);
    }

    /** The roles that may, for a refusal: "engineer or quality-manager". */
    String rolesInWords() {
        return String.join(" or ", roles.stream().map(Role::word).toList());
    }
}
