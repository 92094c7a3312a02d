package dev.reelproof.judgement;

/** How measurement uncertainty enters the decision, in the terms of ILAC-G8:09/2019 clause 4.2. */
public enum DecisionRule {
    /** Binary statement, simple acceptance: the guard band is zero (clause 4.2.1). */
    SIMPLE_ACCEPTANCE("simple acceptance");

    private final String words;

    DecisionRule(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
