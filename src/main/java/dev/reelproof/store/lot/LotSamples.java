package dev.reelproof.store.lot;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** What was measured on lots while they were made. */
@ApplicationScoped
public class LotSamples {
    private final Session session;

    LotSamples(Session session) {
        this.session = session;
    }

    private record Row(
            String lot,
            String property,
            double value,
            String unit,
            @Nullable Instant taken,
            @Nullable Double at,
            @Nullable String atUnit) {
        LotId lotId() {
            return new LotId(lot);
        }

        Sample sample() {
            return new Sample(property, value, unit, UtcTimes.utcOrNull(taken), at, atUnit);
        }
    }

    /** The samples of each of these lots, in the order of its report; lots without samples are left out. */
    @Transactional
    public Map<LotId, List<Sample>> of(String plant, Collection<LotId> lots) {
        return session
                .createNativeQuery(
                        """
                        select lot, property, value, unit, taken, at_value, at_unit from lot_sample
                        where plant = :plant and lot = any(:lots) order by lot, ordinal""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("lots", Identifiers.of(lots))
                .getResultList()
                .stream()
                .collect(Collectors.groupingBy(Row::lotId, Collectors.mapping(Row::sample, Collectors.toList())));
    }
}
