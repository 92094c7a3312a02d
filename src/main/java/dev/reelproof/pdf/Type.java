package dev.reelproof.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The one typeface of a certificate, embedded: which letters it has, how wide they run, where lines break. */
final class Type {
    private static final String RESOURCE = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final String MISSING = "□";
    private static final String CUT = " …";
    private static final float UNITS = 1000;

    private final PDType0Font font;
    private final CmapLookup letters;
    private final Map<Integer, Float> widths = new HashMap<>();

    private Type(PDType0Font font, CmapLookup letters) {
        this.font = font;
        this.letters = letters;
    }

    static Type embeddedIn(PDDocument document) throws IOException {
        try (InputStream stream = PDFont.class.getResourceAsStream(RESOURCE)) {
            TrueTypeFont face = new TTFParser().parse(new RandomAccessReadBuffer(stream));
            return new Type(PDType0Font.load(document, face, true), face.getUnicodeCmapLookup());
        }
    }

    PDType0Font font() {
        return font;
    }

    /**
     * Text that can be drawn: white space and controls become spaces; a letter that the typeface lacks, that is invisible or
     * that runs from right to left becomes a box, so that its absence is seen.
     */
    String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        Normalizer.normalize(text, Normalizer.Form.NFC).codePoints().forEach(letter -> {
            if (Character.isWhitespace(letter) || Character.isSpaceChar(letter) || Character.isISOControl(letter)) {
                clean.append(' ');
            } else if (drawable(letter)) {
                clean.appendCodePoint(letter);
            } else {
                clean.append(MISSING);
            }
        });
        return clean.toString();
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

    /** The width of clean text, in points. */
    float width(String clean, float size) {
        double units = clean.codePoints().mapToDouble(this::unitsOf).sum();
        return (float) (units / UNITS * size);
    }

    /** The width of a letter in thousandths of the size; kept, since a table asks for it very often. */
    private float unitsOf(int letter) {
        return widths.computeIfAbsent(letter, one -> {
            try {
                return font.getStringWidth(Character.toString(one));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    /** The lines of a text within a width; a word that is too long by itself is broken, a no-break space never. */
    List<String> wrap(String text, float size, float width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.strip().split("[ \\t\\r\\n]+")) {
            String rest = clean(word);
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

    /** Like {@link #wrap}, but no more than so many lines: what is cut is marked. */
    List<String> wrap(String text, float size, float width, int most) {
        List<String> lines = wrap(text, size, width);
        if (lines.size() <= most) {
            return lines;
        }
        List<String> kept = new ArrayList<>(lines.subList(0, most));
        String last = kept.get(most - 1);
        int end = fitting(last, size, width - width(CUT, size));
        kept.set(most - 1, last.substring(0, end) + CUT);
        return kept;
    }

    /** How many chars of a text, at least one letter, fit a width. */
    private int fitting(String text, float size, float width) {
        int end = text.offsetByCodePoints(0, 1);
        while (end < text.length() && width(text.substring(0, text.offsetByCodePoints(end, 1)), size) <= width) {
            end = text.offsetByCodePoints(end, 1);
        }
        return end;
    }
}
