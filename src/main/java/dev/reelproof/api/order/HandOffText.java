package dev.reelproof.api.order;

import dev.reelproof.app.order.HandOff;
import dev.reelproof.certificate.HandOffLine;
import dev.reelproof.wording.OrderWords;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;

/** Puts a hand-off into plain text that can be pasted into a mail. */
final class HandOffText {
    private static final String PAGE = "verify.html";

    private HandOffText() {}

    /**
     * The text.
     *
     * @param service the address of the service, as the caller knows it
     */
    static String of(HandOff.Parcel parcel, URI service) {
        OrderWords words = OrderWords.english();
        List<String> parts = new ArrayList<>();
        parts.add(words.handOffTitle(
                parcel.plant(),
                parcel.order(),
                parcel.customers(),
                parcel.certificates().size()));
        for (HandOffLine line : parcel.certificates()) {
            parts.add(words.handOffLine(
                    line.number(),
                    line.reel(),
                    line.product(),
                    line.limits(),
                    line.verdict(),
                    line.pdfSha256(),
                    page(service).queryParam("number", line.number()).build().toString()));
        }
        int without = parcel.without().size() + parcel.unlisted();
        if (without > 0) {
            parts.add(words.handOffWithout(without) + "\n"
                    + String.join(
                            "\n",
                            parcel.without().stream()
                                    .map(reel -> words.handOffWithoutLine(
                                            reel.reel().line().reel().id(), reel.needs()))
                                    .toList()));
        }
        parts.add(words.handOffEnd(page(service).build().toString()));
        return String.join("\n\n", parts) + "\n";
    }

    private static UriBuilder page(URI service) {
        return UriBuilder.fromUri(service).replacePath(PAGE).replaceQuery(null);
    }
}
