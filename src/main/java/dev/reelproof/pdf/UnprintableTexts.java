package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.pdf.page.EmbeddedFont;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds what people entered that the typeface of certificates cannot print: it has the letters of Latin, Greek and Cyrillic. On paper a
 * box would stand for such a letter, so that nobody could read whose cable it is.
 */
final class UnprintableTexts {
    private final EmbeddedFont font;
    private final List<String> found = new ArrayList<>();

    private UnprintableTexts(EmbeddedFont font) {
        this.font = font;
    }

    /** Each such text, with what it is and its first letter of that kind. */
    static List<String> in(CertificateContent content, EmbeddedFont font) {
        UnprintableTexts texts = of(content, font);
        texts.look("the reel's number", content.reel());
        texts.look("the product's code", content.product().code());
        texts.look("the product's description", content.product().description());
        texts.look("the product's gauge", content.product().gauge());
        texts.look("the customer", content.customer());
        texts.look("the order", content.order());
        texts.look("the consignee", content.consignee());
        texts.look("the test bay", content.conditions().station());
        texts.look("the technician", content.conditions().technician());
        content.conditions().equipment().forEach(instrument -> texts.look("an instrument", instrument.id()));
        content.statement().forEach(sentence -> texts.look("the statement", sentence));
        return List.copyOf(texts.found);
    }

    /** Of a collective certificate, what its first pages say; of the reels only what others were printed of before is drawn. */
    static List<String> in(CollectiveContent content, EmbeddedFont font) {
        UnprintableTexts texts = of(content, font);
        texts.look("the customer", content.customer());
        texts.look("the order", content.order());
        return List.copyOf(texts.found);
    }

    private static UnprintableTexts of(NumberedPaper paper, EmbeddedFont font) {
        UnprintableTexts texts = new UnprintableTexts(font);
        texts.look("the plant's name", paper.plant().name());
        paper.plant().address().forEach(line -> texts.look("the plant's address", line));
        Declaration.Signatory authorised = paper.paper().authorised();
        if (authorised != null) {
            texts.look("who authorises", authorised.name());
            texts.look("the role of who authorises", authorised.role());
        }
        return texts;
    }

    private void look(String what, @Nullable String text) {
        if (text == null) {
            return;
        }
        font.firstMissing(text)
                .ifPresent(letter -> found.add("%s, “%s”, has the letter %s (U+%04X)"
                        .formatted(what, text, Character.toString(letter), letter)));
    }
}
