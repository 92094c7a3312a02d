package dev.reelproof.pdf.page;

import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * The two weights that a certificate is set in, each drawn as a typeface of its own.
 *
 * <p>Source Sans Pro, under the SIL Open Font License 1.1 (its text is in the library's jar, {@code OFL.txt}): Latin, Greek and Cyrillic,
 * figures of one width, so that columns of numbers line up.
 *
 * @param regular for text
 * @param bold for headings and what counts most
 */
public record Typeface(EmbeddedFont regular, EmbeddedFont bold) {
    private static final String FOLDER = "/fonts/ttf/SourceSansPro/";

    /** Both weights, embedded in a document. */
    public static Typeface in(PDDocument document) throws IOException {
        return new Typeface(
                EmbeddedFont.in(document, FOLDER + "SourceSansPro-Regular.ttf"),
                EmbeddedFont.in(document, FOLDER + "SourceSansPro-SemiBold.ttf"));
    }
}
