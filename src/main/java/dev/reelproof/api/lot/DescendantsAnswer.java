package dev.reelproof.api.lot;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import dev.reelproof.api.reel.ReelDispositionResource;
import dev.reelproof.genealogy.Disposition.State;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.ReelBelow;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

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

    /** A reel with what is registered of it, and what was told last of where it is, if anything was. */
    @JsonSerialize(using = PedigreeWriting.OfReel.class)
    record Reel(
            String reel,
            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String order,
            @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String customer,
            @JsonInclude(JsonInclude.Include.NON_NULL)
                    ReelDispositionResource.@Nullable DispositionAnswer disposition) {}

    static Reel reel(ReelBelow below) {
        return new Reel(
                below.reel().value(),
                below.order(),
                below.customer(),
                below.disposition() == null ? null : ReelDispositionResource.DispositionAnswer.of(below.disposition()));
    }

    static DescendantsAnswer of(Pedigree pedigree, List<ReelBelow> below) {
        PedigreeAnswer answer = PedigreeAnswer.of(pedigree);
        Map<State, List<Reel>> byState = new EnumMap<>(State.class);
        Map<String, List<Reel>> byRecipient = new TreeMap<>();
        for (ReelBelow one : below) {
            Reel reel = reel(one);
            byState.computeIfAbsent(one.state(), key -> new ArrayList<>()).add(reel);
            if (one.state() == State.SHIPPED) {
                byRecipient
                        .computeIfAbsent(one.disposition().recipient(), key -> new ArrayList<>())
                        .add(reel);
            }
        }
        return new DescendantsAnswer(
                answer.lots(),
                answer.links(),
                new Split(
                        below.size(),
                        byState.getOrDefault(State.IN_STOCK, List.of()),
                        byRecipient.entrySet().stream()
                                .map(entry -> new Shipment(entry.getKey(), entry.getValue()))
                                .toList(),
                        byState.getOrDefault(State.SCRAPPED, List.of())));
    }
}
