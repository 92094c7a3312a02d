package dev.reelproof.app.access;

import java.time.Duration;

/** What came of an attempt where a secret could be guessed. */
public sealed interface Attempt {

    /**
     * It was right.
     *
     * @param secret of the session opened; empty where none was asked for
     */
    record Right(String secret) implements Attempt {
        @Override
        public String toString() {
            return "Right";
        }
    }

    /** It was wrong; the answer does not tell what was. */
    record Wrong() implements Attempt {}

    /**
     * Too many were wrong: this one was not looked at.
     *
     * @param left how long to wait
     */
    record TooMany(Duration left) implements Attempt {}
}
