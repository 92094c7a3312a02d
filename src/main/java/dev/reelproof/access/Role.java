package dev.reelproof.access;

import java.util.Arrays;
import java.util.Optional;

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

    /** The role of that word; empty when there is none. */
    public static Optional<Role> named(String word) {
        return Arrays.stream(values()).filter(role -> role.word.equals(word)).findFirst();
    }
}
