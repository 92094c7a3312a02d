package dev.reelproof.pdf.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** One weight of the typeface of a certificate, embedded in the file: which letters it has, how wide they are, where lines break. */
public final class EmbeddedFont {
    private static final String MISSING_LETTER = "■";
    private static final String CUT_MARK = " …";
    private static final float GLYPH_UNITS_PER_SIZE = 1000;

    private final PDType0Font font;
    private final CmapLookup letters;
    private final Map<Integer, Float> widths = new HashMap<>();

    private EmbeddedFont(PDType0Font font, CmapLookup letters) {
        this.font = font;
        this.letters = letters;
    }

    /** A typeface file from the class path, embedded in a document. */
    static EmbeddedFont in(PDDocument document, String file) throws IOException {
        try (InputStream stream = EmbeddedFont.class.getResourceAsStream(file)) {
            if (stream == null) {
                throw new IOException("the typeface " + file + " is not on the class path");
            }
            TrueTypeFont face = new TTFParser().parse(new RandomAccessReadBuffer(stream));
            // A ligature has no letters of its own: who copies or hears the text would get another one.
            face.setEnableGsub(false);
            return new EmbeddedFont(PDType0Font.load(document, face, true), face.getUnicodeCmapLookup());
        }
    }

    PDType0Font typeface() {
        return font;
    }

    /**
     * The text as it can be drawn. White space and control characters become spaces. A letter that the typeface lacks, that is
     * invisible or that runs from right to left becomes a box, so that a reader sees that one is missing.
     */
    public String printable(String text) {
        StringBuilder printable = new StringBuilder(text.length());
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(letter -> {
            if (isSpace(letter)) {
                printable.append(' ');
            } else if (drawable(letter)) {
                printable.appendCodePoint(letter);
            } else {
                printable.append(MISSING_LETTER);
            }
        });
        return printable.toString();
    }

    /** The first letter of a text that cannot be drawn; empty when all can. */
    public OptionalInt firstMissing(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC)
                .codePoints()
                .filter(letter -> !(isSpace(letter) || drawable(letter)))
                .findFirst();
    }

    private static boolean isSpace(int letter) {
        return Character.isWhitespace(letter) || Character.isSpaceChar(letter) || Character.isISOControl(letter);
    }

    private boolean drawable(int letter) {
        byte direction = Character.getDirectionality(letter);
        int kind = Character.getType(letter);
        return letters.getGlyphId(letter) != 0
                && kind != Character.PRIVATE_USE
                && kind != Character.FORMAT
                && kind != Character.NON_SPACING_MARK
                && direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT
                && direction != Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC;
    }

    /** The width of printable text set in a size, both in points. */
    public float width(String printable, float size) {
        double units = printable.codePoints().mapToDouble(this::glyphUnits).sum();
        return (float) (units / GLYPH_UNITS_PER_SIZE * size);
    }

    /** The width of a letter in thousandths of the size. It is kept, because a table asks for it very often. */
    private float glyphUnits(int letter) {
        return widths.computeIfAbsent(letter, one -> {
            try {
                return font.getStringWidth(Character.toString(one));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    /** Breaks a text into lines of a width in points. A word wider than that is broken; a no-break space never is. */
    public List<String> wrap(String text, float size, float width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("[ \\t\\r\\n]+")) {
            String rest = printable(word);
            if (!line.isEmpty() && width(line + " " + rest, size) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            while (width(rest, size) > width && rest.codePointCount(0, rest.length()) > 1) {
                int end = fitting(rest, size, width);
                lines.add(rest.substring(0, end));
                rest = rest.substring(end);
            }
            line.append(line.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Breaks a text into at most so many lines; an ellipsis marks what is cut off. */
    public List<String> wrap(String text, float size, float width, int mostLines) {
        List<String> lines = wrap(text, size, width);
        if (lines.size() <= mostLines) {
            return lines;
        }
        List<String> kept = new ArrayList<>(lines.subList(0, mostLines));
        String last = kept.get(mostLines - 1);
        int end = fitting(last, size, width - width(CUT_MARK, size));
        kept.set(mostLines - 1, last.substring(0, end) + CUT_MARK);
        return kept;
    }

    /** The first line of a text that is to stand on one; an ellipsis marks what is cut off. */
    public String firstLine(String text, float size, float width) {
        return wrap(text, size, width, 1).get(0);
    }

    /** How many chars of a text fit a width: at least one letter. */
    private int fitting(String text, float size, float width) {
        int end = text.offsetByCodePoints(0, 1);
        while (end < text.length() && width(text.substring(0, text.offsetByCodePoints(end, 1)), size) <= width) {
            end = text.offsetByCodePoints(end, 1);
        }
        return end;
    }
}
