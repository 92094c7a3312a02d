package dev.reelproof.api.lot;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.reel.ReelDispositionResource;
import java.io.IOException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/**
 * Writes the lots, links and reels of a pedigree field by field: the same text that reflection would write, in half the time. An answer
 * may hold hundreds of thousands of them.
 */
final class PedigreeWriting {
    private static final int DECIMAL_BASE = 10;
    private static final int LONGEST_YEAR = 9999;

    private PedigreeWriting() {}

    static final class OfPlace extends JsonSerializer<PedigreeAnswer.Place> {
        @Override
        public void serialize(PedigreeAnswer.Place lot, JsonGenerator json, SerializerProvider any) throws IOException {
            json.writeStartObject();
            json.writeStringField("id", lot.id());
            json.writeStringField("plant", lot.plant());
            json.writeStringField("kind", lot.kind());
            json.writeNumberField("depth", lot.depth());
            write(json, "quantity", lot.quantity());
            write(json, "made", lot.made());
            json.writeStringField("step", lot.step());
            json.writeStringField("machine", lot.machine());
            json.writeStringField("run", lot.run());
            if (!lot.implausible().isEmpty()) {
                json.writePOJOField("implausible", lot.implausible());
            }
            json.writeEndObject();
        }
    }

    static final class OfLink extends JsonSerializer<PedigreeAnswer.Link> {
        @Override
        public void serialize(PedigreeAnswer.Link link, JsonGenerator json, SerializerProvider any) throws IOException {
            json.writeStartObject();
            json.writeStringField("from", link.from());
            json.writeStringField("to", link.to());
            write(json, "quantity", link.quantity());
            LotAnswer.Position position = link.position();
            if (position != null) {
                json.writeObjectFieldStart("position");
                write(json, "from", position.from());
                write(json, "to", position.to());
                write(json, "onParentFrom", position.onParentFrom());
                write(json, "onParentTo", position.onParentTo());
                json.writeEndObject();
            }
            json.writeEndObject();
        }
    }

    static final class OfReel extends JsonSerializer<DescendantsAnswer.Reel> {
        @Override
        public void serialize(DescendantsAnswer.Reel reel, JsonGenerator json, SerializerProvider any)
                throws IOException {
            json.writeStartObject();
            json.writeStringField("reel", reel.reel());
            if (reel.order() != null) {
                json.writeStringField("order", reel.order());
            }
            if (reel.customer() != null) {
                json.writeStringField("customer", reel.customer());
            }
            ReelDispositionResource.DispositionAnswer disposition = reel.disposition();
            if (disposition != null) {
                json.writeObjectFieldStart("disposition");
                json.writeStringField("state", disposition.state());
                json.writeStringField("to", disposition.to());
                json.writeStringField("reason", disposition.reason());
                json.writeStringField("actor", disposition.actor());
                write(json, "at", disposition.at());
                json.writeEndObject();
            }
            json.writeEndObject();
        }
    }

    private static void write(JsonGenerator json, String field, Quantity quantity) throws IOException {
        json.writeObjectFieldStart(field);
        json.writeNumberField("value", quantity.value());
        json.writeStringField("unit", quantity.unit());
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, String field, @Nullable OffsetDateTime time) throws IOException {
        json.writeStringField(field, time == null ? null : text(time));
    }

    /** A time as ISO 8601 has it, as {@link DateTimeFormatter#ISO_OFFSET_DATE_TIME} writes it. */
    static String text(OffsetDateTime time) {
        if (!time.getOffset().equals(ZoneOffset.UTC) || time.getYear() < 0 || time.getYear() > LONGEST_YEAR) {
            return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
        }
        char[] text = "0000-00-00T00:00:00.000000000Z".toCharArray();
        digits(text, 4, time.getYear());
        digits(text, 7, time.getMonthValue());
        digits(text, 10, time.getDayOfMonth());
        digits(text, 13, time.getHour());
        digits(text, 16, time.getMinute());
        digits(text, 19, time.getSecond());
        digits(text, text.length - 1, time.getNano());
        int end = text.length - 1;
        while (text[end - 1] == '0') {
            end--;
        }
        if (text[end - 1] == '.') {
            end--;
        }
        text[end] = 'Z';
        return new String(text, 0, end + 1);
    }

    /** Writes a number's digits before a place. */
    private static void digits(char[] text, int end, int number) {
        int i = end;
        for (int rest = number; rest > 0; rest /= DECIMAL_BASE) {
            text[--i] = (char) ('0' + rest % DECIMAL_BASE);
        }
    }
}
