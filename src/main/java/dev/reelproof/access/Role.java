package dev.reelproof.access;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What a person or a token is at the plant. */
public enum Role {
    TECHNICIAN("technician"),
    CUSTOMER_SERVICE("customer-service"),
    ENGINEER("engineer"),
    QUALITY_MANAGER("quality-manager"),
    ADMINISTRATOR("administrator");

    private final String word;

    Role(String word) {
        this.word = word;
    }

    /** The role as requests and answers spell it. */
    public String word() {
        return word;
    }

    /** The words of all roles, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Role::word).toList();
    }

    /** The role of that word; empty when there is none. */
    public static Optional<Role> named(String word) {
        return Arrays.stream(values()).filter(role -> role.word.equals(word)).findFirst();
    }

    /** Roles as the database holds them: their words, with commas. */
    public static String joined(Collection<Role> roles) {
        return roles.stream().sorted().map(Role::word).collect(Collectors.joining(","));
    }

    /** Roles from their words with commas. */
    public static Set<Role> read(String words) {
        EnumSet<Role> roles = EnumSet.noneOf(Role.class);
        Arrays.stream(words.split(","))
                .filter(word -> !word.isEmpty())
                .map(word -> named(word).orElseThrow())
                .forEach(roles::add);
        return Collections.unmodifiableSet(roles);
    }
}
