package dev.reelproof.measurement;

import java.util.stream.Collectors;

/** Checks that a subject is one that a property can have. */
final class Subjects {
    private Subjects() {}

    static void requireFits(Property property, Subject subject) {
        if (!property.sites().contains(subject.site(property))) {
            throw new IllegalArgumentException(property + " belongs to a "
                    + property.sites().stream()
                            .map(site -> switch (site) {
                                case REEL -> "reel (no pair, partner or conductor)";
                                case CONDUCTOR -> "conductor (pair and conductor)";
                                case PAIR -> "pair (pair alone)";
                                case COMBINATION, ORDERED_COMBINATION -> "combination (pair and partner)";
                            })
                            .collect(Collectors.joining(" or a "))
                    + ", not to " + subject.words());
        }
        if (property.needsEnd() && subject.end() == null) {
            throw new IllegalArgumentException(property + " needs an end: near or far");
        }
        if (!property.hasEnds() && subject.end() != null) {
            throw new IllegalArgumentException(property + " has no end; leave 'end' out");
        }
        if (!property.isSampled() && subject.sample() != null) {
            throw new IllegalArgumentException(property + " is not sampled; leave 'sample' out");
        }
    }
}
