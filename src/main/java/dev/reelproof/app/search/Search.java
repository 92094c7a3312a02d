package dev.reelproof.app.search;

import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindCollectives;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.app.certificate.LivingCertificate;
import dev.reelproof.app.certificate.LivingCollective;
import dev.reelproof.app.reel.FindReels;
import dev.reelproof.app.reel.FindReels.FoundReel;
import dev.reelproof.certificate.CertificateFilter;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.search.Match;
import dev.reelproof.search.Question;
import dev.reelproof.search.Searched;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.order.Orders;
import dev.reelproof.store.search.SearchIndex;
import dev.reelproof.store.search.SearchIndex.Found;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds reels, orders, certificates, customers and products by one text, the best match first. */
@ApplicationScoped
public class Search {
    /** Of so many orders, customers and products that match, what belongs to them is listed too. */
    private static final int MOST_OWNERS = 3;

    /** Among equals: by kind, then the newest, then by name. */
    private static final Comparator<Named> BEST_FIRST = Comparator.comparing(Named::match)
            .thenComparing(Named::kind)
            .thenComparing(Named::at, Comparator.reverseOrder())
            .thenComparing(Named::name);

    private final Plants plants;
    private final SearchIndex index;
    private final Orders orders;
    private final Certificates certificates;
    private final FindLives lives;
    private final FindCollectives collectives;
    private final FindReels reels;

    Search(
            Plants plants,
            SearchIndex index,
            Orders orders,
            Certificates certificates,
            FindLives lives,
            FindCollectives collectives,
            FindReels reels) {
        this.plants = plants;
        this.index = index;
        this.orders = orders;
        this.certificates = certificates;
        this.lives = lives;
        this.collectives = collectives;
        this.reels = reels;
    }

    /**
     * What is searched for.
     *
     * @param question what is asked; empty for the newest
     * @param kinds the kinds that are wanted
     * @param from reels registered and certificates issued then or later; at any time when null
     * @param before reels registered and certificates issued earlier; at any time when null
     * @param limit how many at most
     */
    public record Wanted(
            Question question,
            Set<Searched> kinds,
            @Nullable OffsetDateTime from,
            @Nullable OffsetDateTime before,
            int limit) {}

    /**
     * Something that was found.
     *
     * @param match how well it answers
     * @param name its number, or its name as registered
     * @param belongsTo the order, customer or product that matches, where it does not itself
     * @param at when a reel was registered or a certificate issued; of others when they were first named
     * @param reel the reel, where it is one
     * @param certificate the certificate, where it is one of a single reel
     * @param collective the collective certificate, where it is one
     */
    public record Hit(
            Searched kind,
            Match match,
            String name,
            Optional<String> belongsTo,
            OffsetDateTime at,
            Optional<FoundReel> reel,
            Optional<LivingCertificate> certificate,
            Optional<LivingCollective> collective) {}

    private record Named(Searched kind, Match match, String name, @Nullable String owner, OffsetDateTime at) {
        String key() {
            return kind.word() + "/" + name;
        }
    }

    /** What a question finds, the best match first. */
    @Transactional
    public List<Hit> find(@Nullable String plantNamed, Wanted wanted) {
        String plant = plants.named(plantNamed, "plant");
        Set<Searched> looked = new HashSet<>(wanted.kinds());
        boolean wantsOwned = !wanted.question().isEmpty()
                && (looked.contains(Searched.REEL) || looked.contains(Searched.CERTIFICATE));
        // Who asks for reels alone may give their order: owners are looked for whatever is wanted, at any time.
        Set<Searched> owners = wantsOwned ? Set.of(Searched.ORDER, Searched.CUSTOMER, Searched.PRODUCT) : Set.of();
        List<Named> named = named(plant, wanted, looked, wanted.from(), wanted.before());
        Map<String, Named> all = new LinkedHashMap<>();
        named.stream().limit(wanted.limit()).forEach(one -> all.put(one.key(), one));
        if (wantsOwned && all.size() < wanted.limit()) {
            named(plant, wanted, owners, null, null).stream()
                    .limit(MOST_OWNERS)
                    .flatMap(owner -> owned(plant, owner, wanted).stream())
                    .filter(one -> wanted.kinds().contains(one.kind()))
                    .limit(wanted.limit())
                    .forEach(one -> all.putIfAbsent(one.key(), one));
        }
        return hits(plant, all.values().stream().limit(wanted.limit()).toList());
    }

