package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CollectiveContent;
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
import org.jspecify.annotations.Nullable;

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
        drawUnsigned(flow, content);
        signatures(flow, content.paper().authorised(), content.conditions().technician());
    }

    /** Draws the statement alone, where who authorises it signs on another page. */
    static void drawUnsigned(PageFlow flow, CertificateContent content) throws IOException {
        flow.heading(flow.say(PaperWord.STATEMENT), 0);
        box(flow, word(flow, content), content.statement());
    }

    /** Draws what a collective certificate states, and who authorises it. */
    static void draw(PageFlow flow, CollectiveContent content) throws IOException {
        flow.heading(flow.say(PaperWord.STATEMENT), 0);
        String reels = String.valueOf(content.lines().size());
        List<String> statement = new ArrayList<>();
        statement.add(flow.say(PaperWord.COLLECTIVE_NAMED, "count", reels));
        long conceded = content.lines().stream()
                .filter(CollectiveContent.Line::conceded)
                .count();
        if (conceded > 0) {
            statement.add(flow.say(PaperWord.COLLECTIVE_CONCEDED, "count", String.valueOf(conceded)));
        }
        statement.add(flow.say(PaperWord.COLLECTIVE_JUDGES_NOTHING));
        statement.add(flow.say(PaperWord.COLLECTIVE_WORTH));
        box(flow, flow.say(PaperWord.COLLECTIVE_REELS, "count", reels, "order", content.order()), statement);
        signatures(flow, content.paper().authorised(), null);
    }

    private static void box(PageFlow flow, String word, List<String> statement) throws IOException {
        List<List<String>> sentences = new ArrayList<>();
        for (String sentence : statement) {
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

    private static void signatures(PageFlow flow, Declaration.@Nullable Signatory authorised, @Nullable String tester)
            throws IOException {
        flow.moveDown(SPACE_TO_SIGN);
        int lines = signature(
                flow,
                authorised == null
                        ? flow.say(PaperWord.AUTHORISED)
                        : flow.say(PaperWord.AUTHORISED, "name", authorised.name(), "role", authorised.role()),
                0,
                true);
        lines = Math.max(lines, signature(flow, flow.say(PaperWord.DATE), 1, true));
        if (tester != null) {
            lines = Math.max(lines, signature(flow, flow.say(PaperWord.TESTED_BY, "name", tester), 2, false));
        }
        flow.moveDown(SPACE_BELOW + (lines - 1) * PageLayout.NOTE_SIZE * PageLayout.LEADING);
    }

    /** Gives the number of lines that its words take. */
    private static int signature(PageFlow flow, String words, int column, boolean toSign) throws IOException {
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
        return lines.size();
    }
}
