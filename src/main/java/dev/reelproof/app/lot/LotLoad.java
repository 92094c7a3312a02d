package dev.reelproof.app.lot;

import dev.reelproof.access.Caller;
import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.AdmissionTerms;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.genealogy.admission.LotReport;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.lot.LotReader;
import dev.reelproof.intake.lot.NumberedReport;
import dev.reelproof.intake.result.Upload;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One load of many reports: read one after the other, kept some at a time, each time in one transaction. What it answers was
 * committed; what was committed stays, whatever happens to the rest.
 */
final class LotLoad {
    private static final int MOST_AT_ONCE = 1_000;
    private static final int MOST_BYTES_AT_ONCE = 4 * 1024 * 1024;

    private final AdmitLots admit;
    private final Caller caller;
    private final Clock clock;
    private final String home;
    private final List<String> served;

    private final List<LoadResult.Refused> refused = new ArrayList<>();
    private final List<Numbered> batch = new ArrayList<>();
    private final Map<Key, List<Integer>> waiting = new LinkedHashMap<>();
    private int batchBytes;
    private int accepted;
    private int keptTo;

    private record Numbered(int line, LotReport report) {}

    private record Key(String plant, LotId lot) {}

    LotLoad(AdmitLots admit, Caller caller, Plants plants, Clock clock) {
        this.admit = admit;
        this.caller = caller;
        this.clock = clock;
        this.home = plants.named(null, "plant");
        this.served = plants.served();
    }

    /** @throws LoadBrokeOffException when it breaks off in the middle */
    LoadResult load(Iterator<NumberedReport> reports) {
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
        refused.sort(Comparator.comparingInt(LoadResult.Refused::line));
        return new LoadResult(accepted, waiting(), refused);
    }

    private int waiting() {
        return waiting.values().stream().mapToInt(List::size).sum();
    }

    private void read(NumberedReport numbered) {
        byte @Nullable [] json = numbered.json();
        if (json == null) {
            refused.add(new LoadResult.Refused(
                    numbered.line(), Objects.requireNonNull(numbered.fault(), "a line without a report has a fault")));
            return;
        }
        try {
            Lot lot = LotReader.readInBulk(json, home, served);
            caller.requirePlant(lot.plant());
            batch.add(new Numbered(
                    numbered.line(), new LotReport(lot, Upload.ofDocument(json).sha256())));
            batchBytes += json.length;
        } catch (IntakeException | PermissionDeniedException e) {
            refused.add(new LoadResult.Refused(
                    numbered.line(), Objects.requireNonNull(e.getMessage(), "a refusal says why")));
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
        AdmitLots.Admission admission = admit.many(
                plant,
                reports.stream().map(Numbered::report).toList(),
                AdmissionTerms.IN_BULK,
                OffsetDateTime.now(clock));
        for (int i = 0; i < reports.size(); i++) {
            count(plant, reports.get(i), admission.outcomes().get(i));
        }
        for (LotId lot : admission.joined()) {
            List<Integer> lines = waiting.remove(new Key(plant, lot));
            accepted += lines == null ? 0 : lines.size();
        }
        admission.refusedLater().forEach((lot, reason) -> {
            List<Integer> lines = waiting.remove(new Key(plant, lot));
            if (lines != null) {
                lines.forEach(line -> refuse(line, lot, reason));
            }
        });
    }

    private void count(String plant, Numbered one, LotOutcome outcome) {
        LotId lot = one.report().lot().id();
        switch (outcome.fate()) {
            case REGISTERED, KNOWN -> accepted++;
            case WAITING -> waiting.computeIfAbsent(new Key(plant, lot), key -> new ArrayList<>())
                    .add(one.line());
            case REFUSED, CONFLICT -> refuse(one.line(), lot, outcome.reason());
        }
    }

    private void refuse(int line, LotId lot, String reason) {
        refused.add(new LoadResult.Refused(line, "lot " + lot + ", " + reason));
    }
}
