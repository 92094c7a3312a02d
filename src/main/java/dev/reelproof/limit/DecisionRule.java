package dev.reelproof.limit;

/**
 * How measurement uncertainty enters the decision, in the terms of ILAC-G8:09/2019 clause 4.2 (read in a copy on the web).
 *
 * <p>The margin is the distance to the limit itself; for a pass it must reach the guard band w = multiple · U. A margin of exactly w, 0
 * or −w counts for the better side: the clause leaves that open.
 *
 * @param form which statements there are
 * @param multiple w as a multiple of the expanded uncertainty U; 0 for simple acceptance
 */
public record DecisionRule(Form form, double multiple) {
    /** Binary statement, simple acceptance: the guard band is zero (clause 4.2.1). */
    public static final DecisionRule SIMPLE_ACCEPTANCE = new DecisionRule(Form.SIMPLE_ACCEPTANCE, 0);

    /** The statements of clause 4.2. */
    public enum Form {
        /** Clause 4.2.1: pass from a margin of 0, else fail. */
        SIMPLE_ACCEPTANCE("4.2.1"),
        /** Clause 4.2.2: pass from a margin of w, else fail. */
        GUARD_BAND_TWO("4.2.2"),
        /** Clause 4.2.3: pass from w, conditional pass from 0, conditional fail from −w, else fail. */
        GUARD_BAND_FOUR("4.2.3");

        private final String clause;

        Form(String clause) {
            this.clause = clause;
        }
    }

    /** @throws IllegalArgumentException when the multiple does not fit the form */
    public DecisionRule {
        boolean simple = form == Form.SIMPLE_ACCEPTANCE;
        if (!(simple ? multiple == 0 : multiple > 0 && Double.isFinite(multiple))) {
            throw new IllegalArgumentException(
                    simple
                            ? "simple acceptance has no guard band, so no multiple, not " + multiple
                            : "the multiple of a guard band must be above 0, not " + multiple
                                    + "; without a guard band the rule is simple acceptance");
        }
    }

    /** Whether nothing can be decided without an uncertainty. */
    public boolean needsUncertainty() {
        return form != Form.SIMPLE_ACCEPTANCE;
    }

    /** Whether a margin inside the guard band is a conditional statement. */
    public boolean isConditional() {
        return form == Form.GUARD_BAND_FOUR;
    }

    /** The clause of ILAC-G8:09/2019. */
    public String clause() {
        return form.clause;
    }

    /** The rule for people. */
    public String words() {
        return switch (form) {
            case SIMPLE_ACCEPTANCE -> "simple acceptance";
            case GUARD_BAND_TWO -> "guard band of " + Formulas.number(multiple) + " × U, two outcomes";
            case GUARD_BAND_FOUR -> "guard band of " + Formulas.number(multiple) + " × U, four outcomes";
        };
    }
}
