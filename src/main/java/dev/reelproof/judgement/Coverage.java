package dev.reelproof.judgement;

import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Whether the values gathered are all that a requirement needs: every pair and combination, the whole range, a fine enough grid. */
final class Coverage {
    private final Evidence evidence;
    private final CoreLayout core;
    private final GridRule gridRule;

    Coverage(Evidence evidence, CoreLayout core, LimitSet limitSet) {
        this.evidence = evidence;
        this.core = core;
        this.gridRule = limitSet.grid();
    }

    /** What stands in the way; empty when nothing does. */
    List<Obstacle> obstacles(Requirement requirement, GatheredSeries gathered) {
        List<Obstacle> obstacles = new ArrayList<>();
        boolean byUnits = requirement.scope() != Scope.CORE
                || requirement.unitPairs().isPresent()
                || requirement.particulars().per() == Per.UNIT;
        if (byUnits && !core.isKnown()) {
            obstacles.add(new Obstacle(Obstacle.Kind.UNITS_UNKNOWN, Map.of()));
            return obstacles;
        }
        if (gathered.series().isEmpty()) {
            obstacles.add(withMissingParts(Obstacle.Kind.NO_DATA, requirement, Map.of()));
            obstacles.addAll(gathered.obstacles());
            return obstacles;
        }
        missing(requirement, gathered).ifPresent(obstacles::add);
        GridCoverage grids = new GridCoverage(gridRule, requirement);
        for (Series series : gathered.series()) {
            grids.lackedBy(series).ifPresent(obstacles::add);
        }
        obstacles.addAll(gathered.obstacles());
        return obstacles;
    }

    /**
     * What stands in the way of rejecting a reel for a figure of many values; empty when nothing does. It is all that stands in the way of
     * a pass, and the sample: pairs that stand for all while all is well must be joined by the rest when it is not.
     */
    List<Obstacle> obstaclesToFail(Requirement requirement, GatheredSeries gathered) {
        List<Obstacle> obstacles = obstacles(requirement, gathered);
        sample(requirement, gathered).ifPresent(sample -> obstacles.add(sample.obstacle(Obstacle.Kind.SAMPLE_FAILS)));
        return obstacles;
    }

    /** The pairs measured, where they stand for all. */
    Optional<SampleOfPairs> sample(Requirement requirement, GatheredSeries gathered) {
        return SampleOfPairs.of(requirement, core.pairs(), gathered).filter(SampleOfPairs::standsForAll);
    }

    private Optional<Obstacle> missing(Requirement requirement, GatheredSeries gathered) {
        PresentSubjects present = new PresentSubjects(core.pairs(), requirement.property());
        gathered.series().forEach(series -> present.add(series.subject()));
        if (requirement.property().isSampled() || present.hasReel()) {
            return Optional.empty();
        }
        List<Subject> missing = absent(requirement, requirement.property(), present);
        if (missing.isEmpty()) {
            return Optional.empty();
        }
        Optional<SampleOfPairs> sample = SampleOfPairs.of(requirement, core.pairs(), gathered);
        if (sample.isPresent()) {
            return sample.filter(some -> !some.standsForAll())
                    .map(some -> some.obstacle(Obstacle.Kind.SAMPLE_OUTSIDE_BAND));
        }
        return Optional.of(withMissingParts(
                Obstacle.Kind.PAIR_MISSING,
                requirement,
                Map.of("missing", words(requirement, requirement.property(), missing))));
    }

    private String words(Requirement requirement, Property property, List<Subject> missing) {
        PresentSubjects nothing = new PresentSubjects(core.pairs(), property);
        return new MissingParts(absent(requirement, property, nothing), missing).words();
    }

    /** What was not measured, and what keeps it from being formed from its parts; nothing of these when it has none or has them all. */
    private Obstacle withMissingParts(Obstacle.Kind kind, Requirement requirement, Map<String, String> what) {
        Map<String, String> parts = new HashMap<>(what);
        parts.put("property", requirement.property().id());
        for (Property part : requirement.property().parts()) {
            PresentSubjects present = new PresentSubjects(core.pairs(), part);
            evidence.readings(part).forEach(reading -> present.add(reading.subject()));
            evidence.sweeps(part).forEach(sweep -> present.add(sweep.subject()));
            List<Subject> missing = absent(requirement, part, present);
            if (present.isEmpty()) {
                parts.put("part", part.id());
            } else if (!missing.isEmpty()) {
                parts.put("incomplete", part.id());
                parts.put("absent", words(requirement, part, missing));
            }
        }
        return new Obstacle(kind, parts);
    }

    /**
     * The subjects that must be there and are not, of a property that is not of the reel alone; of one with ends, those at the near end.
     */
    private List<Subject> absent(Requirement requirement, Property property, PresentSubjects present) {
        End end = property.needsEnd() ? End.NEAR : null;
        List<Subject> absent = new ArrayList<>();
        Set<Site> sites = property.sites();
        for (int pair = 1; pair <= core.pairs(); pair++) {
            if (sites.contains(Site.PAIR)) {
                if (!present.hasPair(pair)) {
                    absent.add(Subject.ofPair(pair).at(end));
                }
            } else if (sites.contains(Site.CONDUCTOR)) {
                for (Conductor conductor : Conductor.values()) {
                    if (!present.hasConductor(pair, conductor)) {
                        absent.add(Subject.ofConductor(pair, conductor));
                    }
                }
            } else {
                boolean ordered = sites.contains(Site.ORDERED_COMBINATION);
                for (int partner = ordered ? 1 : pair + 1; partner <= core.pairs(); partner++) {
                    if (partner != pair
                            && core.counts(requirement, pair, partner)
                            && !present.hasCombination(pair, partner)) {
                        absent.add(Subject.ofCombination(pair, partner).at(end));
                    }
                }
            }
        }
        return absent;
    }
}
