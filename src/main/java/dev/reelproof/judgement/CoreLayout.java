package dev.reelproof.judgement;

import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Subject;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which combinations of pairs lie within one unit of the core, in units that touch, or apart. */
final class CoreLayout {
    /** The largest core that is one unit without saying so (the 25-pair unit; common practice, no source). */
    private static final int LARGEST_SINGLE_UNIT = 25;

    private final Product product;
    private final List<CoreUnit> units;

    /** By pair; absent where no units are known. A large core has hundreds of thousands of combinations to ask for. */
    private final @Nullable CoreUnit[] unitOf;

    CoreLayout(Product product) {
        this.product = product;
        this.units = product.units().isEmpty() && product.pairs() <= LARGEST_SINGLE_UNIT
                ? List.of(new CoreUnit(1, 1, product.pairs(), Set.of()))
                : product.units();
        this.unitOf = new @Nullable CoreUnit[product.pairs() + 1];
        for (CoreUnit unit : units) {
            Arrays.fill(unitOf, unit.firstPair(), unit.lastPair() + 1, unit);
        }
    }

    int pairs() {
        return product.pairs();
    }

    /** Whether the units are known: stated by the product, or the core small enough to be one. */
    boolean isKnown() {
        return !units.isEmpty();
    }

    /** Whether a requirement can hold for this core at all. */
    boolean meets(Requirement requirement) {
        if (requirement.pairs().isPresent() && !requirement.pairs().get().holds(product.pairs())) {
            return false;
        }
        if (!isKnown()) {
            return true;
        }
        return switch (requirement.scope()) {
            case CORE -> requirement.unitPairs().isEmpty()
                    || units.stream().anyMatch(unit -> holdsSizeOf(requirement, unit));
            case WITHIN_UNIT -> units.stream()
                    .anyMatch(unit -> unit.lastPair() > unit.firstPair() && holdsSizeOf(requirement, unit));
            case ADJACENT_UNITS, NONADJACENT_UNITS -> units.stream()
                    .anyMatch(one -> units.stream().anyMatch(other -> between(requirement, one, other)));
        };
    }

    /** Whether a requirement counts the combination of two pairs. */
    boolean counts(Requirement requirement, int pair, int partner) {
        if (requirement.scope() == Scope.CORE && requirement.unitPairs().isEmpty()) {
            return true;
        }
        CoreUnit one = unitOf[pair];
        CoreUnit other = unitOf[partner];
        if (one == null || other == null) {
            return false;
        }
        return switch (requirement.scope()) {
            case CORE -> holdsSizeOf(requirement, one) && holdsSizeOf(requirement, other);
            case WITHIN_UNIT -> one.equals(other) && holdsSizeOf(requirement, one);
            case ADJACENT_UNITS, NONADJACENT_UNITS -> between(requirement, one, other);
        };
    }

    /** The unit of a pair, or the unit or units of a combination; empty where a subject has no pair, or no units are known. */
    Optional<Units> unitsOf(Subject subject) {
        Integer pair = subject.pair();
        CoreUnit one = pair == null ? null : unitOf[pair];
        CoreUnit other = subject.partner() == null ? one : unitOf[subject.partner()];
        return one == null || other == null ? Optional.empty() : Optional.of(Units.between(one.unit(), other.unit()));
    }

    private static boolean between(Requirement requirement, CoreUnit one, CoreUnit other) {
        boolean touch =
                one.adjacentTo().contains(other.unit()) || other.adjacentTo().contains(one.unit());
        return !one.equals(other)
                && touch == (requirement.scope() == Scope.ADJACENT_UNITS)
                && holdsSizeOf(requirement, one)
                && holdsSizeOf(requirement, other);
    }

    private static boolean holdsSizeOf(Requirement requirement, CoreUnit unit) {
        return requirement.unitPairs().isEmpty()
                || requirement.unitPairs().get().holds(unit.lastPair() - unit.firstPair() + 1);
    }
}
