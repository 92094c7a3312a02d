package dev.reelproof.pdf.signature;

import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.cert.CertPathValidator;
import java.security.cert.CertificateFactory;
import java.security.cert.PKIXParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Comparator;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;

/**
 * The signature of a document, with what it covers unchanged.
 *
 * @param signer whose key made it, as its own certificate says
 * @param chain the certificates that came with it, the signer's first
 * @param claimed when it was made, by the signer's own clock
 * @param stamped when a time-stamp authority had seen it
 * @param stampedBy that authority, as its own certificate says
 * @param bytesAfter how many bytes follow what it covers; 0 when it covers the whole file
 */
public record PdfSignature(
        X509Certificate signer,
        List<X509Certificate> chain,
        Instant claimed,
        Optional<Instant> stamped,
        Optional<String> stampedBy,
        long bytesAfter) {

    public PdfSignature {
        chain = List.copyOf(chain);
    }

    /**
     * The first signature of a document; what others signed came after it.
     *
     * @param pdf the same document's bytes
     * @throws BrokenSignatureException when it does not fit what it covers
     */
    public static Optional<PdfSignature> firstOf(PDDocument document, byte[] pdf)
            throws IOException, BrokenSignatureException {
        Optional<PDSignature> first = document.getSignatureDictionaries().stream()
                .filter(signature -> signature.getByteRange() != null && signature.getByteRange().length > 0)
                .min(Comparator.comparingLong(SignedRange::endOf));
        if (first.isEmpty()) {
            return Optional.empty();
        }
        PDSignature dictionary = first.get();
        SignedRange range = SignedRange.of(dictionary, pdf);
        SignedMessage message = SignedMessage.of(range.signature(), range.signed());
        if (dictionary.getSignDate() == null) {
            throw new BrokenSignatureException("it does not say when it was made.");
        }
        return Optional.of(new PdfSignature(
                message.signer(),
                message.chain(),
                dictionary.getSignDate().toInstant(),
                message.stamped(),
                message.stampedBy(),
                range.bytesAfter()));
    }

    /**
     * Why none of these certificates vouches for the signer, at the time of the signature; empty when one does. Whether the signer's
     * certificate was revoked is not asked: that needs the network.
     */
    public Optional<String> objectionToTrust(List<X509Certificate> trusted) {
        Instant time = stamped.orElse(claimed);
        if (time.isBefore(signer.getNotBefore().toInstant())
                || time.isAfter(signer.getNotAfter().toInstant())) {
            return Optional.of("its certificate did not hold at " + time + ".");
        }
        if (trusted.contains(signer)) {
            return Optional.empty();
        }
        try {
            Set<TrustAnchor> anchors = new HashSet<>();
            trusted.forEach(certificate -> anchors.add(new TrustAnchor(certificate, null)));
            PKIXParameters parameters = new PKIXParameters(anchors);
            parameters.setRevocationEnabled(false);
            parameters.setDate(Date.from(time));
            List<X509Certificate> path =
                    chain.stream().filter(each -> !trusted.contains(each)).toList();
            CertPathValidator.getInstance("PKIX")
                    .validate(CertificateFactory.getInstance("X.509").generateCertPath(path), parameters);
            return Optional.empty();
        } catch (GeneralSecurityException e) {
            return Optional.of(
                    signer.getSubjectX500Principal().getName() + " signed, and nothing given vouches for that key.");
        }
    }
}
