package dev.reelproof.certificate.life;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.wording.CertificateWords;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** A collective certificate is worth what the least of its certificates is worth. */
class CollectiveLifeTest {
    private static final CertificateWords WORDS = Wording.english().certificates();

    private static CertificateLife life(CertificateState state) {
        return switch (state) {
            case CURRENT -> new CertificateLife(Succession.NONE, Optional.empty(), List.of());
            case IN_QUESTION -> new CertificateLife(
                    Succession.NONE, Optional.empty(), List.of(new Question.Held("hold 7 of lot AC-1: bare spots")));
            case SUPERSEDED -> new CertificateLife(
                    new Succession(Optional.of(2), Optional.empty()), Optional.empty(), List.of());
            case WITHDRAWN -> new CertificateLife(
                    Succession.NONE,
                    Optional.of(
                            new Withdrawal("wrong drum", "ben", "anna", OffsetDateTime.parse("2026-03-02T14:09:30Z"))),
                    List.of());
        };
    }

    private static CollectiveLife of(List<CertificateState> states) {
        List<CollectiveLife.Named> named = new ArrayList<>();
        for (int i = 0; i < states.size(); i++) {
            named.add(new CollectiveLife.Named("NORTH-2026-00000" + i, 1, "R-" + i, "HD6A-4P", life(states.get(i))));
        }
        return new CollectiveLife(named);
    }

    @Property
    void isCurrentOnlyWhileEachOfThemIs(@ForAll @Size(min = 1, max = 6) List<CertificateState> states) {
        CollectiveLife life = of(states);
        long notCurrent = states.stream()
                .filter(state -> state != CertificateState.CURRENT)
                .count();
        assertEquals(notCurrent == 0, life.isCurrent());
        assertTrue(states.contains(life.state()));
        assertEquals(notCurrent, life.reasons(WORDS).size());
        assertEquals(notCurrent, life.publicReasons(WORDS).size());
        assertEquals(states.contains(CertificateState.WITHDRAWN), life.state() == CertificateState.WITHDRAWN);
    }

    @Test
    void namesTheReelAndTellsAStrangerNothingOfThePlantsOwnAffairs() {
        CollectiveLife life = of(List.of(CertificateState.CURRENT, CertificateState.IN_QUESTION));
        assertEquals(CertificateState.IN_QUESTION, life.state());
        assertTrue(life.reasons(WORDS).get(0).startsWith("Reel R-1, certificate NORTH-2026-000001, is in question."));
        assertTrue(
                life.reasons(WORDS).get(0).contains("bare spots"),
                life.reasons(WORDS).toString());
        assertTrue(
                life.publicReasons(WORDS).get(0).endsWith("the plant holds the reel back"),
                life.publicReasons(WORDS).toString());
        assertEquals(
                "This collective certificate was issued here, but 1 of the 2 certificates that it names are not current."
                        + " Do not rely on it for these reels; ask the plant for a new one.",
                life.sentence(WORDS));
    }

    @Test
    void namesAtLeastOne() {
        assertThrows(IllegalArgumentException.class, () -> new CollectiveLife(List.of()));
    }
}
