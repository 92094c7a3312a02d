package dev.reelproof.store.result;

import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Obstacles;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Uncertainty;
import dev.reelproof.judgement.Units;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.store.RowJson;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.hibernate.annotations.ColumnTransformer;
import org.jspecify.annotations.Nullable;

@Entity
@Table(name = "finding")
@IdClass(FindingRow.Key.class)
class FindingRow {
    record Key(String plant, UUID recordId, int ordinal, Instant received) {}

    @Id
    public String plant;

    @Id
    @Column(name = "record_id")
    public UUID recordId;

    @Id
    public int ordinal;

    @Id
    public Instant received;

    public String requirement;

    public String property;

    public String outcome;

    public @Nullable String reason;

    public @Nullable Double value;

    public @Nullable Double judged;

    @Column(name = "limit_value")
    public @Nullable Double limit;

    public @Nullable Double margin;

    public @Nullable String unit;

    public @Nullable Double megahertz;

    public @Nullable Integer pair;

    public @Nullable Integer partner;

    public @Nullable String conductor;

    @Column(name = "cable_end")
    public @Nullable String end;

    public @Nullable Integer sample;

    /** The unit of the core that a statistic was taken of, of two the lower; absent where it was taken of the whole reel. */
    @Column(name = "core_unit")
    public @Nullable Integer coreUnit;

    @Column(name = "other_core_unit")
    public @Nullable Integer otherCoreUnit;

    public @Nullable Double measured;

    @Column(name = "measured_unit")
    public @Nullable String measuredUnit;

    public int points;

    public boolean derived;

    @Column(name = "varying_pairs")
    public int[] varyingPairs;

    @Column(name = "decision_rule")
    public String decisionRule;

    @Column(name = "guard_multiple")
    public @Nullable Double guardMultiple;

    public @Nullable Double uncertainty;

    @Column(name = "coverage_factor")
    public @Nullable Double coverageFactor;

    public @Nullable Double probability;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "explanation::text", write = "?::jsonb")
    public String explanation;

    /** What kept it from being judged; absent of a finding that was tested, and of records of before obstacles were kept as data. */
    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "obstacles::text", write = "?::jsonb")
    public @Nullable String obstacles;

    /** Where it is least sure that the requirement is met; absent where no uncertainty is known, and of records of before it was kept. */
    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "doubt::text", write = "?::jsonb")
    public @Nullable String doubt;

    static FindingRow of(String plant, UUID recordId, Instant received, int ordinal, Finding finding) {
        FindingRow row = new FindingRow();
        row.plant = plant;
        row.recordId = recordId;
        row.received = received;
        row.ordinal = ordinal;
        row.requirement = finding.requirement();
        row.property = finding.property().id();
        row.outcome = finding.outcome().word();
        row.reason = finding.reason();
        row.obstacles = finding.obstacles().isEmpty() ? null : ObstacleJson.write(finding.obstacles());
        row.doubt = finding.doubt() == null ? null : DoubtJson.write(finding.doubt());
        row.points = finding.points();
        row.varyingPairs =
                finding.varyingPairs().stream().mapToInt(Integer::intValue).toArray();
        row.decisionRule = finding.decisionRule().form().name();
        row.guardMultiple = finding.decisionRule().multiple();
        Figure figure = finding.figure();
        row.explanation = RowJson.steps(figure == null ? List.of() : figure.steps());
        if (figure != null) {
            row.place(figure);
        }
        return row;
    }

    private void place(Figure figure) {
        value = figure.value();
        judged = figure.judged();
        limit = figure.limit();
        margin = figure.margin();
        unit = figure.unit();
        megahertz = figure.megahertz();
        pair = figure.subject().pair();
        partner = figure.subject().partner();
        conductor = figure.subject().conductor() == null
                ? null
                : figure.subject().conductor().letter();
        end = figure.subject().end() == null ? null : figure.subject().end().word();
        sample = figure.subject().sample();
        if (figure.units() != null) {
            coreUnit = figure.units().unit();
            otherCoreUnit = figure.units().other();
        }
        measured = figure.measured();
        measuredUnit = figure.measuredUnit();
        derived = figure.derived();
        if (figure.uncertainty() != null) {
            uncertainty = figure.uncertainty().expanded();
            coverageFactor = figure.uncertainty().coverageFactor();
            probability = figure.uncertainty().probabilityOfConformity();
        }
    }

    /**
     * The finding. Version 0.1 passed a requirement of which no value lay where its limit holds, and kept no figure of it: that is read as
     * not tested, and says what the record says.
     */
    Finding toFinding() {
        Outcome recorded = Outcome.valueOf(outcome.toUpperCase(Locale.ROOT).replace('-', '_'));
        Figure figure = figure();
        if (recorded.accepts() && figure == null) {
            Obstacles notKept = Obstacles.figureNotKept(recorded);
            return finding(Outcome.NOT_TESTED, notKept.sentence(), notKept, null);
        }
        return finding(
                recorded,
                reason,
                obstacles == null ? Obstacles.asRecorded(recorded, reason) : ObstacleJson.read(obstacles),
                figure);
    }

    private Finding finding(Outcome cameTo, @Nullable String why, Obstacles inTheWay, @Nullable Figure figure) {
        return new Finding(
                requirement,
                Property.named(property),
                cameTo,
                why,
                inTheWay,
                figure,
                points,
                Arrays.stream(varyingPairs).boxed().toList(),
                new DecisionRule(DecisionRule.Form.valueOf(decisionRule), guardMultiple == null ? 0 : guardMultiple),
                doubt == null ? null : DoubtJson.read(doubt));
    }

    /** The columns of a figure are all there, or none. */
    private @Nullable Figure figure() {
        if (value == null || judged == null || limit == null || margin == null || unit == null) {
            return null;
        }
        Subject subject = new Subject(
                pair,
                partner,
                conductor == null ? null : Conductor.valueOf(conductor.toUpperCase(Locale.ROOT)),
                end == null ? null : End.valueOf(end.toUpperCase(Locale.ROOT)),
                sample);
        return new Figure(
                subject,
                coreUnit == null ? null : new Units(coreUnit, otherCoreUnit),
                megahertz,
                measured,
                measuredUnit,
                value,
                judged,
                limit,
                margin,
                unit,
                derived,
                sureness(),
                RowJson.steps(explanation));
    }

    /** The database holds all three columns of an uncertainty, or none. */
    private @Nullable Uncertainty sureness() {
        return uncertainty == null || coverageFactor == null || probability == null
                ? null
                : new Uncertainty(uncertainty, coverageFactor, probability);
    }
}
