package dev.reelproof.limit.file;

import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Scope;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads what a requirement says beyond its limit; whatever does not fit its property or statistic is a fault. */
final class ParticularsReader {
    private final Entry entry;
    private final Property property;
    private final Statistic statistic;

    private ParticularsReader(Entry entry, Property property, Statistic statistic) {
        this.entry = entry;
        this.property = property;
        this.statistic = statistic;
    }

    /**
     * The particulars of a requirement.
     *
     * @param unit the unit of the limit; absent when it was refused
     */
    static Particulars read(Entry entry, Property property, Statistic statistic, @Nullable ReadingUnit unit) {
        ParticularsReader reader = new ParticularsReader(entry, property, statistic);
        return new Particulars(
                entry.node().path("required").asBoolean(true),
                reader.leastRoundTripLoss(),
                reader.testedLength(unit),
                reader.sampling(),
                reader.each(),
                reader.per());
    }

    private OptionalDouble leastRoundTripLoss() {
        if (!entry.has("least-round-trip-loss")) {
            return OptionalDouble.empty();
        }
        if (!(property.sites().contains(Site.PAIR) && property.hasEnds())) {
            entry.fault(
                    "least-round-trip-loss",
                    property
                            + " is not of a pair seen from an end; only such a value, as return loss, depends on"
                            + " what comes back from the other end");
        }
        return OptionalDouble.of(entry.valueInFixedUnit("least-round-trip-loss"));
    }

    private Optional<Particulars.TestedLength> testedLength(@Nullable ReadingUnit unit) {
        if (!entry.has("tested-length")) {
            return Optional.empty();
        }
        if (property != Property.INSULATION_FAULTS
                || (unit != null && unit.referredTo().isEmpty())) {
            entry.fault(
                    "tested-length",
                    "only insulation-faults per conductor length, in a unit such as count/3000 m, have a tested length");
        }
        Entry tested = entry.at("tested-length");
        return Optional.ofNullable(tested.attempt(() -> new Particulars.TestedLength(
                tested.quantity("least", Length::of), tested.quantity("least-to-reject", Length::of))));
    }

    private Optional<Particulars.Sampling> sampling() {
        if (!entry.has("sampling")) {
            return Optional.empty();
        }
        if (entry.word(Per.class, "per", Per.REEL) == Per.UNIT) {
            entry.fault(
                    "sampling", "a sample of pairs stands for the whole reel; a statistic per unit takes no sample");
            return Optional.empty();
        }
        boolean onePerPair = property.sites().equals(Set.of(Site.PAIR)) && !property.isSweep();
        if (!(onePerPair && (statistic == Statistic.MEAN || statistic == Statistic.RMS_DEVIATION))) {
            entry.fault(
                    "sampling",
                    "a sample of pairs can stand for all in a mean or an rms-deviation only, and only of a property that has one"
                            + " value a pair");
        }
        Entry sampling = entry.at("sampling");
        return Optional.ofNullable(sampling.attempt(() -> new Particulars.Sampling(
                sampling.whole("pairs"), sampling.constant("lower"), sampling.constant("upper"))));
    }

    private Per per() {
        Per per = entry.word(Per.class, "per", Per.REEL);
        if (per == Per.REEL) {
            return per;
        }
        boolean combination =
                property.sites().contains(Site.COMBINATION) || property.sites().contains(Site.ORDERED_COMBINATION);
        if (statistic == Statistic.INDIVIDUAL) {
            entry.fault(
                    "per", "each value stands by itself; only a statistic, such as the mean, can be taken per unit");
        }
        if (property.sites().equals(Set.of(Site.REEL))) {
            entry.fault("per", property + " is of the whole reel; it has no pair that would lie in a unit");
        }
        if (combination && entry.word(Scope.class, "scope", Scope.CORE) == Scope.CORE) {
            entry.fault(
                    "per",
                    "a combination of pairs lies within a unit or between two; give the scope within-unit, adjacent-units or"
                            + " nonadjacent-units");
        }
        return per;
    }

    private Optional<Particulars.Each> each() {
        boolean counted = statistic == Statistic.PERCENT_OF_PAIRS;
        if (!counted) {
            entry.refuse("each", "only a percentage of pairs counts pairs by what each meets");
            return Optional.empty();
        }
        if (!entry.has("each")) {
            entry.fault("a percentage of pairs needs 'each': the limit that a pair must meet to be counted");
            return Optional.empty();
        }
        if (property.sites().equals(Set.of(Site.REEL))) {
            entry.fault("statistic", property + " is of the whole reel; there are no pairs to count");
        }
        Entry each = entry.at("each");
        ReadingUnit unit = RequirementReader.unit(each, property, Statistic.INDIVIDUAL);
        return unit == null
                ? Optional.empty()
                : Optional.of(
                        new Particulars.Each(LimitReader.oneSided(each.text("limit"), each.constant("value")), unit));
    }
}
