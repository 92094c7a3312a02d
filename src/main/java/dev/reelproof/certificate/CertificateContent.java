package dev.reelproof.certificate;

import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Product;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * All that a certificate says: strings, numbers and lists only, so that it can be kept as it is and drawn again years later.
 *
 * <p>Times are ISO 8601 texts with offset, dates ISO 8601 texts. Figures of rows are texts, rounded for print after the decision.
 *
 * @param number the certificate's number
 * @param issue which issue of it, from 1
 * @param issued when it was issued
 * @param plant the plant that tested and certifies
 * @param product what the reel is
 * @param reel the reel's number
 * @param length the reel's length as sent
 * @param lengthMetres the same in m
 * @param customer who ordered it; null when not known
 * @param order the order; null when not known
 * @param limits the limit set that it was judged by
 * @param record id of the record
 * @param sourceSha256 digest of the upload, hexadecimal
 * @param engine version of the program that judged
 * @param conditions the conditions of the test
 * @param verdict what the reel came to: the word of the HTTP contract
 * @param decisionRule how uncertainty entered the decision, in words
 * @param rows one a finding, in the set's order
 * @param leftOut what the set's source demands and the set does not judge, with the reason; sentences
 * @param plots one a property that was measured against frequency
 * @param uncertainty what the uncertainties of the rows are and where they come from, a sentence; null when there are none
 * @param concessions the approved concessions that bear on the reel, in the order of their approval; none for most
 */
