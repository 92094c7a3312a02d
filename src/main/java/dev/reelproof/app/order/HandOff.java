package dev.reelproof.app.order;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindCertificates;
import dev.reelproof.app.order.FindOrder.OrderedReel;
import dev.reelproof.certificate.HandOffLine;
import dev.reelproof.store.order.Orders;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What customer service hands to a customer: the certificates of an order that may be relied on now, and what they state. */
@ApplicationScoped
public class HandOff {
    private final FindOrder find;
    private final Orders orders;
    private final FindCertificates certificates;
    private final Plants plants;

    HandOff(FindOrder find, Orders orders, FindCertificates certificates, Plants plants) {
        this.find = find;
        this.orders = orders;
        this.certificates = certificates;
        this.plants = plants;
    }

    /**
     * What is handed over.
     *
     * @param certificates those of reels that lack nothing, by reel
     * @param without the reels that lack something, and what
     * @param unlisted how many more reels the order has
     */
    public record Parcel(
            String plant,
            String order,
            List<String> customers,
            List<HandOffLine> certificates,
            List<OrderedReel> without,
            int unlisted) {
        public Parcel {
            certificates = List.copyOf(certificates);
            without = List.copyOf(without);
        }
    }

    /**
     * What an order's customer gets now.
     *
     * @throws NothingThereException when no reel is registered for the order
     */
    @Transactional
    public Parcel of(@Nullable String plantNamed, String name) {
        String plant = plants.named(plantNamed, "plant");
        FindOrder.Order order = find.one(plant, name);
        List<String> numbers = order.reels().stream()
                .filter(reel -> reel.needs().isEmpty())
                .flatMap(reel -> reel.certificate().stream())
                .map(living -> living.certificate().number())
                .toList();
        return new Parcel(
                plant,
                name,
                order.customers(),
                orders.states(plant, numbers),
                order.reels().stream().filter(reel -> !reel.needs().isEmpty()).toList(),
                order.reelCount() - order.reels().size());
    }

    /** The PDF of a certificate in a parcel. */
    public byte[] pdf(Parcel parcel, HandOffLine line) {
        return certificates.pdf(parcel.plant(), line.number());
    }
}
