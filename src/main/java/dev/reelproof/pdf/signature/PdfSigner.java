package dev.reelproof.pdf.signature;

import eu.europa.esig.dss.enumerations.CertificationPermission;
import eu.europa.esig.dss.enumerations.DigestAlgorithm;
import eu.europa.esig.dss.enumerations.SignatureAlgorithm;
import eu.europa.esig.dss.enumerations.SignatureLevel;
import eu.europa.esig.dss.model.DSSDocument;
import eu.europa.esig.dss.model.DSSException;
import eu.europa.esig.dss.model.InMemoryDocument;
import eu.europa.esig.dss.model.SignatureValue;
import eu.europa.esig.dss.model.x509.CertificateToken;
import eu.europa.esig.dss.pades.PAdESSignatureParameters;
import eu.europa.esig.dss.pades.signature.PAdESService;
import eu.europa.esig.dss.spi.DSSUtils;
import eu.europa.esig.dss.spi.validation.CommonCertificateVerifier;
import java.time.Instant;
import java.util.Date;
import java.util.Optional;

/**
 * Signs finished PDFs: PAdES baseline B, or T where a time-stamp authority confirms when (ETSI EN 319 142-1; the levels' names from
 * memory). The signature is appended: the bytes that were there stay as they were, and the signature covers them all. It certifies the
 * document, so that a viewer objects to any change.
 */
public final class PdfSigner {
    /** Place for the signature with its certificates, in bytes; what is left is filled with zeros. */
    private static final int PLACE = 12_288;

    /** The same with a time stamp, which brings the certificates of its authority. */
    private static final int PLACE_WITH_TIME_STAMP = 28_672;

    private final SigningKey key;
    private final Optional<TimeStampAuthority> authority;

    public PdfSigner(SigningKey key, Optional<TimeStampAuthority> authority) {
        this.key = key;
        this.authority = authority;
    }

    public SigningKey key() {
        return key;
    }

    /**
     * The PDF with a signature appended.
     *
     * @param at when it is signed
     * @throws CannotSignException when the key's certificate does not hold then, or key or time-stamp authority do not answer
     */
    public byte[] sign(byte[] pdf, Instant at) {
        key.requireValidAt(at);
        PAdESService service = new PAdESService(new CommonCertificateVerifier());
        authority.ifPresent(service::setTspSource);
        PAdESSignatureParameters parameters = parameters(at);
        DSSDocument document = new InMemoryDocument(pdf);
        try {
            byte[] toSign = service.getDataToSign(document, parameters).getBytes();
            SignatureValue value = new SignatureValue(
                    key.isElliptic() ? SignatureAlgorithm.ECDSA_SHA256 : SignatureAlgorithm.RSA_SHA256,
                    key.sign(toSign));
            return DSSUtils.toByteArray(service.signDocument(document, parameters, value));
        } catch (DSSException e) {
            throw new CannotSignException("The document could not be signed: " + e.getMessage(), e);
        }
    }

    private PAdESSignatureParameters parameters(Instant at) {
        PAdESSignatureParameters parameters = new PAdESSignatureParameters();
        parameters.setSignatureLevel(
                authority.isPresent() ? SignatureLevel.PAdES_BASELINE_T : SignatureLevel.PAdES_BASELINE_B);
        parameters.setDigestAlgorithm(DigestAlgorithm.SHA256);
        parameters.setSigningCertificate(new CertificateToken(key.certificate()));
        parameters.setCertificateChain(
                key.chain().stream().map(CertificateToken::new).toArray(CertificateToken[]::new));
        parameters.setPermission(CertificationPermission.NO_CHANGE_PERMITTED);
        parameters.setContentSize(authority.isPresent() ? PLACE_WITH_TIME_STAMP : PLACE);
        parameters.setAppName("Reelproof");
        parameters.bLevel().setSigningDate(Date.from(at));
        return parameters;
    }
}