public record CertificateContent(
        String number,
        int issue,
        String issued,
        Plant plant,
        Cable product,
        String reel,
        Quantity length,
        double lengthMetres,
        @Nullable String customer,
        @Nullable String order,
        Limits limits,
        String record,
        String sourceSha256,
        String engine,
        Conditions conditions,
        String verdict,
        String decisionRule,
        List<Row> rows,
        List<String> leftOut,
        List<Plot> plots,
        @Nullable String uncertainty,
        List<Conceded> concessions) {

    /**
     * A value with its unit, as sent.
     *
     * @param value the value
     * @param unit its unit
     */
    public record Quantity(double value, String unit) {}

    /**
     * The product.
     *
     * @param code its code
     * @param description in words; null when not stated
     * @param gauge conductor gauge in words; null when not stated
     * @param pairs how many pairs
     */
    public record Cable(String code, String description, String gauge, int pairs) {}

    /**
     * The limit set.
     *
     * @param id its name
     * @param title in words
     * @param revision from 1
     * @param effective first day on which it is judged by
     * @param sha256 digest of its file
     * @param referenceCelsius values are corrected to this temperature, °C
     * @param referenceMetres values are corrected to this length, m, unless a unit names another
     * @param rounding how values are brought to the precision of their limits, in words
     */
    public record Limits(
            String id,
            String title,
            int revision,
            String effective,
            String sha256,
            double referenceCelsius,
            double referenceMetres,
            String rounding) {}

    /**
     * The conditions of the test.
     *
     * @param temperature the cable's temperature as sent
     * @param celsius the same in °C
     * @param started when the test began; null when not stated
     * @param finished when it ended
     * @param station the test bay; null when not stated
     * @param technician who tested; null when not stated
     * @param equipment the instruments
     */
    public record Conditions(
            Quantity temperature,
            double celsius,
            @Nullable String started,
            String finished,
            @Nullable String station,
            @Nullable String technician,
            List<Instrument> equipment) {

        public Conditions {
            equipment = List.copyOf(equipment);
        }
    }

    /**
     * An instrument.
     *
     * @param id the plant's number of it
     * @param calibrationDue last day on which its calibration holds; null when it needs none
     */
    public record Instrument(String id, @Nullable String calibrationDue) {}

    /**
     * One requirement and its worst figure.
     *
     * @param requirement its id within the limit set
     * @param property the property's name in the HTTP contract
     * @param title the trade's name
     * @param plain the same in plain words
     * @param limit the limit in words: the figure or, of a curve, the formula at the worst place, with unit and range
     * @param value the worst value at reference conditions
     * @param limitThere the limit at the worst place
     * @param margin how far the value lies on the good side, signed
     * @param unit the unit of value, limit and margin; empty for a count
     * @param where pair, combination, conductor or end, and frequency, of the worst value
     * @param points how many values were judged
     * @param outcome the word of the HTTP contract
     * @param notes whether it was computed from measured parts, laws applied, pairs left out under an allowance, conditions; may be
     *     empty
     */
    public record Row(
            String requirement,
            String property,
            String title,
            String plain,
            String limit,
            String value,
            String limitThere,
            String margin,
            String unit,
            String where,
            int points,
            String outcome,
            List<String> notes) {

        public Row {
            notes = List.copyOf(notes);
        }
    }

    /**
     * The corrected sweeps of a property against their limits, thinned to what a plot of its size can show.
     *
     * @param property the property's name in the HTTP contract
     * @param title the trade's name
     * @param unit the unit of all values
     * @param fromMegahertz left end of the frequency axis, MHz
     * @param toMegahertz right end, MHz
     * @param sweeps how many sweeps were judged
     * @param lines the sweeps; only the worst one when a band stands for all
     * @param band lowest and highest of all sweeps; null when each has its line
     * @param limits the limits
     * @param worst the worst point
     */
    public record Plot(
            String property,
            String title,
            String unit,
            double fromMegahertz,
            double toMegahertz,
            int sweeps,
            List<Line> lines,
            @Nullable Band band,
            List<LimitLine> limits,
            @Nullable Point worst) {

        public Plot {
            lines = List.copyOf(lines);
            limits = List.copyOf(limits);
        }
    }

    /**
     * A sweep as drawn.
     *
     * @param label the pair or combination; empty for the reel
     * @param end near or far; empty where the property has no end
     * @param megahertz frequencies, MHz
     * @param values corrected values there
     */
    public record Line(String label, String end, List<Double> megahertz, List<Double> values) {

        public Line {
            megahertz = List.copyOf(megahertz);
            values = List.copyOf(values);
        }
    }

    /**
     * The band that all sweeps lie in.
     *
     * @param megahertz frequencies, MHz
     * @param lowest lowest values there
     * @param highest highest values there
     */
    public record Band(List<Double> megahertz, List<Double> lowest, List<Double> highest) {

        public Band {
            megahertz = List.copyOf(megahertz);
            lowest = List.copyOf(lowest);
            highest = List.copyOf(highest);
        }
    }

    /**
     * A limit as drawn; a limit at one frequency has one point.
     *
     * @param label "limit", or what distinguishes it from the plot's other limits
     * @param megahertz frequencies, MHz
     * @param values the limit there
     */
    public record LimitLine(String label, List<Double> megahertz, List<Double> values) {

        public LimitLine {
            megahertz = List.copyOf(megahertz);
            values = List.copyOf(values);
        }
    }

    /**
     * The worst point of a plot.
     *
     * @param megahertz its frequency, MHz
     * @param value the value there
     * @param where pair, combination and end
     * @param margin the margin there, with unit, as in the table
     */
    public record Point(double megahertz, double value, String where, String margin) {}

    /**
     * What was conceded, by whom and why.
     *
     * @param number the number of the concession
     * @param kind its kind: the word of the HTTP contract
     * @param requirements what the test did not meet, or met only conditionally: the trade's names
     * @param reason why, as the requester put it
     * @param requestedBy who asked
     * @param approvedBy who approved
     * @param statement what was conceded, a sentence
     * @param persons who asked and who approved, when and why, sentences
     */
    public record Conceded(
            long number,
            String kind,
            List<String> requirements,
            String reason,
            Signer requestedBy,
            Signer approvedBy,
            String statement,
            String persons) {

        public Conceded {
            requirements = List.copyOf(requirements);
        }
    }

    /**
     * A person who asked for a concession or approved it.
     *
     * @param name the person's name
     * @param role the person's role in words
     * @param date the day on which, ISO 8601
     */
    public record Signer(String name, String role, String date) {}

    public CertificateContent {
        concessions = List.copyOf(concessions);
        rows = List.copyOf(rows);
        leftOut = List.copyOf(leftOut);
        plots = List.copyOf(plots);
    }

    /**
     * The content of a certificate in English.
     *
     * @throws IllegalArgumentException when the judgement may not have one, or the limit set is not the one that it was judged by
     */
    public static CertificateContent of(
            Issuing issuing, Item item, TestConditions test, Product product, Judgement judgement, LimitSet limitSet) {
        return of(issuing, item, test, product, judgement, limitSet, Wording.english());
    }

    /**
     * The content of a certificate in a language.
     *
     * @throws IllegalArgumentException when the judgement may not have one, or the limit set is not the one that it was judged by
     */
    public static CertificateContent of(
            Issuing issuing,
            Item item,
            TestConditions test,
            Product product,
            Judgement judgement,
            LimitSet limitSet,
            Wording wording) {
        return of(issuing, item, test, product, judgement, limitSet, ConcessionStanding.NONE, wording);
    }

    /**
     * The content of a certificate in a language, of a reel that has concessions.
     *
     * @param standing what they mean for the judgement
     * @throws IllegalArgumentException when the judgement may not have one, or the limit set is not the one that it was judged by
     */
    public static CertificateContent of(
            Issuing issuing,
            Item item,
            TestConditions test,
            Product product,
            Judgement judgement,
            LimitSet limitSet,
            ConcessionStanding standing,
            Wording wording) {
        MayHaveCertificate.reasonAgainst(judgement, standing).ifPresent(reason -> {
            throw new IllegalArgumentException("reel " + item.reel() + ": " + reason);
        });
        if (!(limitSet.id().equals(judgement.limitSet())
                && limitSet.revision() == judgement.revision()
                && limitSet.sha256().equals(judgement.limitSetSha256()))) {
            throw new IllegalArgumentException("reel " + item.reel() + " was judged by " + judgement.limitSet()
                    + " revision " + judgement.revision() + " (" + judgement.limitSetSha256() + "), not by "
                    + limitSet.id() + " revision " + limitSet.revision() + " (" + limitSet.sha256() + ")");
        }
        return new CertificateContent(
                issuing.number().toString(),
                issuing.issue(),
                issuing.issued().toString(),
                issuing.plant(),
                new Cable(product.id(), product.description(), product.gauge(), product.pairs()),
                item.reel(),
                new Quantity(item.lengthSent(), item.lengthUnit()),
                item.length().metres(),
                item.customer(),
                item.order(),
                new Limits(
                        limitSet.id(),
                        limitSet.title(),
                        limitSet.revision(),
                        limitSet.effective().toString(),
                        limitSet.sha256(),
                        limitSet.referenceTemperature().celsius(),
                        limitSet.referenceLength().metres(),
                        wording.rounding(limitSet.rounding())),
                test.record(),
                test.sourceSha256(),
                judgement.engine(),
                conditions(test),
                judgement.verdict().word(),
                judgement.findings().stream()
                        .map(finding -> wording.ruleInFull(finding.decisionRule()))
                        .distinct()
                        .collect(Collectors.joining(" ")),
                new Rows(wording).of(judgement, limitSet, product),
                limitSet.leftOut().stream()
                        .map(left -> left.what() + " (" + left.why() + ")")
                        .toList(),
                new Plots(wording).of(judgement, limitSet, product),
                wording.uncertainty(judgement).orElse(null),
                new Concessions(wording).of(standing, limitSet, product));
    }

    /** The same certificate under another number, issue and time of issue: what a draft becomes when it is issued. */
    public CertificateContent numbered(CertificateNumber newNumber, int newIssue, OffsetDateTime newIssued) {
        return numbered(newNumber.toString(), newIssue, newIssued.toString());
    }

    /** The same certificate under the number, issue and time of issue of another. */
    public CertificateContent numberedAs(CertificateContent other) {
        return numbered(other.number, other.issue, other.issued);
    }

    private CertificateContent numbered(String newNumber, int newIssue, String newIssued) {
        return new CertificateContent(
                newNumber,
                newIssue,
                newIssued,
                plant,
                product,
                reel,
                length,
                lengthMetres,
                customer,
                order,
                limits,
                record,
                sourceSha256,
                engine,
                conditions,
                verdict,
                decisionRule,
                rows,
                leftOut,
                plots,
                uncertainty,
                concessions);
    }

    /** Whether the reel does not meet its requirements and is used as it is by a concession. */
    public boolean restsOnConcession() {
        return !verdict.equals(Verdict.ACCEPTED.word());
    }

    /** The rows that are not passed, not even conditionally. */
    public List<Row> failingRows() {
        return rows.stream()
                .filter(row -> Outcome.rejectingWords().contains(row.outcome()))
                .toList();
    }

    /** The rows that are passed only conditionally. */
    public List<Row> conditionalRows() {
        return rows.stream()
                .filter(row -> row.outcome().equals(Outcome.CONDITIONAL_PASS.word()))
                .toList();
    }

    private static Conditions conditions(TestConditions test) {
        return new Conditions(
                new Quantity(test.temperatureSent(), test.temperatureUnit()),
                test.temperature().celsius(),
                test.started() == null ? null : test.started().toString(),
                test.finished().toString(),
                test.station(),
                test.technician(),
                test.equipment().stream()
                        .map(instrument -> new Instrument(
                                instrument.id(),
                                instrument.calibrationDue() == null
                                        ? null
                                        : instrument.calibrationDue().toString()))
                        .toList());
    }
}
