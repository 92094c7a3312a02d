package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Instrument;
import dev.reelproof.certificate.CertificateContent.Quantity;
import dev.reelproof.pdf.page.PlainNumber;
import dev.reelproof.wording.Figures;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The facts of a certificate as they are printed: quantities in the unit as sent and in the canonical one, times to the minute. */
final class FactTexts {
    private static final String NOT_STATED = "not stated";
    private static final DateTimeFormatter DATE_AND_MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final int DATE_LENGTH = "yyyy-MM-dd".length();
    private static final int DATE_AND_MINUTE_LENGTH = "yyyy-MM-dd HH:mm".length();

    private final CertificateContent content;

    FactTexts(CertificateContent content) {
        this.content = content;
    }

    String customer() {
        return or(content.customer(), NOT_STATED);
    }

    String order() {
        return or(content.order(), NOT_STATED);
    }

    String reel() {
        return content.reel();
    }

    String product() {
        return content.product().code();
    }

    String description() {
        return or(content.product().description(), NOT_STATED);
    }

    String conductors() {
        int count = content.product().pairs();
        String pairs = count + (count == 1 ? " pair" : " pairs");
        String gauge = content.product().gauge();
        return gauge == null ? pairs : pairs + ", " + gauge;
    }

    String length() {
        String sent = Figures.length(content.length().value(), content.length().unit());
        return "m".equals(content.length().unit()) ? sent : sent + " (" + metres(content.lengthMetres()) + ")";
    }

    String limitSet() {
        return content.limits().title();
    }

    String revision() {
        CertificateContent.Limits limits = content.limits();
        return limits.revision() + ", effective " + limits.effective() + " (" + limits.id() + ")";
    }

    String reference() {
        return referenceTemperature() + " and " + referenceLength() + ", or the length that the unit names";
    }

    String referenceTemperature() {
        return celsius(content.limits().referenceCelsius());
    }

    String referenceLength() {
        return metres(content.limits().referenceMetres());
    }

    String temperature() {
        Quantity sent = content.conditions().temperature();
        return "°C".equals(sent.unit())
                ? temperature(sent)
                : temperature(sent) + " (" + celsius(content.conditions().celsius()) + ")";
    }

    String tested() {
        String finished = time(content.conditions().finished());
        if (content.conditions().started() == null) {
            return finished;
        }
        String started = time(content.conditions().started());
        return started.regionMatches(0, finished, 0, DATE_LENGTH)
                ? started.substring(0, DATE_AND_MINUTE_LENGTH) + " to " + finished.substring(DATE_LENGTH + 1)
                : started + " to " + finished;
    }

    String station() {
        return or(content.conditions().station(), NOT_STATED);
    }

    String technician(String otherwise) {
        return or(content.conditions().technician(), otherwise);
    }

    String equipment() {
        return content.conditions().equipment().isEmpty()
                ? NOT_STATED
                : content.conditions().equipment().stream()
                        .map(FactTexts::instrument)
                        .collect(Collectors.joining("; "));
    }

    private static String instrument(Instrument instrument) {
        return instrument.calibrationDue() == null
                ? instrument.id()
                : instrument.id() + ", calibration due " + instrument.calibrationDue();
    }

    private static String or(@Nullable String text, String otherwise) {
        return text == null || text.isBlank() ? otherwise : text;
    }

    private static String temperature(Quantity quantity) {
        return Figures.temperature(quantity.value(), quantity.unit());
    }

    private static String celsius(double value) {
        return Figures.temperature(value, "°C");
    }

    private static String metres(double value) {
        return Figures.length(value, "m");
    }

    /** A time to the minute with its offset from UTC. */
    static String time(String iso) {
        OffsetDateTime time = OffsetDateTime.parse(iso);
        String offset = time.getOffset().equals(ZoneOffset.UTC)
                ? "UTC"
                : "UTC" + PlainNumber.withMinusSign(time.getOffset().getId());
        return time.format(DATE_AND_MINUTE) + " " + offset;
    }
}
