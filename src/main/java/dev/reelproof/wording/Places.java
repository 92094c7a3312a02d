package dev.reelproof.wording;

import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Units;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Says where on the reel a value belongs. */
final class Places {
    private final Catalogue words;

    Places(Catalogue words) {
        this.words = words;
    }

    /** Where a figure was found: pair, combination or conductor, end, sample, frequency. */
    String of(Property property, Figure figure) {
        return of(property, figure.subject(), figure.units(), figure.megahertz());
    }

    /** Where it is least sure that a limit is met. */
    String of(Property property, Doubt doubt) {
        return of(property, doubt.subject(), doubt.units(), doubt.megahertz());
    }

    private String of(Property property, Subject subject, @Nullable Units units, @Nullable Double megahertz) {
        String place = units == null ? of(property, subject) : of(units);
        return megahertz == null ? place : place + ", " + Figures.frequency(megahertz);
    }

    /** Where a figure was found, but for its frequency. */
    String withoutFrequency(Property property, Figure figure) {
        return of(property, figure.subject(), figure.units(), null);
    }

    private String of(Units units) {
        return units.other() == null
                ? words.text("place.unit", "unit", number(units.unit()))
                : words.text("place.units", "unit", number(units.unit()), "other", number(units.other()));
    }

    /** A pair, combination or conductor with its end and sample; "reel" where there is none. */
    String of(Property property, Subject subject) {
        StringBuilder place = new StringBuilder(
                switch (subject.site(property)) {
                    case REEL -> words.text("place.reel");
                    case PAIR -> words.text("place.pair", "pair", number(subject.pair()));
                    case CONDUCTOR -> words.text(
                            "place.conductor",
                            "pair",
                            number(subject.pair()),
                            "conductor",
                            Objects.requireNonNull(subject.conductor()).letter());
                    case COMBINATION -> words.text(
                            "place.combination", "pair", number(subject.pair()), "partner", number(subject.partner()));
                    case ORDERED_COMBINATION -> words.text(
                            "place.ordered-combination",
                            "pair",
                            number(subject.pair()),
                            "partner",
                            number(subject.partner()));
                });
        if (subject.end() != null) {
            place.append(", ").append(end(subject));
        }
        if (subject.sample() != null) {
            place.append(", ").append(words.text("place.sample", "sample", number(subject.sample())));
        }
        return place.toString();
    }

    /** The name of a line in a drawing where room is short: {@code 1}, {@code 1-2}, {@code 1 from 2}; empty for the reel. */
    String shortLabel(Property property, Subject subject) {
        if (subject.pair() == null) {
            return "";
        }
        if (subject.partner() == null) {
            return number(subject.pair());
        }
        return words.text(
                subject.site(property) == Site.ORDERED_COMBINATION ? "label.ordered-combination" : "label.combination",
                "pair",
                number(subject.pair()),
                "partner",
                number(subject.partner()));
    }

    /** The name of a line in a key: {@code pair 1, far end}, {@code 1-2}, {@code 1 from 2, far end}; "reel" for the reel. */
    String label(Property property, Subject subject) {
        String name = subject.partner() == null
                ? of(property, subject.at(null).withSample(null))
                : shortLabel(property, subject);
        return subject.end() == null ? name : name + ", " + end(subject);
    }

    private String end(Subject subject) {
        return words.text("end." + Objects.requireNonNull(subject.end()).word());
    }

    private static String number(@Nullable Integer number) {
        return String.valueOf(number);
    }
}
