package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent.Part;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** The columns of the table of requirements, from left to right. */
enum TableColumn {
    REQUIREMENT(PaperWord.REQUIREMENT, 106, Align.LEFT, Weight.BOLD),
    LIMIT(PaperWord.LIMIT, 124, Align.LEFT, Weight.REGULAR),
    VALUE(PaperWord.VALUE, 41, Align.RIGHT, Weight.REGULAR),
    LIMIT_THERE(PaperWord.LIMIT_THERE, 44, Align.RIGHT, Weight.REGULAR),
    MARGIN(PaperWord.MARGIN, 38, Align.RIGHT, Weight.BOLD),
    UNIT(PaperWord.UNIT, 50, Align.LEFT, Weight.REGULAR),
    WHERE(PaperWord.WHERE, 62, Align.LEFT, Weight.REGULAR),
    RESULT(PaperWord.RESULT, 46, Align.RIGHT, Weight.REGULAR);

    private static final char NO_BREAK_SPACE = '\u00a0';

    private enum Align {
        LEFT,
        RIGHT
    }

    private enum Weight {
        REGULAR,
        BOLD
    }

    private final PaperWord heading;
    private final float width;
    private final Align align;
    private final Weight weight;

    /**
     * A column.
     *
     * @param width in points
     */
    TableColumn(PaperWord heading, float width, Align align, Weight weight) {
        this.heading = heading;
        this.width = width;
        this.align = align;
        this.weight = weight;
    }

    PaperWord heading() {
        return heading;
    }

    /** Its left edge from the left edge of the table, in points. */
    float offset() {
        float offset = 0;
        for (TableColumn column : values()) {
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
        return align == Align.RIGHT;
    }

    boolean isBold() {
        return weight == Weight.BOLD;
    }

    /** What a row has in this column. */
    String cell(Row row, Wording words) {
        return switch (this) {
            case REQUIREMENT -> row.title();
            case LIMIT -> limits(row).stream()
                    .map(part -> part.range().isEmpty() ? part.figures() : part.figures() + ", " + part.range())
                    .collect(Collectors.joining("; "));
            case VALUE -> row.value();
            case LIMIT_THERE -> row.limitThere();
            case MARGIN -> row.margin();
            case UNIT -> unbroken(row.unit());
            case WHERE -> row.where().replace(" MHz", unbroken(" MHz")).replace(" kHz", unbroken(" kHz"));
            case RESULT -> Arrays.stream(Outcome.values())
                    .filter(outcome -> outcome.word().equals(row.outcome()))
                    .findFirst()
                    .map(words::outcome)
                    .orElseThrow();
        };
    }

    /** The parts of a limit, the unit of none broken over two lines. */
    static List<Part> limits(Row row) {
        return row.limitParts().stream()
                .map(part -> new Part(part.figures().replace(row.unit(), unbroken(row.unit())), unbroken(part.range())))
                .toList();
    }

    private static String unbroken(String words) {
        return words.replace(' ', NO_BREAK_SPACE);
    }
}
