package dev.reelproof.store.lot;

import dev.reelproof.genealogy.CommonAncestor;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Finds what several reels were all made from. */
@ApplicationScoped
public class CommonAncestors {
    private final Session session;
    private final StatementTimeout timeout;

    CommonAncestors(Session session, StatementTimeout timeout) {
        this.session = session;
        this.timeout = timeout;
    }

    private record Row(
            String id,
            String kind,
            double value,
            String unit,
            Instant made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run,
            long reels) {
        CommonAncestor common(String plant) {
            return new CommonAncestor(
                    new LotRow(id, kind, value, unit, made, step, machine, run).member(plant), Math.toIntExact(reels));
        }
    }

    /**
     * The ancestors of several reels, those shared by most first; of more than one reel, only what at least two share.
     *
     * @param reels the reels, each once
     * @throws SearchTooLargeException when it takes too long to find
     */
    @Transactional
    public List<CommonAncestor> of(String plant, Collection<LotId> reels) {
        return timeout.within(LotSearches.LONGEST, LotSearches.TOO_LONG, () -> session
                .createNativeQuery(
                        """
                                with recursive above(reel, id) as (
                                    select r, r from unnest(cast(:reels as text[])) r
                                    union
                                    select a.reel, i.parent
                                    from above a join lot_input i on i.plant = :plant and i.child = a.id),
                                shared as (
                                    select id, count(*) as reels from above group by id having count(*) >= :least
                                    order by 2 desc, 1 limit :most)
                                select %s, s.reels from shared s join lot l on l.plant = :plant and l.id = s.id
                                order by s.reels desc, l.id"""
                                .formatted(LotRow.COLUMNS),
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("reels", Identifiers.of(reels))
                .setParameter("least", Math.min(2, reels.size()))
                .setParameter("most", LotSearches.MOST_LISTED)
                .getResultList()
                .stream()
                .map(row -> row.common(plant))
                .toList());
    }
}
