package dev.reelproof.app.order;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.app.certificate.LivingCertificate;
import dev.reelproof.app.reel.FindReels;
import dev.reelproof.app.reel.FindReels.FoundReel;
import dev.reelproof.certificate.CertificateBatch;
import dev.reelproof.record.ShippingNeed;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.order.CertificateBatches;
import dev.reelproof.store.order.Orders;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds an order: its reels, their certificates, and what they lack before they may be shipped. */
@ApplicationScoped
public class FindOrder {
    /** No more reels of an order are listed; certificates are issued for all of them. */
    public static final int MOST_LISTED = 10_000;

    private final Plants plants;
    private final Orders orders;
    private final FindReels reels;
    private final Certificates certificates;
    private final FindLives lives;
    private final CertificateBatches batches;

    FindOrder(
            Plants plants,
            Orders orders,
            FindReels reels,
            Certificates certificates,
            FindLives lives,
            CertificateBatches batches) {
        this.plants = plants;
        this.orders = orders;
        this.reels = reels;
        this.certificates = certificates;
        this.lives = lives;
        this.batches = batches;
    }

    /**
     * A reel of an order.
     *
     * @param certificate its newest certificate, unless it has none or another took its place
     * @param needs what it lacks, the first to be done first
     */
    public record OrderedReel(FoundReel reel, Optional<LivingCertificate> certificate, List<ShippingNeed> needs) {}

    /**
     * An order.
     *
     * @param order as registered
     * @param customers who ordered, as the reels say; mostly one
     * @param reelCount how many reels it has, also those that are not listed
     * @param reels its reels by number
     * @param batch the newest batch of certificates that somebody asked for
     */
    public record Order(
            String order,
            List<String> customers,
            int reelCount,
            List<OrderedReel> reels,
            Optional<CertificateBatch> batch) {

        /** How many of the reels that are listed lack nothing. */
        public int ready() {
            return (int) reels.stream().filter(reel -> reel.needs().isEmpty()).count();
        }
    }

    /** What is said of an order that no reel names. */
    static NothingThereException unknown(String plant, String order) {
        return new NothingThereException("No reel of plant " + plant + " is registered for order '" + order + "'.");
    }

    /**
     * An order of exactly that name.
     *
     * @throws NothingThereException when no reel is registered for it
     */
    @Transactional
    public Order one(@Nullable String plantNamed, String order) {
        String plant = plants.named(plantNamed, "plant");
        List<String> numbers = orders.reelsOf(plant, Orders.Owner.ORDER, order, null, null, MOST_LISTED);
        if (numbers.isEmpty()) {
            throw unknown(plant, order);
        }
        // A reel has one certificate at most that no other has taken the place of.
        Map<String, LivingCertificate> certificateOf = lives
                .of(
                        plant,
                        certificates.ofReels(plant, numbers).values().stream()
                                .flatMap(List::stream)
                                .toList())
                .stream()
                .filter(one -> !one.life().succession().isSuperseded())
                .collect(Collectors.toMap(one -> one.certificate().reel(), Function.identity()));
        List<OrderedReel> listed = reels.among(plant, numbers).stream()
                .map(reel -> reel(
                        reel,
                        Optional.ofNullable(certificateOf.get(reel.line().reel().id()))))
                .sorted((one, other) -> number(one).compareTo(number(other)))
                .toList();
        return new Order(
                order,
                listed.stream()
                        .map(one -> one.reel().line().reel().customer())
                        .filter(Objects::nonNull)
                        .distinct()
                        .sorted()
                        .toList(),
                numbers.size() < MOST_LISTED ? listed.size() : orders.countReels(plant, order),
                listed,
                batches.newest(plant, order));
    }

    private static String number(OrderedReel reel) {
        return reel.reel().line().reel().id();
    }

    private static OrderedReel reel(FoundReel reel, Optional<LivingCertificate> certificate) {
        return new OrderedReel(
                reel,
                certificate,
                ShippingNeed.of(
                        reel.line().verdict(),
                        reel.standing().usedAsIs().isPresent(),
                        reel.standing().isUnfinished(),
                        reel.awaitsEngineer(),
                        reel.held(),
                        certificate.map(one -> paper(one, reel.line().record())).orElse(ShippingNeed.Paper.NONE)));
    }

    /** What a certificate that no other has taken the place of is worth to a reel with that newest record. */
    private static ShippingNeed.Paper paper(LivingCertificate living, @Nullable UUID newest) {
        return switch (living.life().state()) {
            case CURRENT -> ShippingNeed.Paper.CURRENT;
            case IN_QUESTION -> ShippingNeed.Paper.IN_QUESTION;
            case WITHDRAWN -> living.certificate().record().equals(newest)
                    ? ShippingNeed.Paper.WITHDRAWN
                    : ShippingNeed.Paper.NONE;
            case SUPERSEDED -> ShippingNeed.Paper.NONE;
        };
    }
}
