package dev.reelproof.intake.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.ProcessStep;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import dev.reelproof.quantity.ReadingUnit;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Reads a lot's report, as the HTTP contract has it.
 *
 * <p>The step is a free word in a report that tells no more than step and machine; with anything more of the run, and in bulk, it is
 * one of {@link ProcessStep}.
 */
public final class LotReader {
    private static final String DOCUMENT = "lot";
    private static final int LONGEST_NAME = 100;
    private static final int LONGEST_KIND = 64;
    private static final int LONGEST_UNIT = 32;

    private static final String[] KEYS = {
        "id",
        "plant",
        "kind",
        "quantity",
        "made",
        "step",
        "machine",
        "inputs",
        "run",
        "line",
        "operator",
        "shift",
        "started",
        "finished",
        "settings",
        "samples"
    };

    private static final List<String> OF_A_RUN =
            List.of("run", "line", "operator", "shift", "started", "finished", "settings");

    private final Faults faults = new Faults();
    private final SentObject sent;

    private LotReader(byte[] json) {
        sent = SentObject.read(DOCUMENT, json, faults).allow(KEYS).require("id", "kind", "quantity");
    }

    /**
     * The lot that a report tells of.
     *
     * @param home gives the plant that is meant when the report names none; asked only then
     * @param served the plants that it may name
     * @throws IntakeException when the report is not one, with a pointer for every fault
     */
    public static Lot read(byte[] json, Supplier<String> home, List<String> served) {
        return new LotReader(json).lot(home, served, false);
    }

    /**
     * The lot that a report among many tells of.
     *
     * @param home the plant that is meant when the report names none
     * @param served the plants that it may name
     * @throws IntakeException when the report is not one, with a pointer for every fault
     */
    public static Lot readInBulk(byte[] json, String home, List<String> served) {
        return new LotReader(json).lot(() -> home, served, true);
    }

    private Lot lot(Supplier<String> home, List<String> served, boolean inBulk) {
        Optional<LotId> id = sent.identifier("id").map(LotId::new);
        Optional<String> plant = sent.has("plant") ? sent.identifier("plant") : Optional.of(home.get());
        plant.filter(name -> !served.contains(name))
                .ifPresent(name -> sent.fault(
                        "plant",
                        "unknown plant '" + name + "'; this installation serves " + String.join(", ", served)));
        Optional<LotKind> kind = sent.text("kind", LONGEST_KIND)
                .flatMap(word -> faults.attempt(sent.pointer("kind"), () -> LotKind.named(word)));
        Optional<Amount> quantity = sent.quantity("quantity", Amount::new);
        Optional<OffsetDateTime> finished = sent.time("finished");
        Optional<OffsetDateTime> made = sent.has("made") ? sent.time("made") : finished;
        if (!sent.has("made") && !sent.has("finished")) {
            sent.require("made");
        }
        String step = name("step");
        String machine = name("machine");
        List<LotInput> inputs = inputs();
        List<Sample> samples = samples();
        Map<String, Setting> settings = settings();
        boolean tellsOfItsRun = OF_A_RUN.stream().anyMatch(sent::has);
        boolean isOfNewShape = inBulk
                || tellsOfItsRun
                || !samples.isEmpty()
                || inputs.stream().map(LotInput::placement).anyMatch(Objects::nonNull);
        if (step != null && isOfNewShape) {
            faults.attempt(sent.pointer("step"), () -> ProcessStep.named(step));
        }
        Optional<RunId> run =
                sent.has("run") ? sent.identifier("run").map(RunId::new) : id.map(own -> new RunId(own.value()));
        String line = name("line");
        String operator = name("operator");
        String shift = name("shift");
        Optional<OffsetDateTime> started = sent.time("started");
        faults.refuseIfAny();
        Optional<StepRun> stepRun = tellsOfItsRun
                ? faults.attempt(
                        sent.pointer("run"),
                        () -> new StepRun(
                                run.orElseThrow(),
                                step,
                                machine,
                                line,
                                operator,
                                shift,
                                started.orElse(null),
                                finished.orElse(null),
                                settings))
                : Optional.empty();
        faults.refuseIfAny();
        Optional<Lot> lot = faults.attempt(
                DOCUMENT,
                () -> new Lot(
                        id.orElseThrow(),
                        plant.orElseThrow(),
                        kind.orElseThrow(),
                        quantity.orElseThrow(),
                        made.orElseThrow(),
                        step,
                        machine,
                        inputs,
                        stepRun.orElse(null),
                        samples));
        faults.refuseIfAny();
        return lot.orElseThrow();
    }

