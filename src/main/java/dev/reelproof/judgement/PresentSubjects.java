package dev.reelproof.judgement;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import java.util.BitSet;

/**
 * Which pairs, combinations and conductors of a core have a value of one property; of a property with ends, at the near end. A bit for each,
 * because a large core has hundreds of thousands of combinations.
 */
final class PresentSubjects {
    private static final int FORMS = 1 + Conductor.values().length;

    private final int pairs;
    private final Property property;
    private final BitSet present = new BitSet();
    private boolean empty = true;
    private boolean ofReel;

    /**
     * @param pairs pairs of the core
     */
    PresentSubjects(int pairs, Property property) {
        this.pairs = pairs;
        this.property = property;
    }

    void add(Subject subject) {
        empty = false;
        Integer pair = subject.pair();
        if (pair == null) {
            ofReel = true;
        } else if (!property.needsEnd() || subject.end() == End.NEAR) {
            present.set(slot(pair, subject));
        }
    }

    private int slot(int pair, Subject subject) {
        return slot(
                pair,
                subject.partner() == null ? 0 : subject.partner(),
                subject.conductor() == null ? 0 : 1 + subject.conductor().ordinal());
    }

    private int slot(int pair, int partner, int form) {
        return (pair * (pairs + 1) + partner) * FORMS + form;
    }

    /** Whether nothing was added at all. */
    boolean isEmpty() {
        return empty;
    }

    /** Whether there is a value of the whole reel. */
    boolean hasReel() {
        return ofReel;
    }

    /** Whether a pair has a value, or both its conductors do where the property may be one of conductors. */
    boolean hasPair(int pair) {
        return present.get(slot(pair, 0, 0))
                || (property.sites().contains(Site.CONDUCTOR)
                        && hasConductor(pair, Conductor.A)
                        && hasConductor(pair, Conductor.B));
    }

    boolean hasConductor(int pair, Conductor conductor) {
        return present.get(slot(pair, 0, 1 + conductor.ordinal()));
    }

    /** Whether a combination has a value; in either order where the property's combinations have none. */
    boolean hasCombination(int pair, int partner) {
        return present.get(slot(pair, partner, 0))
                || (!property.sites().contains(Site.ORDERED_COMBINATION) && present.get(slot(partner, pair, 0)));
    }
}
