package dev.reelproof.intake.lot;

import org.jspecify.annotations.Nullable;

/**
 * One report among many.
 *
 * @param line the line that it begins on, from 1
 * @param json the report; absent when it cannot be read
 * @param fault why it cannot be read; absent when it can
 */
public record NumberedReport(int line, byte @Nullable [] json, @Nullable String fault) {
    static NumberedReport of(int line, byte[] json) {
        return new NumberedReport(line, json, null);
    }

    static NumberedReport broken(int line, String fault) {
        return new NumberedReport(line, null, fault);
    }
}