    private List<Named> named(
            String plant,
            Wanted wanted,
            Collection<Searched> kinds,
            @Nullable OffsetDateTime from,
            @Nullable OffsetDateTime before) {
        List<Found> found = index.find(plant, kinds, wanted.question(), from, before, wanted.limit());
        Set<String> known = new HashSet<>(orders.known(
                plant,
                found.stream()
                        .filter(one -> one.kind() == Searched.ORDER)
                        .map(Found::name)
                        .collect(Collectors.toSet())));
        return found.stream()
                .filter(one -> one.kind() != Searched.ORDER || known.contains(one.name()))
                .flatMap(one -> match(one, wanted.question())
                        .map(match -> new Named(one.kind(), match, one.name(), null, one.time()))
                        .stream())
                .sorted(BEST_FIRST)
                .distinct()
                .toList();
    }

    private static Optional<Match> match(Found found, Question question) {
        return question.isEmpty() ? Optional.of(Match.BELONGING) : Match.of(found.name(), question);
    }

    /** The newest reels and certificates of an order, a customer or a product. */
    private List<Named> owned(String plant, Named owner, Wanted wanted) {
        List<Named> owned = new ArrayList<>();
        if (wanted.kinds().contains(Searched.REEL)) {
            orders.reelsOf(plant, owner(owner.kind()), owner.name(), wanted.from(), wanted.before(), wanted.limit())
                    .forEach(reel ->
                            owned.add(new Named(Searched.REEL, Match.BELONGING, reel, owner.name(), owner.at())));
        }
        if (wanted.kinds().contains(Searched.CERTIFICATE) && owner.kind() != Searched.PRODUCT) {
            CertificateFilter filter = owner.kind() == Searched.ORDER
                    ? CertificateFilter.ofOrder(owner.name(), wanted.from(), wanted.before())
                    : CertificateFilter.ofCustomer(owner.name(), wanted.from(), wanted.before());
            certificates
                    .list(plant, filter, wanted.limit())
                    .forEach(one -> owned.add(new Named(
                            Searched.CERTIFICATE, Match.BELONGING, one.number(), owner.name(), one.issued())));
        }
        return owned;
    }

    private static Orders.Owner owner(Searched kind) {
        return switch (kind) {
            case ORDER -> Orders.Owner.ORDER;
            case CUSTOMER -> Orders.Owner.CUSTOMER;
            case PRODUCT -> Orders.Owner.PRODUCT;
            case REEL, CERTIFICATE -> throw new IllegalArgumentException("nothing belongs to a " + kind.word());
        };
    }

    private List<Hit> hits(String plant, List<Named> named) {
        Map<String, FoundReel> reelOf = reels.among(plant, names(named, Searched.REEL)).stream()
                .collect(Collectors.toMap(found -> found.line().reel().id(), Function.identity()));
        List<IssuedCertificate> issued = certificates.newestOf(plant, names(named, Searched.CERTIFICATE));
        Map<String, LivingCertificate> certificateOf = new HashMap<>();
        lives.of(plant, issued)
                .forEach(one -> certificateOf.put(one.certificate().number(), one));
        Map<String, LivingCollective> collectiveOf = collectives
                .of(
                        plant,
                        names(named, Searched.CERTIFICATE).stream()
                                .filter(number -> !certificateOf.containsKey(number))
                                .toList())
                .stream()
                .collect(Collectors.toMap(one -> one.certificate().number(), Function.identity()));
        return named.stream()
                .map(one -> new Hit(
                        one.kind(),
                        one.match(),
                        one.name(),
                        Optional.ofNullable(one.owner()),
                        one.at(),
                        one.kind() == Searched.REEL ? Optional.ofNullable(reelOf.get(one.name())) : Optional.empty(),
                        one.kind() == Searched.CERTIFICATE
                                ? Optional.ofNullable(certificateOf.get(one.name()))
                                : Optional.empty(),
                        one.kind() == Searched.CERTIFICATE
                                ? Optional.ofNullable(collectiveOf.get(one.name()))
                                : Optional.empty()))
                .toList();
    }

    private static List<String> names(List<Named> named, Searched kind) {
        return named.stream().filter(one -> one.kind() == kind).map(Named::name).toList();
    }
}
