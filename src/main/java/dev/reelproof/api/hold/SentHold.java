package dev.reelproof.api.hold;

import dev.reelproof.api.Quantity;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.genealogy.hold.HoldTarget;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads what is sent to place and to release holds; each refusal names the place. */
final class SentHold {
    private static final int LONGEST_NAME = 200;
    private static final int LONGEST_REASON = 1_000;
    private static final String MACHINE = HoldTarget.What.MACHINE.word();
    private static final List<String> TARGETS =
            Stream.of(HoldTarget.What.values()).map(HoldTarget.What::word).toList();

    private SentHold() {}

    /**
     * A hold that is to be placed.
     *
     * @param target what is to be held
     * @param reason why
     * @param plant the plant named
     */
    record Placing(HoldTarget target, String reason, @Nullable String plant) {}

    /**
     * A release.
     *
     * @param range the stretch to be released; empty for the whole hold
     * @param reason why
     */
    record Releasing(Optional<Hold.Range> range, String reason) {}

    /** @throws IntakeException when it is no hold */
    static Placing placing(byte[] body) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read("hold", body, faults)
                .allow("lot", "reel", "run", "machine", "from", "to", "reason", "plant")
                .require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<String> plant = sent.text("plant", LONGEST_NAME);
        Optional<HoldTarget> target = target(sent);
        faults.refuseIfAny();
        return new Placing(target.orElseThrow(), reason.orElseThrow(), plant.orElse(null));
    }

    private static Optional<HoldTarget> target(SentObject sent) {
        List<String> named = TARGETS.stream().filter(sent::has).toList();
        if (named.size() != 1) {
            sent.fault("give exactly one of " + String.join(", ", TARGETS) + "; "
                    + (named.isEmpty() ? "none is given" : String.join(" and ", named) + " are given"));
            return Optional.empty();
        }
        String key = named.get(0);
        if (key.equals(MACHINE)) {
            sent.require("from", "to");
        }
        Optional<String> name = key.equals(MACHINE) ? sent.text(key, LONGEST_NAME) : sent.identifier(key);
        Optional<OffsetDateTime> from = sent.time("from");
        Optional<OffsetDateTime> to = sent.time("to");
        if (name.isEmpty() || sent.has("from") != from.isPresent() || sent.has("to") != to.isPresent()) {
            return Optional.empty();
        }
        if (key.equals(MACHINE) && (from.isEmpty() || to.isEmpty())) {
            return Optional.empty();
        }
        return sent.faults()
                .attempt(
                        sent.pointer(key),
                        () -> new HoldTarget(
                                HoldTarget.What.named(key), name.get(), from.orElse(null), to.orElse(null)));
    }

    /** @throws IntakeException when it is no release */
    static Releasing releasing(byte[] body) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read("release", body, faults)
                .allow("reason", "range")
                .require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<Hold.Range> range = sent.object("range").flatMap(SentHold::range);
        faults.refuseIfAny();
        return new Releasing(range, reason.orElseThrow());
    }

    private static Optional<Hold.Range> range(SentObject sent) {
        sent.allow("from", "to").require("from", "to");
        Optional<Quantity> from = sent.quantity("from", Quantity::new);
        Optional<Quantity> to = sent.quantity("to", Quantity::new);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        return sent.faults()
                .attempt(
                        sent.pointer("to"),
                        () -> Hold.Range.oneUnit(from.get().unit(), to.get().unit()))
                .flatMap(unit -> sent.faults()
                        .attempt(
                                sent.pointer(),
                                () -> new Hold.Range(
                                        from.get().value(), to.get().value(), unit)));
    }
}
