package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.Distribution;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.pdf.page.StructureTree.Part;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.List;

/** Lists, for each requirement with many sweeps, those with the least margins: in two columns of small tables. */
final class WorstPairsAnnex {
    private static final float SIZE = 7.4f;
    private static final float LINE = SIZE * 1.3f;
    private static final float GAP_BELOW = 9;
    private static final float FIGURE_WIDTH = 37;
    private static final int FIGURES = 3;
    private static final int ACROSS = 2;

    private final PageFlow flow;

    private WorstPairsAnnex(PageFlow flow) {
        this.flow = flow;
    }

    static void draw(PageFlow flow, CertificateContent content) throws IOException {
        List<Distribution> all = content.distributions();
        if (all.isEmpty()) {
            return;
        }
        WorstPairsAnnex annex = new WorstPairsAnnex(flow);
        flow.heading(flow.say(PaperWord.WORST_PAIRS), height(all.get(0)));
        flow.paragraph(flow.say(PaperWord.WORST_PAIRS_READING), PageLayout.NOTE_SIZE, GAP_BELOW / 2);
        for (int first = 0; first < all.size(); first += ACROSS) {
            List<Distribution> row = all.subList(first, Math.min(first + ACROSS, all.size()));
            float height = (float)
                    row.stream().mapToDouble(WorstPairsAnnex::height).max().orElseThrow();
            flow.makeRoom(height);
            float top = flow.y();
            for (int place = 0; place < row.size(); place++) {
                flow.moveTo(top);
                annex.table(row.get(place), place == 0 ? PageLayout.MARGIN : PageLayout.SECOND_COLUMN);
            }
            flow.moveTo(top + height);
        }
    }

    private static float height(Distribution one) {
        return (one.worst().size() + 2) * LINE + GAP_BELOW;
    }

    private void table(Distribution one, float x) throws IOException {
        String title = one.title() + (one.unit().isEmpty() ? "" : ", " + one.unit());
        flow.moveDown(LINE);
        flow.as(flow.whole().add("H3"), () -> flow.canvas()
                .boldText(
                        flow.bold().firstLine(title, SIZE, PageLayout.COLUMN_WIDTH), x, flow.y(), SIZE, Palette.TEXT));
        Part table = flow.whole().add("Table");
        line(
                table,
                "TH",
                x,
                List.of(
                        flow.say(PaperWord.WHERE),
                        flow.say(PaperWord.VALUE),
                        flow.say(PaperWord.LIMIT),
                        flow.say(PaperWord.MARGIN)));
        for (Distribution.Worst worst : one.worst()) {
            line(table, "TD", x, List.of(worst.where(), worst.value(), worst.limit(), worst.margin()));
        }
    }

    private void line(Part table, String type, float x, List<String> cells) throws IOException {
        Part row = table.add("TR");
        flow.moveDown(LINE);
        boolean heads = type.equals("TH");
        for (int i = 0; i < cells.size(); i++) {
            Part cell = row.add(type);
            Part part = heads ? cell.headingColumn() : cell;
            float right = x + PageLayout.COLUMN_WIDTH - (FIGURES - i) * FIGURE_WIDTH;
            float most = PageLayout.COLUMN_WIDTH - FIGURES * FIGURE_WIDTH;
            String text = cells.get(i);
            boolean first = i == 0;
            flow.as(part, () -> {
                if (first) {
                    flow.canvas().text(flow.font().firstLine(text, SIZE, most), x, flow.y(), SIZE, colour(heads));
                } else {
                    flow.canvas().textEndingAt(text, right, flow.y(), SIZE, colour(heads));
                }
            });
        }
    }

    private static java.awt.Color colour(boolean heads) {
        return heads ? Palette.MUTED : Palette.TEXT;
    }
}
