package dev.reelproof.intake.lot;

/**
 * One report among many.
 *
 * @param line the line that it begins on, from 1
 * @param json the report; null when it cannot be read
 * @param fault why it cannot be read; null when it can
 */
public record NumberedReport(int line, byte[] json, String fault) {
    static NumberedReport of(int line, byte[] json) {
        return new NumberedReport(line, json, null);
    }

    static NumberedReport broken(int line, String fault) {
        return new NumberedReport(line, null, fault);
    }
}
