package dev.reelproof.store.seal;

import dev.reelproof.seal.TreeHead;

/** The database's log is not the one that a head outside the database speaks of: it was set back, or rewritten. */
public class LogSetBackException extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final String sentence;

    private LogSetBackException(String sentence) {
        super(sentence);
        this.sentence = sentence;
    }

    /** What is so, for the person who must act. */
    public String sentence() {
        return sentence;
    }

    static LogSetBackException older(TreeHead outside, long size, String file) {
        return new LogSetBackException(
                "The log of plant " + outside.plant() + " has " + size + " leaves, but its head of "
                        + outside.at() + " in " + file + " is over " + outside.size()
                        + ": the database is older than that head, or leaves were removed.");
    }

    static LogSetBackException rewritten(TreeHead outside, String file) {
        return new LogSetBackException("The first " + outside.size() + " leaves of the log of plant " + outside.plant()
                + " are not those of its head of " + outside.at() + " in " + file
                + ": the log was rewritten, or the database was set back and went on from there.");
    }
}
