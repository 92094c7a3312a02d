package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Disposition;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.ReelBelow;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.store.UtcTimes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A row of {@link PedigreeReading}'s statement: a lot, a link or a reel. What its sort does not have is absent.
 *
 * @param sort which of the three
 * @param depth of a lot
 * @param id of a lot or reel; the parent of a link
 * @param child of a link
 * @param kind of a lot
 * @param value the quantity of a lot or link
 * @param unit the unit of the quantity
 * @param at when a lot was made, or told where a reel is
 * @param step of a lot
 * @param machine of a lot
 * @param run of a lot
 * @param positionFrom of a link, as the five after it
 * @param implausibleParents of a lot; beside each of the messages
 * @param implausibleMessages of a lot
 * @param order of a reel, as all after it
 */
record PedigreeRow(
        int sort,
        @Nullable Integer depth,
        String id,
        @Nullable String child,
        @Nullable String kind,
        @Nullable Double value,
        @Nullable String unit,
        @Nullable Instant at,
        @Nullable String step,
        @Nullable String machine,
        @Nullable String run,
        @Nullable Double positionFrom,
        @Nullable Double positionTo,
        @Nullable String positionUnit,
        @Nullable Double ontoFrom,
        @Nullable Double ontoTo,
        @Nullable String ontoUnit,
        @Nullable String @Nullable [] implausibleParents,
        String @Nullable [] implausibleMessages,
        @Nullable String order,
        @Nullable String customer,
        @Nullable String state,
        @Nullable String recipient,
        @Nullable String reason,
        @Nullable String actor) {
    static final int LOT = 1;
    static final int LINK = 2;
    static final int REEL = 3;

    Pedigree.Entry lot(String plant) {
        return new Pedigree.Entry(
                new Pedigree.Member(
                        new LotId(id),
                        plant,
                        LotKind.named(ofItsSort(kind)),
                        quantity(),
                        UtcTimes.utc(ofItsSort(at)),
                        step,
                        machine,
                        run == null ? null : new RunId(run),
                        implausible()),
                ofItsSort(depth));
    }

    private List<Implausibility> implausible() {
        if (implausibleMessages == null || implausibleParents == null) {
            return List.of();
        }
        List<Implausibility> implausible = new ArrayList<>();
        for (int i = 0; i < implausibleMessages.length; i++) {
            String parent = implausibleParents[i];
            implausible.add(new Implausibility(parent == null ? null : new LotId(parent), implausibleMessages[i]));
        }
        return implausible;
    }

    Pedigree.Link link() {
        return new Pedigree.Link(
                new LotId(id),
                new LotId(ofItsSort(child)),
                quantity(),
                PlacementColumns.read(positionFrom, positionTo, positionUnit, ontoFrom, ontoTo, ontoUnit));
    }

    private Amount quantity() {
        return new Amount(ofItsSort(value), ofItsSort(unit));
    }

    /** A column that every row of this sort has. */
    private static <T> T ofItsSort(@Nullable T column) {
        return Objects.requireNonNull(column, "a row of a pedigree has every column of its sort");
    }

    ReelBelow reel() {
        LotId reel = new LotId(id);
        return new ReelBelow(
                reel,
                order,
                customer,
                state == null
                        ? null
                        : new Disposition(
                                reel,
                                Disposition.State.named(state),
                                recipient,
                                reason,
                                ofItsSort(actor),
                                UtcTimes.utc(ofItsSort(at))));
    }
}
