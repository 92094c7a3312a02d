package dev.reelproof.certificate;

import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Product;
import java.time.OffsetDateTime;
import java.util.List;
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
 * @param lengthMarks the first and last length mark on its jacket; null when not stated
 * @param customer who ordered it; null when not known
 * @param order the order; null when not known
 * @param consignee to whom the goods go; null when that is not stated
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
 * @param paper what the plant declares the paper to be, and how it is printed
 * @param statement the statement of conformity, a sentence each
 * @param distributions how the margins of many sweeps lie; none for a cable of few pairs
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
        @Nullable Marks lengthMarks,
        @Nullable String customer,
        @Nullable String order,
        @Nullable String consignee,
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
        Paper paper,
        List<String> statement,
        List<Distribution> distributions,
        List<Conceded> concessions)
        implements NumberedPaper {

    /**
     * What the paper is declared to be, and how it is printed.
     *
     * @param title what it is called
     * @param standard the standard that it is declared by; null for one of the plant's own kind
     * @param language tag of its language
     * @param sheet the size of its pages
     * @param units the units of lengths and temperatures
     * @param authorised who authorises it; null where that is written by hand
     */
    public record Paper(
            String title,
            @Nullable String standard,
            String language,
            Declaration.Sheet sheet,
            Declaration.UnitSystem units,
            Declaration.@Nullable Signatory authorised) {}

    /**
     * A value with its unit, as sent.
     *
     * @param value the value
     * @param unit its unit
     */
    public record Quantity(double value, String unit) {}

    /**
     * Length marks on the jacket.
     *
     * @param first the mark at one end, as on the jacket
     * @param last the mark at the other end
     * @param unit the unit that the jacket is marked in
     * @param firstMetres the first in m
     * @param lastMetres the last in m
     */
    public record Marks(double first, double last, String unit, double firstMetres, double lastMetres) {}

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
     * @param limit the whole limit in words: each figure or formula, with unit and range
     * @param limitParts the same, a part for each stretch of frequency that has a formula of its own
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
            List<Part> limitParts,
            String value,
            String limitThere,
            String margin,
            String unit,
            String where,
            int points,
            String outcome,
            List<String> notes) {

        public Row {
            limitParts = List.copyOf(limitParts);
            notes = List.copyOf(notes);
        }
    }

    /**
     * A limit over a stretch of frequency.
     *
     * @param figures the figure or formula with its sign and unit
     * @param range where it holds; empty where frequency plays no part
     */
    public record Part(String figures, String range) {}

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
        statement = List.copyOf(statement);
        distributions = List.copyOf(distributions);
    }

    /**
     * The content of a certificate of the plant's own kind, in English, of which nothing else is to be said.
     *
     * @throws IllegalArgumentException when the judgement may not have one, or the limit set is not the one that it was judged by
     */
    public static CertificateContent of(
            Issuing issuing, Item item, TestConditions test, Product product, Judgement judgement, LimitSet limitSet) {
        return of(issuing, Declaration.PLAIN, Circumstances.NONE, item, test, product, judgement, limitSet);
    }

    /**
     * The content of a certificate.
     *
     * @throws IllegalArgumentException when the judgement may not have one, or the limit set is not the one that it was judged by
     */
    public static CertificateContent of(
            Issuing issuing,
            Declaration declaration,
            Circumstances circumstances,
            Item item,
            TestConditions test,
            Product product,
            Judgement judgement,
            LimitSet limitSet) {
        return new ContentAssembly(declaration, circumstances, item, product, judgement, limitSet).of(issuing, test);
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
                lengthMarks,
                customer,
                order,
                consignee,
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
                paper,
                statement,
                distributions,
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
}
