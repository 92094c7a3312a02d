package dev.reelproof.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.store.Dispositions;
import dev.reelproof.store.Dispositions.State;
import dev.reelproof.store.RegisteredReel;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A lot and what descends from it, as a pedigree, with where its reels are. */
record DescendantsAnswer(List<PedigreeAnswer.Place> lots, List<PedigreeAnswer.Link> links, Split reels) {

    /**
     * The reels by where they are. One of which nothing was told is in stock.
     *
     * @param count how many reels there are
     */
    record Split(int count, List<Reel> inStock, List<Shipment> shipped, List<Reel> scrapped) {}

    /** The reels that went to one place. */
    record Shipment(String to, List<Reel> reels) {}

    /** A reel with what is registered of it, and what was told last of where it is; null when nothing was. */
    record Reel(
            String reel,
            @JsonInclude(JsonInclude.Include.NON_NULL) String order,
            @JsonInclude(JsonInclude.Include.NON_NULL) String customer,
            @JsonInclude(JsonInclude.Include.NON_NULL) ReelDispositionResource.DispositionAnswer disposition) {}

    static DescendantsAnswer of(
            Pedigree pedigree, Map<LotId, Dispositions.Entry> latest, Map<LotId, RegisteredReel> registered) {
        PedigreeAnswer answer = PedigreeAnswer.of(pedigree);
        Map<State, List<Reel>> byState = new EnumMap<>(State.class);
        Map<String, List<Reel>> byRecipient = new TreeMap<>();
        for (LotId id : reels(pedigree)) {
            Dispositions.Entry entry = latest.get(id);
            RegisteredReel known = registered.get(id);
            State state = entry == null ? State.IN_STOCK : entry.state();
            Reel reel = new Reel(
                    id.value(),
                    known == null ? null : known.order(),
                    known == null ? null : known.customer(),
                    entry == null ? null : ReelDispositionResource.DispositionAnswer.of(entry));
            byState.computeIfAbsent(state, key -> new ArrayList<>()).add(reel);
            if (state == State.SHIPPED) {
                byRecipient
                        .computeIfAbsent(entry.recipient(), key -> new ArrayList<>())
                        .add(reel);
            }
        }
        return new DescendantsAnswer(
                answer.lots(),
                answer.links(),
                new Split(
                        byState.values().stream().mapToInt(List::size).sum(),
                        byState.getOrDefault(State.IN_STOCK, List.of()),
                        byRecipient.entrySet().stream()
                                .map(entry -> new Shipment(entry.getKey(), entry.getValue()))
                                .toList(),
                        byState.getOrDefault(State.SCRAPPED, List.of())));
    }

    /** The reels of a pedigree, in its order. */
    static List<LotId> reels(Pedigree pedigree) {
        return pedigree.lots().stream()
                .map(Pedigree.Entry::lot)
                .filter(lot -> lot.kind() == LotKind.REEL)
                .map(Pedigree.Member::id)
                .toList();
    }
}
