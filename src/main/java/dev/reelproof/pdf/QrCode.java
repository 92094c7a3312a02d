package dev.reelproof.pdf;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.pdf.page.PageCanvas;
import dev.reelproof.pdf.page.Palette;
import dev.reelproof.wording.PaperWord;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws what the first page gives its reader to check it by: a QR code (ISO/IEC 18004, made by ZXing) that leads to the verification
 * page, beside it the address, the digest of the attached result, and whose key signed. The code is made of rectangles, so that it
 * prints sharp at any size.
 */
final class QrCode {
    /** With its 33 to 41 modules a side, a module is 0.4 mm or more. The paper around it is the empty border that a reader needs. */
    private static final float SIDE = 48;

    private static final float GAP_BELOW = 10;
    private static final float SIZE = 7;
    private static final float CODE_TO_WORDS = 14;

    private final Provenance provenance;
    private final float top;

    private QrCode(Provenance provenance, float top) {
        this.provenance = provenance;
        this.top = top;
    }

    /** Keeps the place for it where the page stands. */
    static QrCode reserve(PageFlow flow, Provenance provenance) {
        QrCode code = new QrCode(provenance, flow.y());
        flow.moveDown(code.height(flow));
        return code;
    }

    private float height(PageFlow flow) {
        int lines = words(flow, "").size();
        float text = lines * SIZE * PageLayout.LEADING;
        float code = provenance.service().isPresent() ? SIDE : 0;
        float height = Math.max(text, code);
        return height > 0 ? height + GAP_BELOW : 0;
    }

    /** Draws it on the first page, in the place that was kept. */
    void draw(PageFlow flow, NumberedPaper content) throws IOException {
        PageCanvas canvas = flow.pages().get(0);
        float left = PageLayout.MARGIN;
        if (provenance.service().isPresent()) {
            modules(canvas, provenance.page(content.number()).orElseThrow(), left, top);
            left += SIDE + CODE_TO_WORDS;
        }
        float baseline = top + SIZE;
        for (String line : words(flow, content.number())) {
            canvas.text(flow.font().firstLine(line, SIZE, PageLayout.RIGHT - left), left, baseline, SIZE, Palette.TEXT);
            baseline += SIZE * PageLayout.LEADING;
        }
    }

    private List<String> words(PageFlow flow, String number) {
        List<String> words = new ArrayList<>();
        provenance.page(number).ifPresent(page -> {
            words.add(flow.say(PaperWord.VERIFY_AT));
            words.add(page);
        });
        provenance.result().ifPresent(result -> {
            words.add(flow.say(PaperWord.ATTACHED, "name", ResultAttachment.NAME));
            words.add(result.sha256());
        });
        switch (provenance.signing()) {
            case NONE -> {}
            case PLANT -> words.add(flow.say(PaperWord.SIGNED));
            case DEMO -> words.add(flow.say(PaperWord.SIGNED_DEMO));
        }
        return words;
    }

    private static void modules(PageCanvas canvas, String text, float left, float top) throws IOException {
        ByteMatrix matrix = matrix(text);
        float module = SIDE / matrix.getWidth();
        for (int row = 0; row < matrix.getHeight(); row++) {
            int from = 0;
            while (from < matrix.getWidth()) {
                int to = from;
                while (to < matrix.getWidth() && matrix.get(to, row) == 1) {
                    to++;
                }
                if (to > from) {
                    canvas.fillRectangle(
                            left + from * module, top + row * module, (to - from) * module, module, Palette.TEXT);
                }
                from = to + 1;
            }
        }
    }

    private static ByteMatrix matrix(String text) {
        try {
            return Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
        } catch (WriterException e) {
            throw new IllegalArgumentException("no QR code holds the address " + text, e);
        }
    }
}
