package dev.reelproof.store.order;

import dev.reelproof.certificate.HandOffLine;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** What belongs to a customer order, a customer or a product. */
@ApplicationScoped
public class Orders {
    private static final String REELS = "select id from reel where plant = :plant and %s = :name";
    private static final String NEWEST = " order by registered desc, id limit :limit";

    private final Session session;

    Orders(Session session) {
        this.session = session;
    }

    /** What reels are looked up by. */
    public enum Owner {
        ORDER("order_number"),
        CUSTOMER("customer"),
        PRODUCT("product");

        private final String column;

        Owner(String column) {
            this.column = column;
        }
    }

    /**
     * The numbers of reels that belong to something of exactly that name, the newest first.
     *
     * @param from registered then or later; at any time when null
     * @param before registered earlier; at any time when null
     */
    @Transactional
    public List<String> reelsOf(
            String plant,
            Owner owner,
            String name,
            @Nullable OffsetDateTime from,
            @Nullable OffsetDateTime before,
            int limit) {
        NativeQuery<String> query = session.createNativeQuery(
                        REELS.formatted(owner.column)
                                + (from == null ? "" : " and registered >= :from")
                                + (before == null ? "" : " and registered < :before")
                                + NEWEST,
                        String.class)
                .setParameter("plant", plant)
                .setParameter("name", name)
                .setParameter("limit", limit);
        if (from != null) {
            query.setParameter("from", from.toInstant());
        }
        if (before != null) {
            query.setParameter("before", before.toInstant());
        }
        return query.getResultList();
    }

    /** Those of some orders that a reel or a certificate names. */
    @Transactional
    public List<String> known(String plant, Collection<String> orders) {
        return session.createNativeQuery(
                        """
                        select o from unnest(cast(:orders as text[])) as o
                        where exists (select from reel r where r.plant = :plant and r.order_number = o)
                           or exists (select from certificate c where c.plant = :plant and c.order_number = o)""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("orders", orders.toArray(String[]::new))
                .getResultList();
    }

    /** How many reels an order has. */
    @Transactional
    public int countReels(String plant, String order) {
        return session.createNativeQuery(
                        "select count(*) from reel where plant = :plant and order_number = :name", Long.class)
                .setParameter("plant", plant)
                .setParameter("name", order)
                .getSingleResult()
                .intValue();
    }

    /** What the newest issues of some certificates state, as kept, by reel. */
    @Transactional
    public List<HandOffLine> states(String plant, Collection<String> numbers) {
        return session.createNativeQuery(
                        """
                        select c.number, c.reel, c.content -> 'product' ->> 'code', c.content -> 'limits' ->> 'title',
                               c.content ->> 'verdict', c.pdf_sha256
                        from certificate c
                        where c.plant = :plant and c.number = any(cast(:numbers as text[]))
                          and not exists (select from certificate l
                                          where l.plant = c.plant and l.number = c.number and l.issue > c.issue)
                        order by c.reel, c.number""",
                        HandOffLine.class)
                .setParameter("plant", plant)
                .setParameter("numbers", numbers.toArray(String[]::new))
                .getResultList();
    }
}
