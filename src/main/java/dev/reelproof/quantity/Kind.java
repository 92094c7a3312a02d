package dev.reelproof.quantity;

/** What sort of quantity a unit measures; two units compare only within one kind. */
public enum Kind {
    RESISTANCE("resistance"),
    CAPACITANCE("capacitance"),
    LEVEL("level in decibels"),
    TIME("time"),
    FREQUENCY("frequency"),
    RATIO("ratio"),
    COUNT("count"),
    LENGTH("length"),
    STRESS("stress"),
    FORCE("force"),
    MASS("mass"),
    VOLTAGE("voltage"),
    CONDUCTANCE("conductance");

    private final String words;

    Kind(String words) {
        this.words = words;
    }

    /** The kind in plain words, for messages. */
    public String words() {
        return words;
    }
}
