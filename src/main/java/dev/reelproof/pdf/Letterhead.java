package dev.reelproof.pdf;

import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.jspecify.annotations.Nullable;

/**
 * Draws the head of the first page: the plant with its sign and address on the left, what the paper is and its number on the right. Number and
 * issue have their place and are drawn when they are known.
 */
final class Letterhead {
    private static final float LOGO_HEIGHT = 34;
    private static final float LOGO_TO_PLANT = 5;
    private static final float PLANT_SIZE = 12.5f;
    private static final float PLANT_TOP = 9;
    private static final float PLANT_LINE = 14;
    private static final int MOST_LINES = 2;

    private static final float TITLE_SIZE = 18;
    private static final float TITLE_TOP = 11;
    private static final float STANDARD_LINE = 11;
    private static final float TITLE_TO_NUMBER = 16;
    private static final float NUMBER_SIZE = 11;
    private static final float NUMBER_TO_ISSUE = 12;

    private static final float TEXT_TO_RULE = -2;
    private static final float RULE = 1.4f;
    private static final float RULE_TO_FACTS = 14;

    private final PageFlow flow;
    private final float numberTop;
    private final Part number;

    /** Draws all but number and issue. */
    Letterhead(PageFlow flow, NumberedPaper content, @Nullable PDImageXObject logo) throws IOException {
        this.flow = flow;
        float top = flow.y();
        float right = title(content, top + TITLE_TOP);
        this.number = flow.whole().add("P");
        float left = plant(content, top + (logo == null ? 0 : logo(content, logo, top)) + PLANT_TOP);
        this.numberTop = right + TITLE_TO_NUMBER;
        float end = numberTop + NUMBER_TO_ISSUE + PageLayout.FACT_SIZE * PageLayout.LEADING;
        flow.moveTo(Math.max(left, end) + TEXT_TO_RULE);
        flow.canvas().line(PageLayout.MARGIN, flow.y(), PageLayout.RIGHT, flow.y(), Palette.ACCENT, RULE);
        flow.moveDown(RULE_TO_FACTS);
    }

    /** Draws the plant's sign and gives how much room it takes. */
    private float logo(NumberedPaper content, PDImageXObject logo, float top) throws IOException {
        float scale = Math.min(LOGO_HEIGHT / logo.getHeight(), PageLayout.COLUMN_WIDTH / logo.getWidth());
        float height = logo.getHeight() * scale;
        flow.as(flow.whole().add("Figure").describedAs(content.plant().name()), () -> flow.canvas()
                .image(logo, PageLayout.MARGIN, top, logo.getWidth() * scale, height));
        return height + LOGO_TO_PLANT;
    }

    private float plant(NumberedPaper content, float top) throws IOException {
        float y = top;
        for (String line : flow.bold().wrap(content.plant().name(), PLANT_SIZE, PageLayout.COLUMN_WIDTH, MOST_LINES)) {
            float baseline = y;
            flow.as(flow.whole().add("P"), () -> flow.canvas()
                    .boldText(line, PageLayout.MARGIN, baseline, PLANT_SIZE, Palette.TEXT));
            y += PLANT_LINE;
        }
        float size = PageLayout.FACT_SIZE;
        for (String address : content.plant().address()) {
            for (String line : flow.font().wrap(address, size, PageLayout.COLUMN_WIDTH, MOST_LINES)) {
                float baseline = y;
                flow.as(flow.whole().add("P"), () -> flow.canvas()
                        .text(line, PageLayout.MARGIN, baseline, size, Palette.MUTED));
                y += size * PageLayout.LEADING;
            }
        }
        return y;
    }

    /** Draws what the paper is, and gives the baseline of its last line. */
    private float title(NumberedPaper content, float top) throws IOException {
        String title = content.paper().title();
        flow.as(flow.whole().add("H1"), () -> flow.canvas()
                .boldTextEndingAt(title, PageLayout.RIGHT, top, TITLE_SIZE, Palette.ACCENT));
        String standard = content.paper().standard();
        if (standard == null) {
            return top;
        }
        float y = top + STANDARD_LINE;
        flow.as(flow.whole().add("P"), () -> flow.canvas()
                .textEndingAt(standard, PageLayout.RIGHT, y, PageLayout.FACT_SIZE, Palette.MUTED));
        return y;
    }

    /** Draws the number and the issue under the title. */
    void drawNumber(NumberedPaper content) throws IOException {
        PageCanvas canvas = flow.pages().get(0);
        canvas.open(number);
        canvas.boldTextEndingAt(content.number(), PageLayout.RIGHT, numberTop, NUMBER_SIZE, Palette.TEXT);
        canvas.textEndingAt(
                flow.say(
                        PaperWord.ISSUE,
                        "issue",
                        String.valueOf(content.issue()),
                        "time",
                        FactTexts.time(content.issued())),
                PageLayout.RIGHT,
                numberTop + NUMBER_TO_ISSUE,
                PageLayout.FACT_SIZE,
                Palette.MUTED);
        canvas.shut();
    }
}
