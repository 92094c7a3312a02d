package dev.reelproof.store.lot.admission;

import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.LotJson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** The registered runs of steps. */
@ApplicationScoped
public class StepRuns {
    private final Session session;

    StepRuns(Session session) {
        this.session = session;
    }

    private record Row(
            String id,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String line,
            @Nullable String operator,
            @Nullable String shift,
            @Nullable Instant started,
            @Nullable Instant finished,
            String settings) {
        StepRun run() {
            return new StepRun(
                    new RunId(id),
                    step,
                    machine,
                    line,
                    operator,
                    shift,
                    UtcTimes.utcOrNull(started),
                    UtcTimes.utcOrNull(finished),
                    LotJson.settings(settings));
        }
    }

    /** The run of that identifier. */
    @Transactional
    public Optional<StepRun> byId(String plant, RunId id) {
        return Optional.ofNullable(byIds(plant, List.of(id)).get(id));
    }

    /** The registered runs among these. */
    @Transactional
    public Map<RunId, StepRun> byIds(String plant, Collection<RunId> ids) {
        Map<RunId, StepRun> runs = new TreeMap<>();
        if (!ids.isEmpty()) {
            session.createNativeQuery(
                            """
                            select id, step, machine, line, operator, shift, started, finished, cast(settings as text)
                            from step_run where plant = :plant and id = any(:ids)""",
                            Row.class)
                    .setParameter("plant", plant)
                    .setParameter("ids", ids.stream().map(RunId::value).toArray(String[]::new))
                    .getResultList()
                    .forEach(row -> runs.put(new RunId(row.id()), row.run()));
        }
        return runs;
    }
}
