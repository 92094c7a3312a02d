package dev.reelproof.pdf;

import dev.reelproof.certificate.CollectiveContent.Least;
import dev.reelproof.certificate.CollectiveContent.Line;
import dev.reelproof.certificate.Declaration.UnitSystem;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.util.Arrays;

/** The columns of the summary of a collective certificate, from left to right. */
enum SummaryColumn {
    REEL(PaperWord.REEL, 98, false),
    PRODUCT(PaperWord.PRODUCT, 66, false),
    LENGTH(PaperWord.LENGTH, 62, true),
    CERTIFICATE(PaperWord.CERTIFICATE, 98, false),
    RESULT(PaperWord.RESULT, 58, false),
    LEAST(PaperWord.LEAST_IN_DECIBEL, 40, true),
    WHERE(PaperWord.WHERE, 89, false);

    private final PaperWord heading;
    private final float width;
    private final boolean alignsRight;

    /**
     * A column.
     *
     * @param width in points
     */
    SummaryColumn(PaperWord heading, float width, boolean alignsRight) {
        this.heading = heading;
        this.width = width;
        this.alignsRight = alignsRight;
    }

    PaperWord heading() {
        return heading;
    }

    /** Its left edge from the left edge of the table, in points. */
    float offset() {
        float offset = 0;
        for (SummaryColumn column : values()) {
            if (column == this) {
                break;
            }
            offset += column.width;
        }
        return offset;
    }

    /** Its width in points. */
    float width() {
        return width;
    }

    boolean alignsRight() {
        return alignsRight;
    }

    /** What a line has in this column. */
    String cell(Line line, UnitSystem units, Wording words) {
        Least least = line.least();
        return switch (this) {
            case REEL -> line.reel();
            case PRODUCT -> line.product();
            case LENGTH -> FactTexts.length(line.length(), line.lengthMetres(), units);
            case CERTIFICATE -> line.certificate() + " / " + line.issue();
            case RESULT -> result(line, words);
            case LEAST -> least == null ? "" : least.margin();
            case WHERE -> least == null ? "" : least.title() + ", " + least.where();
        };
    }

    private static String result(Line line, Wording words) {
        if (line.conceded()) {
            return words.paper(PaperWord.BY_CONCESSION);
        }
        return Arrays.stream(Verdict.values())
                .filter(verdict -> verdict.word().equals(line.verdict()))
                .findFirst()
                .map(verdict -> words.verdict(verdict, line.conditional()))
                .orElseThrow();
    }
}
