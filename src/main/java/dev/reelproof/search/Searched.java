package dev.reelproof.search;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a search finds, in the order in which things that match equally well are listed. */
public enum Searched {
    REEL("reel"),
    ORDER("order"),
    CERTIFICATE("certificate"),
    CUSTOMER("customer"),
    PRODUCT("product");

    private final String word;

    Searched(String word) {
        this.word = word;
    }

    /** The kind as requests, answers and rows spell it. */
    public String word() {
        return word;
    }

    /** The words of all kinds, in order. */
    public static List<String> words() {
        return Arrays.stream(values()).map(Searched::word).toList();
    }

    /** The kind of that word; empty when there is none. */
    public static Optional<Searched> named(String word) {
        return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
    }
}
