package dev.reelproof.api;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a lot's report, as the HTTP contract has it. */
final class LotReader {
    private static final String DOCUMENT = "lot";
    private static final int LONGEST_NAME = 100;
    private static final int LONGEST_KIND = 64;

    private LotReader() {}

    /**
     * The lot that a report tells of.
     *
     * @param plants the plants that are served here; the home plant is meant when the report names none
     * @throws IntakeException when the report is not one, with a pointer for every fault
     */
    static Lot read(byte[] json, Plants plants) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read(DOCUMENT, json, faults)
                .allow("id", "plant", "kind", "quantity", "made", "step", "machine", "inputs")
                .require("id", "kind", "quantity", "made");
        Optional<LotId> id = sent.identifier("id").map(LotId::new);
        Optional<String> plant =
                sent.has("plant") ? sent.identifier("plant") : Optional.of(plants.named(null, "/plant"));
        plant.filter(name -> !plants.served().contains(name))
                .ifPresent(name -> sent.fault(
                        "plant",
                        "unknown plant '" + name + "'; this installation serves "
                                + String.join(", ", plants.served())));
        Optional<LotKind> kind = sent.text("kind", LONGEST_KIND)
                .flatMap(word -> faults.attempt(sent.pointer("kind"), () -> LotKind.named(word)));
        Optional<Amount> quantity = sent.quantity("quantity", Amount::new);
        Optional<OffsetDateTime> made = sent.time("made");
        String step = sent.text("step", LONGEST_NAME).orElse(null);
        String machine = sent.text("machine", LONGEST_NAME).orElse(null);
        List<LotInput> inputs = new ArrayList<>();
        for (SentObject input : sent.objects("inputs")) {
            input.allow("lot", "quantity").require("lot", "quantity");
            Optional<LotId> parent = input.identifier("lot").map(LotId::new);
            Optional<Amount> taken = input.quantity("quantity", Amount::new);
            if (parent.isPresent() && taken.isPresent()) {
                inputs.add(new LotInput(parent.get(), taken.get()));
            }
        }
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
                        inputs));
        faults.refuseIfAny();
        return lot.orElseThrow();
    }
}
