package dev.reelproof.api.order;

import dev.reelproof.api.certificate.CertificateAnswer;
import dev.reelproof.api.certificate.CollectiveAnswer;
import dev.reelproof.api.reel.ReelAnswer;
import dev.reelproof.app.certificate.LivingCollective;
import dev.reelproof.app.order.FindOrder;
import dev.reelproof.record.ShippingNeed;
import dev.reelproof.wording.OrderWords;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** An order with its reels and what they lack. */
@Schema(name = "Order")
record OrderAnswer(
        String order,
        @Schema(description = "who ordered, as the reels say") List<String> customers,
        @Schema(description = "how many reels it has, also those that are not listed") int reelCount,
        @Schema(description = "how many of those listed lack nothing") int ready,
        @Schema(description = "the same in a sentence") String sentence,
        List<OrderedReel> reels,
        @Schema(nullable = true, description = "the newest batch of certificates; null when nobody asked for one")
                @Nullable
                BatchAnswer batch,
        @Schema(description = "the certificates over several of its reels, newest first, at most 20")
                List<CollectiveAnswer> collectiveCertificates) {

    /** A reel of an order. */
    @Schema(name = "OrderedReel")
    record OrderedReel(
            ReelAnswer.Line reel,
            @Schema(nullable = true, description = "its newest certificate, unless another took its place") @Nullable
                    CertificateAnswer certificate,
            @Schema(
                            description =
                                    "what it lacks before it may be shipped: test, complete-test, passed-test, engineer, release, new-test,"
                                            + " certificate, current-certificate")
                    List<String> needs,
            @Schema(description = "the same in words; empty when it lacks nothing") String needsText) {}

    static OrderAnswer of(FindOrder.Order order, List<LivingCollective> collectives) {
        OrderWords words = OrderWords.english();
        return new OrderAnswer(
                order.order(),
                order.customers(),
                order.reelCount(),
                order.ready(),
                words.readiness(order.ready(), order.reelCount()),
                order.reels().stream()
                        .map(reel -> new OrderedReel(
                                ReelAnswer.Line.of(reel.reel()),
                                reel.certificate().map(CertificateAnswer::of).orElse(null),
                                reel.needs().stream().map(ShippingNeed::word).toList(),
                                words.needs(reel.needs())))
                        .toList(),
                order.batch().map(BatchAnswer::of).orElse(null),
                collectives.stream().map(CollectiveAnswer::of).toList());
    }
}
