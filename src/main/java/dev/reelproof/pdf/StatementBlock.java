package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Draws the statement of conformity, and who tested and who authorises it for the plant, on the first page. */
final class StatementBlock {
    private static final float WORD_SIZE = 13;
    private static final float SIZE = 9;
    private static final float PADDING = 8;
    private static final float INDENT = 14;
    private static final float BAR_WIDTH = 3.5f;
    private static final float WORD_TO_SENTENCES = 4;
    private static final float GAP_BETWEEN_SENTENCES = 1.5f;
    private static final float GAP_BELOW = 6;

    private static final float SPACE_TO_SIGN = 26;
    private static final float SPACE_BELOW = 24;
    private static final float RULE_TO_WORDS = 9;
    private static final int COLUMNS = 3;
    private static final float WIDTH = (PageLayout.BODY_WIDTH - (COLUMNS - 1) * PageLayout.GUTTER) / COLUMNS;
    private static final float PITCH = WIDTH + PageLayout.GUTTER;
    private static final int MOST_LINES = 2;

    private StatementBlock() {}

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        flow.heading(flow.say(PaperWord.STATEMENT), 0);
        box(flow, content);
        signatures(flow, content);
    }

    private static void box(PageFlow flow, CertificateContent content) throws IOException {
        List<List<String>> sentences = new ArrayList<>();
        for (String sentence : content.statement()) {
            sentences.add(flow.font().wrap(sentence, SIZE, PageLayout.BODY_WIDTH - INDENT - PADDING));
        }
        float leading = SIZE * PageLayout.LEADING;
        float height = 2 * PADDING + WORD_SIZE + WORD_TO_SENTENCES;
        for (List<String> lines : sentences) {
            height += lines.size() * leading + GAP_BETWEEN_SENTENCES;
        }
        float top = flow.y();
        PageCanvas canvas = flow.canvas();
        canvas.fillRectangle(PageLayout.MARGIN, top, PageLayout.BODY_WIDTH, height, Palette.ZEBRA);
        canvas.fillRectangle(PageLayout.MARGIN, top, BAR_WIDTH, height, Palette.ACCENT);
        float x = PageLayout.MARGIN + INDENT;
        flow.moveDown(PADDING + WORD_SIZE * (1 - PageCanvas.DIGIT_MIDDLE / 2));
        String word = word(flow, content);
        flow.as(flow.whole().add("P"), () -> canvas.boldText(word, x, flow.y(), WORD_SIZE, Palette.ACCENT));
        flow.moveDown(WORD_TO_SENTENCES);
        for (List<String> lines : sentences) {
            flow.as(flow.whole().add("P"), () -> {
                for (String line : lines) {
                    canvas.text(line, x, flow.y() + SIZE, SIZE, Palette.TEXT);
                    flow.moveDown(leading);
                }
            });
            flow.moveDown(GAP_BETWEEN_SENTENCES);
        }
        flow.moveTo(top + height + GAP_BELOW);
    }

    private static String word(PageFlow flow, CertificateContent content) {
        if (content.restsOnConcession()) {
            return upper(content, flow.say(PaperWord.BY_CONCESSION));
        }
        Verdict verdict = Arrays.stream(Verdict.values())
                .filter(one -> one.word().equals(content.verdict()))
                .findFirst()
                .orElseThrow();
        return upper(
                content,
                flow.words().verdict(verdict, !content.conditionalRows().isEmpty()));
    }

    private static String upper(CertificateContent content, String word) {
        return word.toUpperCase(Locale.forLanguageTag(content.paper().language()));
    }

    private static void signatures(PageFlow flow, CertificateContent content) throws IOException {
        flow.moveDown(SPACE_TO_SIGN);
        Declaration.Signatory authorised = content.paper().authorised();
        String tester = content.conditions().technician();
        signature(
                flow,
                authorised == null
                        ? flow.say(PaperWord.AUTHORISED)
                        : flow.say(PaperWord.AUTHORISED, "name", authorised.name(), "role", authorised.role()),
                0,
                true);
        signature(flow, flow.say(PaperWord.DATE), 1, true);
        if (tester != null) {
            signature(flow, flow.say(PaperWord.TESTED_BY, "name", tester), 2, false);
        }
        flow.moveDown(SPACE_BELOW);
    }

    private static void signature(PageFlow flow, String words, int column, boolean toSign) throws IOException {
        float x = PageLayout.MARGIN + column * PITCH;
        float size = PageLayout.NOTE_SIZE;
        if (toSign) {
            flow.canvas().line(x, flow.y(), x + WIDTH, flow.y(), Palette.TEXT, PageLayout.THIN_RULE);
        }
        List<String> lines = flow.font().wrap(words, size, WIDTH, MOST_LINES);
        flow.as(flow.whole().add("P"), () -> {
            float y = flow.y() + RULE_TO_WORDS;
            for (String line : lines) {
                flow.canvas().text(line, x, y, size, Palette.MUTED);
                y += size * PageLayout.LEADING;
            }
        });
    }
}
