package dev.reelproof.wording;

import dev.reelproof.record.ShippingNeed;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What is said of an order: what its reels lack, and the text that goes to the customer with the certificates. */
public final class OrderWords {
    private static final OrderWords ENGLISH = new OrderWords(Catalogue.of(Locale.ENGLISH));

    private final Catalogue words;

    private OrderWords(Catalogue words) {
        this.words = words;
    }

    /** In English. */
    public static OrderWords english() {
        return ENGLISH;
    }

    /** What a reel lacks, in few words. */
    public String need(ShippingNeed need) {
        return words.text("need." + need.word());
    }

    /** All that a reel lacks, in one line. */
    public String needs(List<ShippingNeed> needs) {
        return needs.stream().map(this::need).collect(Collectors.joining("; "));
    }

    /** How many reels of an order may be shipped. */
    public String readiness(int ready, int reels) {
        return words.text("order.readiness", "ready", String.valueOf(ready), "reels", String.valueOf(reels));
    }

    /** How far a batch of certificates has come. */
    public String progress(int done, int reels, int issued, int issuedBefore, int notIssued) {
        return words.text(
                done == reels ? "batch.finished" : "batch.working",
                "done",
                String.valueOf(done),
                "reels",
                String.valueOf(reels),
                "issued",
                String.valueOf(issued),
                "before",
                issuedBefore == 0 ? null : String.valueOf(issuedBefore),
                "not",
                notIssued == 0 ? null : String.valueOf(notIssued));
    }

    /** The head of a hand-off. */
    public String handOffTitle(String plant, String order, List<String> customers, int certificates) {
        return words.text(
                "hand-off.title",
                "plant",
                plant,
                "order",
                order,
                "customer",
                customers.isEmpty() ? null : String.join("; ", customers),
                "certificates",
                String.valueOf(certificates));
    }

    /**
     * What one certificate states, and where it is verified.
     *
     * @param product null when it is not known
     * @param limits null when it is not known
     * @param verdictWord null when it is not known
     */
    public String handOffLine(
            String number,
            String reel,
            @Nullable String product,
            @Nullable String limits,
            @Nullable String verdictWord,
            String pdfSha256,
            String address) {
        return words.text(
                "hand-off.line",
                "number",
                number,
                "reel",
                reel,
                "product",
                product,
                "limits",
                limits,
                "verdict",
                verdictWord,
                "sha256",
                pdfSha256,
                "address",
                address);
    }

    /** How anyone verifies a certificate. */
    public String handOffEnd(String address) {
        return words.text("hand-off.end", "address", address);
    }

    /** That reels of the order are not covered. */
    public String handOffWithout(int reels) {
        return words.text("hand-off.without", "reels", String.valueOf(reels));
    }

    /** A reel that is not covered, and why. */
    public String handOffWithoutLine(String reel, List<ShippingNeed> needs) {
        return words.text("hand-off.without-line", "reel", reel, "needs", needs(needs));
    }
}
