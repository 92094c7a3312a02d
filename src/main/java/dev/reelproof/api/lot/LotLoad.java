package dev.reelproof.api.lot;

import dev.reelproof.access.Caller;
import dev.reelproof.app.Plants;
import dev.reelproof.app.lot.LoadBrokeOffException;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.lot.LotReader;
import dev.reelproof.intake.lot.NumberedReport;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.store.lot.LotLoading;
import dev.reelproof.store.lot.LotLoading.Fate;
import dev.reelproof.store.lot.LotLoading.Report;
import io.quarkus.security.ForbiddenException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One load of many reports: read one after the other, kept some at a time, each time in one transaction. What it answers was
 * committed; what was committed stays, whatever happens to the rest.
 */
final class LotLoad {
    private static final int MOST_AT_ONCE = 1_000;
    private static final int MOST_BYTES_AT_ONCE = 4 * 1024 * 1024;

    private final LotLoading loading;
    private final Caller caller;
    private final String home;
    private final List<String> served;

    private final List<LoadAnswer.Refused> refused = new ArrayList<>();
    private final List<Numbered> batch = new ArrayList<>();
    private final Map<Key, List<Integer>> waiting = new LinkedHashMap<>();
    private int batchBytes;
    private int accepted;
    private int keptTo;

    private record Numbered(int line, Report report) {}

    private record Key(String plant, LotId lot) {}

    LotLoad(LotLoading loading, Caller caller, Plants plants) {
        this.loading = loading;
        this.caller = caller;
        this.home = plants.named(null, "plant");
        this.served = plants.served();
    }

    LoadAnswer load(Iterator<NumberedReport> reports) {
        int line = 0;
        try {
            while (reports.hasNext()) {
                NumberedReport report = reports.next();
                line = report.line();
                read(report);
                if (batch.size() >= MOST_AT_ONCE || batchBytes >= MOST_BYTES_AT_ONCE) {
                    keep(line);
                }
            }
            keep(line);
        } catch (RuntimeException e) {
            throw new LoadBrokeOffException(
                    "The load broke off. Up to line " + keptTo + " it is kept: " + accepted + " registered, "
                            + waiting()
                            + " waiting, "
                            + refused.stream()
                                    .filter(one -> one.line() <= keptTo)
                                    .count()
                            + " refused; nothing after that line is. Send all of it again: what is kept is not kept"
                            + " twice.",
                    e);
        }
        refused.sort(Comparator.comparingInt(LoadAnswer.Refused::line));
        return new LoadAnswer(accepted, waiting(), refused);
    }

    private int waiting() {
        return waiting.values().stream().mapToInt(List::size).sum();
    }

    private void read(NumberedReport numbered) {
        if (numbered.fault() != null) {
            refused.add(new LoadAnswer.Refused(numbered.line(), numbered.fault()));
            return;
        }
        try {
            Lot lot = LotReader.readInBulk(numbered.json(), home, served);
            caller.requirePlant(lot.plant());
            batch.add(new Numbered(
                    numbered.line(),
                    new Report(lot, Upload.ofDocument(numbered.json()).sha256())));
            batchBytes += numbered.json().length;
        } catch (IntakeException | ForbiddenException e) {
            refused.add(new LoadAnswer.Refused(numbered.line(), e.getMessage()));
        }
    }

    private void keep(int line) {
        Map<String, List<Numbered>> byPlant = new LinkedHashMap<>();
        batch.forEach(one -> byPlant.computeIfAbsent(one.report().lot().plant(), plant -> new ArrayList<>())
                .add(one));
        byPlant.forEach(this::keep);
        batch.clear();
        batchBytes = 0;
        keptTo = line;
    }

    private void keep(String plant, List<Numbered> reports) {
        LotLoading.Loaded loaded = loading.takeMany(
                plant, reports.stream().map(Numbered::report).toList(), OffsetDateTime.now(ZoneOffset.UTC));
        for (int i = 0; i < reports.size(); i++) {
            Numbered one = reports.get(i);
            LotLoading.Outcome outcome = loaded.outcomes().get(i);
            Fate fate = outcome.fate();
            if (fate == Fate.REGISTERED || fate == Fate.KNOWN) {
                accepted++;
            } else if (fate == Fate.WAITING) {
                waiting.computeIfAbsent(new Key(plant, one.report().lot().id()), key -> new ArrayList<>())
                        .add(one.line());
            } else {
                refused.add(new LoadAnswer.Refused(
                        one.line(), "lot " + one.report().lot().id() + ", " + outcome.reason()));
            }
        }
        for (LotId lot : loaded.joined()) {
            accepted += waiting.getOrDefault(new Key(plant, lot), List.of()).size();
            waiting.remove(new Key(plant, lot));
        }
        loaded.refusedLater().forEach((lot, reason) -> {
            List<Integer> lines = waiting.remove(new Key(plant, lot));
            if (lines != null) {
                lines.forEach(at -> refused.add(new LoadAnswer.Refused(at, "lot " + lot + ", " + reason)));
            }
        });
    }
}
