package dev.reelproof.pdf;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.record.TestRecord;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Writes a record as {@code certified-result.schema.json} describes it: what was measured and found, nothing of customer, order or
 * number, so that each issue of a certificate has the same. The same record gives the same bytes.
 *
 * <p>Points of sweeps have seven significant digits, as an IEEE 754 single has; figures of findings are written in full.
 */
public final class ResultJson {
    private static final JsonFactory JSON = new JsonFactory();

    private final JsonGenerator out;

    private ResultJson(JsonGenerator out) {
        this.out = out;
    }

    /** The result of a record, to attach to its certificate. */
    public static ResultAttachment attachment(TestRecord record, List<CorrectedSweep> sweeps) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (JsonGenerator out = JSON.createGenerator(bytes)) {
            new ResultJson(out).write(record, sweeps);
        } catch (IOException e) {
            throw new UncheckedIOException("the result of record " + record.id() + " cannot be written", e);
        }
        return new ResultAttachment(bytes.toByteArray(), record.finished());
    }

    private void write(TestRecord record, List<CorrectedSweep> sweeps) throws IOException {
        out.writeStartObject();
        out.writeNumberField("version", 1);
        out.writeStringField("plant", record.plant());
        out.writeStringField("record", record.id().toString());
        out.writeStringField("sourceSha256", record.sourceSha256());
        out.writeStringField("reel", record.reel());
        out.writeNumberField("attempt", record.attempt());
        product(record.product());
        out.writeNumberField("lengthMetres", record.length().metres());
        out.writeNumberField("temperatureCelsius", record.temperature().celsius());
        time("started", record.started());
        time("finished", record.finished());
        optional("station", record.station());
        optional("technician", record.technician());
        equipment(record.equipment());
        judgement(record.judgement());
        sweeps(sweeps);
        out.writeEndObject();
    }

    private void optional(String name, @Nullable String text) throws IOException {
        if (text != null) {
            out.writeStringField(name, text);
        }
    }

    private void time(String name, @Nullable OffsetDateTime time) throws IOException {
        optional(name, time == null ? null : time.toString());
    }

    private void product(Product product) throws IOException {
        out.writeObjectFieldStart("product");
        out.writeStringField("code", product.id());
        out.writeStringField("description", product.description());
        out.writeStringField("gauge", product.gauge());
        out.writeNumberField("pairs", product.pairs());
        out.writeEndObject();
    }

    private void equipment(List<Equipment> equipment) throws IOException {
        out.writeArrayFieldStart("equipment");
        for (Equipment each : equipment) {
            out.writeStartObject();
            out.writeStringField("id", each.id());
            optional(
                    "calibrationDue",
                    each.calibrationDue() == null ? null : each.calibrationDue().toString());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void judgement(Judgement judgement) throws IOException {
        out.writeObjectFieldStart("limitSet");
        out.writeStringField("id", judgement.limitSet());
        out.writeNumberField("revision", judgement.revision());
        out.writeStringField("sha256", judgement.limitSetSha256());
        out.writeEndObject();
        out.writeStringField("engine", judgement.engine());
        out.writeStringField("verdict", judgement.verdict().word());
        out.writeArrayFieldStart("findings");
        for (Finding finding : judgement.findings()) {
            finding(finding);
        }
        out.writeEndArray();
    }

    private void finding(Finding finding) throws IOException {
        out.writeStartObject();
        out.writeStringField("requirement", finding.requirement());
        out.writeStringField("property", finding.property().id());
        out.writeStringField("outcome", finding.outcome().word());
        optional("reason", finding.reason());
        out.writeNumberField("points", finding.points());
        Figure figure = finding.figure();
        if (figure != null) {
            figure(figure);
        }
        out.writeEndObject();
    }

    private void figure(Figure figure) throws IOException {
        out.writeObjectFieldStart("worst");
        subject(figure.subject());
        if (figure.megahertz() != null) {
            out.writeNumberField("megahertz", figure.megahertz());
        }
        if (figure.measured() != null) {
            out.writeNumberField("measured", figure.measured());
        }
        optional("measuredUnit", figure.measuredUnit());
        out.writeNumberField("corrected", figure.value());
        out.writeNumberField("judged", figure.judged());
        out.writeNumberField("limit", figure.limit());
        out.writeNumberField("margin", figure.margin());
        out.writeStringField("unit", figure.unit());
        out.writeBooleanField("derived", figure.derived());
        out.writeEndObject();
    }

    private void subject(Subject subject) throws IOException {
        number("pair", subject.pair());
        number("partner", subject.partner());
        optional(
                "conductor",
                subject.conductor() == null ? null : subject.conductor().letter());
        optional("end", subject.end() == null ? null : subject.end().word());
        number("sample", subject.sample());
    }

    private void number(String name, @Nullable Integer number) throws IOException {
        if (number != null) {
            out.writeNumberField(name, number);
        }
    }

    /** Each grid once, then the sweeps, which name theirs by its place. */
    private void sweeps(List<CorrectedSweep> sweeps) throws IOException {
        Map<FrequencyGrid, Integer> grids = new LinkedHashMap<>();
        sweeps.forEach(sweep -> grids.putIfAbsent(sweep.grid(), grids.size()));
        out.writeArrayFieldStart("gridsMegahertz");
        for (FrequencyGrid grid : grids.keySet()) {
            points(grid.toArray());
        }
        out.writeEndArray();
        out.writeArrayFieldStart("sweeps");
        for (CorrectedSweep sweep : sweeps) {
            out.writeStartObject();
            out.writeStringField("property", sweep.property().id());
            subject(sweep.subject());
            out.writeNumberField("grid", Objects.requireNonNull(grids.get(sweep.grid())));
            out.writeBooleanField("derived", sweep.derived());
            out.writeStringField("measuredUnit", sweep.property().canonicalUnit());
            out.writeFieldName("measured");
            points(sweep.measured());
            out.writeStringField("unit", sweep.unit());
            out.writeFieldName("corrected");
            points(sweep.corrected());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private void points(double[] values) throws IOException {
        out.writeStartArray();
        for (double value : values) {
            if (Double.isFinite(value)) {
                out.writeNumber((float) value);
            } else {
                out.writeNull(); // Not measured there.
            }
        }
        out.writeEndArray();
    }
}
