package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent.Row;

/** The columns of the table of requirements, from left to right. */
enum TableColumn {
    REQUIREMENT("Requirement", 112, Align.LEFT, Weight.BOLD),
    LIMIT("Limit", 107, Align.LEFT, Weight.REGULAR),
    WORST("Worst", 38, Align.RIGHT, Weight.REGULAR),
    LIMIT_THERE("Limit there", 40, Align.RIGHT, Weight.REGULAR),
    MARGIN("Margin", 36, Align.RIGHT, Weight.BOLD),
    UNIT("Unit", 45, Align.LEFT, Weight.REGULAR),
    WHERE("Where", 65, Align.LEFT, Weight.REGULAR),
    POINTS("Points", 28, Align.RIGHT, Weight.REGULAR),
    OUTCOME("Result", 40, Align.RIGHT, Weight.REGULAR);

    private static final char NO_BREAK_SPACE = '\u00a0';
    private static final String BEFORE_RANGE = ", ";

    private enum Align {
        LEFT,
        RIGHT
    }

    private enum Weight {
        REGULAR,
        BOLD
    }

    private final String heading;
    private final float width;
    private final Align align;
    private final Weight weight;

    /**
     * A column.
     *
     * @param width in points
     */
    TableColumn(String heading, float width, Align align, Weight weight) {
        this.heading = heading;
        this.width = width;
        this.align = align;
        this.weight = weight;
    }

    String heading() {
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
    String cell(Row row) {
        return switch (this) {
            case REQUIREMENT -> row.title();
            case LIMIT -> limit(row);
            case WORST -> row.value();
            case LIMIT_THERE -> row.limitThere();
            case MARGIN -> row.margin();
            case UNIT -> unbroken(row.unit());
            case WHERE -> row.where().replace(" MHz", unbroken(" MHz")).replace(" kHz", unbroken(" kHz"));
            case POINTS -> Integer.toString(row.points());
            case OUTCOME -> row.outcome().replace('-', ' ');
        };
    }

    /** The limit with neither its unit nor its range of frequency broken over two lines. */
    private static String limit(Row row) {
        String limit = row.limit().replace(row.unit(), unbroken(row.unit()));
        int comma = limit.lastIndexOf(BEFORE_RANGE);
        if (comma < 0) {
            return limit;
        }
        int range = comma + BEFORE_RANGE.length();
        return limit.substring(0, range) + unbroken(limit.substring(range));
    }

    private static String unbroken(String words) {
        return words.replace(' ', NO_BREAK_SPACE);
    }
}
