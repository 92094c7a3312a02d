package dev.reelproof.api.lot;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.intake.Identifier;
import dev.reelproof.intake.lot.LotReader;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A registered lot, as the HTTP contract has it. */
record LotAnswer(
        String id,
        String plant,
        String kind,
        Quantity quantity,
        OffsetDateTime made,
        @Nullable String step,
        @Nullable String machine,
        List<Input> inputs,
        @Nullable String run,
        @Nullable String line,
        @Nullable String operator,
        @Nullable String shift,
        @Nullable OffsetDateTime started,
        @Nullable OffsetDateTime finished,
        @Schema(type = SchemaType.OBJECT, description = "a word, a number, or a value with its unit, by name")
                Map<String, Object> settings,
        List<Sample> samples,
        List<Implausible> implausible,
        OffsetDateTime registered) {

    /** What went into the lot. */
    record Input(
            String lot, Quantity quantity, @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Position position) {}

    /** Which stretch of a parent became which stretch of a lot; one end above the other means that they run against each other. */
    record Position(Quantity from, Quantity to, Quantity onParentFrom, Quantity onParentTo) {
        static @Nullable Position of(@Nullable Placement placement) {
            return placement == null
                    ? null
                    : new Position(
                            new Quantity(placement.from(), placement.unit()),
                            new Quantity(placement.to(), placement.unit()),
                            new Quantity(placement.onParentFrom(), placement.onParentUnit()),
                            new Quantity(placement.onParentTo(), placement.onParentUnit()));
        }
    }

    /** What was measured on the lot while it was made. */
    @Schema(name = "LotSample")
    record Sample(
            String property,
            double value,
            String unit,
            @Schema(description = "where along the lot, or when") @Nullable Object at,
            @Nullable OffsetDateTime taken) {
        static Sample of(dev.reelproof.genealogy.Sample sample) {
            Double at = sample.at();
            String atUnit = sample.atUnit();
            return new Sample(
                    sample.property(),
                    sample.value(),
                    sample.unit(),
                    at == null || atUnit == null ? sample.taken() : new Quantity(at, atUnit),
                    sample.taken());
        }
    }

    /** What can hardly be so; {@code parent} is absent when it is about all inputs together. */
    record Implausible(@Nullable String parent, String message) {
        static List<Implausible> of(List<Implausibility> implausible) {
            if (implausible.isEmpty()) {
                return List.of(); // of almost every lot, and there may be a hundred thousand
            }
            return implausible.stream()
                    .map(one -> new Implausible(
                            one.parent() == null ? null : one.parent().value(), one.message()))
                    .toList();
        }
    }

    static Quantity asSent(Amount amount) {
        return new Quantity(amount.value(), amount.unit());
    }

    static LotAnswer of(RegisteredLot registered) {
        Lot lot = registered.lot();
        StepRun run = lot.run();
        return new LotAnswer(
                lot.id().value(),
                lot.plant(),
                lot.kind().word(),
                asSent(lot.quantity()),
                lot.made(),
                lot.step(),
                lot.machine(),
                lot.inputs().stream().map(LotAnswer::input).toList(),
                run == null ? null : run.id().value(),
                run == null ? null : run.line(),
                run == null ? null : run.operator(),
                run == null ? null : run.shift(),
                run == null ? null : run.started(),
                run == null ? null : run.finished(),
                run == null ? Map.of() : settings(run.settings()),
                lot.samples().stream().map(Sample::of).toList(),
                Implausible.of(registered.implausible()),
                registered.registered());
    }

    private static Input input(LotInput input) {
        return new Input(input.lot().value(), asSent(input.quantity()), Position.of(input.placement()));
    }

    /** Settings as reports spell them. */
    static Map<String, Object> settings(Map<String, Setting> settings) {
        Map<String, Object> answer = new TreeMap<>();
        settings.forEach((name, setting) -> answer.put(name, asSpelt(setting)));
        return answer;
    }

    private static Object asSpelt(Setting setting) {
        String text = setting.text();
        if (text != null) {
            return text;
        }
        String unit = setting.unit();
        return unit == null ? (Object) setting.number() : new Quantity(setting.number(), unit);
    }

    /** The report that registers a lot, for the description of the API; {@link LotReader} reads it. */
    @Schema(name = "LotReport")
    record Report(
            @Schema(required = true, pattern = Identifier.PATTERN) String id,
            @Schema(pattern = Identifier.PATTERN, description = "the home plant when left out") @Nullable String plant,
            @Schema(required = true, examples = "insulated-conductor") String kind,
            @Schema(required = true) Quantity quantity,
            @Schema(required = true, description = "may be left out beside 'finished'") OffsetDateTime made,
            @Nullable String step,
            @Nullable String machine,
            @Nullable List<Input> inputs,
            @Schema(
                            pattern = Identifier.PATTERN,
                            description =
                                    "the run of the step; lots that name one run tell the same of it. The lot's own"
                                            + " identifier when left out")
                    @Nullable
                    String run,
            @Nullable String line,
            @Nullable String operator,
            @Nullable String shift,
            @Nullable OffsetDateTime started,
            @Nullable OffsetDateTime finished,
            @Schema(type = SchemaType.OBJECT, description = "a word, a number, or a value with its unit, by name")
                    @Nullable
                    Map<String, Object> settings,
            @Nullable List<Sample> samples) {}
}
