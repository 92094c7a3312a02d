package dev.reelproof.app.certificate;

import dev.reelproof.app.ConflictException;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.store.certificate.Certificates;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import org.jboss.logging.Logger;

/**
 * Gives certificates their numbers, without gap or twin within a plant and year. The serial's row is one thing, the certificates that
 * were issued another: a database of which only a part was restored can have them differ. Then nothing is numbered until somebody has
 * seen to it.
 */
@ApplicationScoped
public class NumberCertificates {
    private static final Logger LOG = Logger.getLogger(NumberCertificates.class);

    private final Certificates certificates;

    NumberCertificates(Certificates certificates) {
        this.certificates = certificates;
    }

    /** Says at the start which numbers do not fit the certificates that were issued. */
    @Startup
    @Transactional
    void checkAtStart() {
        for (String misfit : misfits()) {
            LOG.error(misfit);
        }
    }

    /** Where the last serial given and the certificates that were issued do not fit, a sentence each. */
    @Transactional
    public List<String> misfits() {
        return certificates.serialMisfits().stream()
                .map(misfit -> "The numbers of plant " + misfit.plant() + " of " + misfit.year() + " do not fit: "
                        + misfit.last() + " were given, but " + misfit.issued()
                        + " certificates are kept, the last with serial "
                        + misfit.lastIssued()
                        + ". Restore the database whole; no certificate is issued for that plant and year until then.")
                .toList();
    }

    /**
     * The next number of a plant's year; it is given back when the transaction fails.
     *
     * @throws ConflictException when the serial does not follow the certificates that were issued
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public CertificateNumber next(String plant, int year) {
        CertificateNumber number = CertificateNumber.of(plant, year, certificates.nextSerial(plant, year));
        boolean isFree = !certificates.isIssued(plant, number.toString());
        boolean followsTheLast = number.previous()
                .map(previous -> certificates.isIssued(plant, previous.toString()))
                .orElse(true);
        if (!(isFree && followsTheLast)) {
            throw new ConflictException("Certificate " + number
                    + " would be the next, but it does not follow the certificates that are kept. Was only a part of the"
                    + " database restored? Nothing was issued; have the database restored whole.");
        }
        return number;
    }
}
