package dev.reelproof.api.lot;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import dev.reelproof.api.Quantity;
import dev.reelproof.genealogy.Pedigree;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A lot's pedigree, as the HTTP contract has it: the lot that was asked for at depth 0, then the others, nearest first. */
record PedigreeAnswer(List<Place> lots, List<Link> links) {

    /** A lot at its depth: the least number of links from the lot that was asked for. */
    @JsonSerialize(using = PedigreeWriting.OfPlace.class)
    @Schema(name = "PedigreePlace")
    record Place(
            String id,
            String plant,
            String kind,
            int depth,
            Quantity quantity,
            OffsetDateTime made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable String run,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<LotAnswer.Implausible> implausible) {}

    /** How much of a parent went into a child. */
    @JsonSerialize(using = PedigreeWriting.OfLink.class)
    record Link(
            String from,
            String to,
            Quantity quantity,
            @JsonInclude(JsonInclude.Include.NON_NULL) LotAnswer.@Nullable Position position) {}

    static PedigreeAnswer of(Pedigree pedigree) {
        return new PedigreeAnswer(
                pedigree.lots().stream().map(PedigreeAnswer::place).toList(),
                pedigree.links().stream().map(PedigreeAnswer::link).toList());
    }

    static Link link(Pedigree.Link link) {
        return new Link(
                link.from().value(),
                link.to().value(),
                LotAnswer.asSent(link.quantity()),
                LotAnswer.Position.of(link.placement()));
    }

    static Place place(Pedigree.Entry entry) {
        Pedigree.Member lot = entry.lot();
        return new Place(
                lot.id().value(),
                lot.plant(),
                lot.kind().word(),
                entry.depth(),
                LotAnswer.asSent(lot.quantity()),
                lot.made(),
                lot.step(),
                lot.machine(),
                lot.run() == null ? null : lot.run().value(),
                LotAnswer.Implausible.of(lot.implausible()));
    }
}
