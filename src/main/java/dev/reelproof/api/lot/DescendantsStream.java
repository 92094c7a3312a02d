package dev.reelproof.api.lot;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.genealogy.Disposition.State;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.ReelBelow;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import org.jspecify.annotations.Nullable;

/**
 * Writes a {@link DescendantsAnswer} as its parts come: lots, links, reels in stock, scrapped, shipped by recipient, and last how many
 * reels there are. What breaks off is no JSON: the closing brace is written by {@link #end()} alone.
 */
final class DescendantsStream {
    private final JsonGenerator json;
    private final PedigreeWriting.OfPlace places = new PedigreeWriting.OfPlace();
    private final PedigreeWriting.OfLink links = new PedigreeWriting.OfLink();
    private final PedigreeWriting.OfReel reels = new PedigreeWriting.OfReel();
    private Part part = Part.LOTS;
    private @Nullable String recipient;
    private int reelCount;

    /** In the order in which they are written. */
    private enum Part {
        LOTS("lots"),
        LINKS("links"),
        IN_STOCK("inStock"),
        SCRAPPED("scrapped"),
        SHIPPED("shipped");

        private final String field;

        Part(String field) {
            this.field = field;
        }

        static Part of(State state) {
            return switch (state) {
                case IN_STOCK -> Part.IN_STOCK;
                case SCRAPPED -> Part.SCRAPPED;
                case SHIPPED -> Part.SHIPPED;
            };
        }
    }

    DescendantsStream(ObjectMapper mapper, OutputStream out) throws IOException {
        // What breaks off must stay open.
        json = mapper.createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_JSON_CONTENT);
        json.writeStartObject();
        json.writeArrayFieldStart(part.field);
    }

    void lot(Pedigree.Entry lot) {
        write(places, PedigreeAnswer.place(lot));
        if (lot.depth() == 0) {
            flush(); // the first line does not wait until a piece is full
        }
    }

    private void flush() {
        try {
            json.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void link(Pedigree.Link link) {
        goOnTo(Part.LINKS);
        write(links, PedigreeAnswer.link(link));
    }

    void reel(ReelBelow reel) {
        goOnTo(Part.of(reel.state()));
        reelCount++;
        try {
            if (part == Part.SHIPPED && !reel.disposition().recipient().equals(recipient)) {
                endShipment();
                recipient = reel.disposition().recipient();
                json.writeStartObject();
                json.writeStringField("to", recipient);
                json.writeArrayFieldStart("reels");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        write(reels, DescendantsAnswer.reel(reel));
    }

    void end() throws IOException {
        goOnTo(Part.SHIPPED);
        endShipment();
        json.writeEndArray();
        json.writeNumberField("count", reelCount);
        json.writeEndObject();
        json.writeEndObject();
        json.flush();
    }

    private void goOnTo(Part next) {
        try {
            while (part != next) {
                json.writeEndArray();
                part = Part.values()[part.ordinal() + 1];
                if (part == Part.IN_STOCK) {
                    json.writeObjectFieldStart("reels");
                }
                json.writeArrayFieldStart(part.field);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void endShipment() throws IOException {
        if (recipient != null) {
            json.writeEndArray();
            json.writeEndObject();
        }
    }

    private <T> void write(JsonSerializer<T> writer, T value) {
        try {
            writer.serialize(value, json, null);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