    private @Nullable String name(String key) {
        return sent.text(key, LONGEST_NAME).orElse(null);
    }

    private List<LotInput> inputs() {
        List<LotInput> inputs = new ArrayList<>();
        for (SentObject input : sent.objects("inputs")) {
            input.allow("lot", "quantity", "position").require("lot", "quantity");
            Optional<LotId> parent = input.identifier("lot").map(LotId::new);
            Optional<Amount> taken = input.quantity("quantity", Amount::new);
            Placement placement =
                    input.object("position").flatMap(this::placement).orElse(null);
            if (parent.isPresent() && taken.isPresent()) {
                inputs.add(new LotInput(parent.get(), taken.get(), placement));
            }
        }
        return inputs;
    }

    /** A place as sent. */
    private record Mark(double value, String unit) {}

    private Optional<Placement> placement(SentObject position) {
        position.allow("from", "to", "onParentFrom", "onParentTo").require("from", "to", "onParentFrom", "onParentTo");
        Optional<Mark> from = position.quantity("from", Mark::new);
        Optional<Mark> to = position.quantity("to", Mark::new);
        Optional<Mark> onParentFrom = position.quantity("onParentFrom", Mark::new);
        Optional<Mark> onParentTo = position.quantity("onParentTo", Mark::new);
        if (Stream.of(from, to, onParentFrom, onParentTo).anyMatch(Optional::isEmpty)
                || !haveOneUnit(position, from.get(), "to", to.get())
                || !haveOneUnit(position, onParentFrom.get(), "onParentTo", onParentTo.get())) {
            return Optional.empty();
        }
        return faults.attempt(
                position.pointer(),
                () -> new Placement(
                        from.get().value(),
                        to.get().value(),
                        from.get().unit(),
                        onParentFrom.get().value(),
                        onParentTo.get().value(),
                        onParentFrom.get().unit()));
    }

    private static boolean haveOneUnit(SentObject position, Mark from, String key, Mark to) {
        if (from.unit().equals(to.unit())) {
            return true;
        }
        position.fault(
                key,
                "is in " + to.unit() + ", and its beginning in " + from.unit() + "; give both ends of a stretch in one"
                        + " unit");
        return false;
    }

    private List<Sample> samples() {
        List<Sample> samples = new ArrayList<>();
        for (SentObject sample : sent.objects("samples")) {
            sample.allow("property", "value", "unit", "at", "taken").require("property", "value", "unit");
            Optional<String> property = sample.text("property", LONGEST_KIND);
            Optional<Double> value = sample.number("value");
            Optional<String> unit = sample.text("unit", LONGEST_UNIT);
            unit.ifPresent(text -> faults.attempt(sample.pointer("unit"), () -> ReadingUnit.parse(text)));
            // "at" is a time, or a place along the lot; with the place, "taken" may give the time too
            Optional<OffsetDateTime> at = sample.isText("at") ? sample.time("at") : sample.time("taken");
            Optional<Mark> along = sample.isText("at") ? Optional.empty() : sample.quantity("at", Mark::new);
            if (property.isPresent() && value.isPresent() && unit.isPresent()) {
                faults.attempt(
                                sample.pointer(),
                                () -> new Sample(
                                        property.get(),
                                        value.get(),
                                        unit.get(),
                                        at.orElse(null),
                                        along.map(Mark::value).orElse(null),
                                        along.map(Mark::unit).orElse(null)))
                        .ifPresent(samples::add);
            }
        }
        return samples;
    }

    private Map<String, Setting> settings() {
        Map<String, Setting> settings = new TreeMap<>();
        sent.object("settings").ifPresent(object -> {
            for (String key : Set.copyOf(object.keys())) {
                setting(object, key).ifPresent(setting -> settings.put(key, setting));
            }
        });
        return settings;
    }

    /** A word, a number, or a value with its unit. */
    private static Optional<Setting> setting(SentObject settings, String key) {
        if (settings.isText(key)) {
            return settings.text(key, LONGEST_NAME).map(Setting::ofText);
        }
        if (settings.isNumber(key)) {
            return settings.number(key).map(number -> Setting.ofNumber(number, null));
        }
        return settings.quantity(key, Setting::ofNumber);
    }
}
