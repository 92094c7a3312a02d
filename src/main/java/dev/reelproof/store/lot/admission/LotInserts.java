package dev.reelproof.store.lot.admission;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.admission.LotAdmission;
import dev.reelproof.genealogy.admission.LotReport;
import dev.reelproof.store.lot.JsonRows;
import dev.reelproof.store.lot.LotJson;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import org.hibernate.Session;

/** Registers lots, with one statement a table for all of them. */
@ApplicationScoped
public class LotInserts {
    private final Session session;

    LotInserts(Session session) {
        this.session = session;
    }

    /** Registers what was admitted, with the runs that were told for the first time. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void insert(String plant, LotAdmission.Decisions decided, OffsetDateTime now) {
        List<LotReport> reports =
                decided.admitted().stream().map(LotAdmission.Admitted::report).toList();
        insertRuns(plant, decided.newRuns(), now);
        insertLots(plant, reports, now);
        insertInputs(plant, reports);
        insertSamples(plant, reports);
    }

    private void insertRuns(String plant, List<StepRun> runs, OffsetDateTime now) {
        JsonRows rows = new JsonRows();
        for (StepRun run : runs) {
            rows.add()
                    .put("id", run.id().value())
                    .put("step", run.step())
                    .put("machine", run.machine())
                    .put("line", run.line())
                    .put("operator", run.operator())
                    .put("shift", run.shift())
                    .put("started", JsonRows.text(run.started()))
                    .put("finished", JsonRows.text(run.finished()))
                    .put("settings", LotJson.settings(run.settings()));
        }
        rows.insert(
                session,
                """
                insert into step_run (plant, id, step, machine, line, operator, shift, started, finished, settings, registered)
                select :plant, id, step, machine, line, operator, shift, started, finished, cast(settings as jsonb),
                       cast(:now as timestamptz)
                from json_to_recordset(cast(:rows as json))
                    as r(id text, step text, machine text, line text, operator text, shift text,
                         started timestamptz, finished timestamptz, settings text)""",
                plant,
                now);
    }

    private void insertLots(String plant, List<LotReport> reports, OffsetDateTime now) {
        JsonRows rows = new JsonRows();
        for (LotReport report : reports) {
            Lot lot = report.lot();
            rows.add()
                    .put("id", lot.id().value())
                    .put("kind", lot.kind().word())
                    .put("value", lot.quantity().value())
                    .put("unit", lot.quantity().unit())
                    .put("made", JsonRows.text(lot.made()))
                    .put("step", lot.step())
                    .put("machine", lot.machine())
                    .put("run", lot.run() == null ? null : lot.run().id().value())
                    .put("sha256", report.sha256());
        }
        rows.insert(
                session,
                """
                insert into lot (plant, id, kind, quantity_value, quantity_unit, made, step, machine, run, source_sha256,
                                 registered)
                select :plant, id, kind, value, unit, made, step, machine, run, sha256, cast(:now as timestamptz)
                from json_to_recordset(cast(:rows as json))
                    as r(id text, kind text, value double precision, unit text, made timestamptz, step text,
                         machine text, run text, sha256 text)""",
                plant,
                now);
    }

    private void insertInputs(String plant, List<LotReport> reports) {
        JsonRows rows = new JsonRows();
        for (LotReport report : reports) {
            Lot lot = report.lot();
            for (int i = 0; i < lot.inputs().size(); i++) {
                LotInput input = lot.inputs().get(i);
                ObjectNode row = rows.add()
                        .put("child", lot.id().value())
                        .put("parent", input.lot().value())
                        .put("ordinal", i)
                        .put("value", input.quantity().value())
                        .put("unit", input.quantity().unit())
                        .put("base", input.quantity().base());
                Placement placement = input.placement();
                if (placement != null) {
                    row.put("position_from", placement.from())
                            .put("position_to", placement.to())
                            .put("position_unit", placement.unit())
                            .put("onto_from", placement.onParentFrom())
                            .put("onto_to", placement.onParentTo())
                            .put("onto_unit", placement.onParentUnit());
                }
            }
        }
        rows.insert(
                session,
                """
                insert into lot_input (plant, child, parent, ordinal, quantity_value, quantity_unit, amount_base,
                                       position_from, position_to, position_unit, onto_from, onto_to, onto_unit)
                select :plant, child, parent, ordinal, value, unit, base,
                       position_from, position_to, position_unit, onto_from, onto_to, onto_unit
                from json_to_recordset(cast(:rows as json))
                    as r(child text, parent text, ordinal int, value double precision, unit text,
                         base double precision, position_from double precision, position_to double precision,
                         position_unit text, onto_from double precision, onto_to double precision, onto_unit text)""",
                plant);
    }

    private void insertSamples(String plant, List<LotReport> reports) {
        JsonRows rows = new JsonRows();
        for (LotReport report : reports) {
            List<Sample> samples = report.lot().samples();
            for (int i = 0; i < samples.size(); i++) {
                Sample sample = samples.get(i);
                rows.add()
                        .put("lot", report.lot().id().value())
                        .put("ordinal", i)
                        .put("property", sample.property())
                        .put("value", sample.value())
                        .put("unit", sample.unit())
                        .put("taken", JsonRows.text(sample.taken()))
                        .put("at_value", sample.at())
                        .put("at_unit", sample.atUnit());
            }
        }
        rows.insert(
                session,
                """
                insert into lot_sample (plant, lot, ordinal, property, value, unit, taken, at_value, at_unit)
                select :plant, lot, ordinal, property, value, unit, taken, at_value, at_unit
                from json_to_recordset(cast(:rows as json))
                    as r(lot text, ordinal int, property text, value double precision, unit text, taken timestamptz,
                         at_value double precision, at_unit text)""",
                plant);
    }
}
