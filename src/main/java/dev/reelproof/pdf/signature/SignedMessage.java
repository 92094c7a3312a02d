package dev.reelproof.pdf.signature;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1InputStream;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerId;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.jcajce.provider.digest.SHA256;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampToken;
import org.bouncycastle.util.Store;
import org.jspecify.annotations.Nullable;

/**
 * A CMS signature (RFC 5652) that fits what it signs, read by BouncyCastle: its digest, its signature, and that it names the signer's
 * certificate under the signature (RFC 5035), so that no other certificate of the same key can take its place.
 *
 * @param signer the signer's certificate
 * @param chain all certificates that came with it, the signer's first
 * @param stamped when a time-stamp authority had seen the signature (RFC 3161)
 * @param stampedBy that authority, as its own certificate says
 */
record SignedMessage(
        X509Certificate signer, List<X509Certificate> chain, Optional<Instant> stamped, Optional<String> stampedBy) {

    static SignedMessage of(byte[] signature, byte[] signed) throws BrokenSignatureException {
        try {
            CMSSignedData message = new CMSSignedData(new CMSProcessableByteArray(signed), contentInfo(signature));
            Collection<SignerInformation> signers = message.getSignerInfos().getSigners();
            if (signers.size() != 1) {
                throw new BrokenSignatureException("it has " + signers.size() + " signers instead of one.");
            }
            SignerInformation information = signers.iterator().next();
            X509CertificateHolder holder = certificate(message.getCertificates(), information.getSID());
            if (!information.verify(new JcaSimpleSignerInfoVerifierBuilder().build(holder))) {
                throw changed();
            }
            requireNamed(holder, information);
            List<X509Certificate> chain = chain(message, holder);
            Optional<TimeStampToken> stamp = stamp(information);
            return new SignedMessage(
                    chain.get(0),
                    chain,
                    stamp.map(token -> token.getTimeStampInfo().getGenTime().toInstant()),
                    stamp.map(token -> token.getTimeStampInfo().getTsa() == null
                            ? token.getSID().getIssuer().toString()
                            : token.getTimeStampInfo().getTsa().getName().toString()));
        } catch (CMSException e) {
            throw e.getMessage() != null && e.getMessage().contains("digest")
                    ? changed()
                    : new BrokenSignatureException("it cannot be read: " + e.getMessage());
        } catch (IOException
                | CertificateException
                | OperatorCreationException
                | NoSuchAlgorithmException
                | TSPException
                | IllegalArgumentException
                | ClassCastException e) {
            throw new BrokenSignatureException("it cannot be read: " + e.getMessage());
        }
    }

    private static BrokenSignatureException changed() {
        return new BrokenSignatureException("the document was changed after it was signed.");
    }

    /** What stands first; zeros fill the rest of the place. */
    private static ContentInfo contentInfo(byte[] signature) throws IOException {
        try (ASN1InputStream in = new ASN1InputStream(new ByteArrayInputStream(signature))) {
            return ContentInfo.getInstance(in.readObject());
        }
    }

    private static X509CertificateHolder certificate(Store<X509CertificateHolder> certificates, SignerId signer)
            throws BrokenSignatureException {
        return certificates.getMatches(null).stream()
                .filter(signer::match)
                .findFirst()
                .orElseThrow(() -> new BrokenSignatureException("the signer's certificate did not come with it."));
    }

    private static void requireNamed(X509CertificateHolder holder, SignerInformation information)
            throws IOException, BrokenSignatureException {
        @Nullable
        Attribute attribute = information.getSignedAttributes() == null
                ? null
                : information.getSignedAttributes().get(PKCSObjectIdentifiers.id_aa_signingCertificateV2);
        if (attribute == null) {
            throw new BrokenSignatureException("it does not name the signer's certificate.");
        }
        ESSCertIDv2 named = SigningCertificateV2.getInstance(
                        attribute.getAttrValues().getObjectAt(0))
                .getCerts()[0];
        byte[] digest = new SHA256.Digest().digest(holder.getEncoded());
        if (!Arrays.equals(named.getCertHash(), digest)) {
            throw new BrokenSignatureException("it names another certificate than the one that came with it.");
        }
    }

    private static List<X509Certificate> chain(CMSSignedData message, X509CertificateHolder signer)
            throws CertificateException {
        JcaX509CertificateConverter converter = new JcaX509CertificateConverter();
        List<X509Certificate> chain = new ArrayList<>();
        X509CertificateHolder next = signer;
        while (next != null) {
            chain.add(converter.getCertificate(next));
            X509CertificateHolder last = next;
            next = message.getCertificates().getMatches(null).stream()
                    .filter(each -> each.getSubject().equals(last.getIssuer()) && !each.equals(last))
                    .findFirst()
                    .orElse(null);
            if (chain.size() > message.getCertificates().getMatches(null).size()) {
                break; // They vouch for one another in a circle.
            }
        }
        return chain;
    }

    private static Optional<TimeStampToken> stamp(SignerInformation information)
            throws CMSException, IOException, TSPException, OperatorCreationException, CertificateException,
                    NoSuchAlgorithmException, BrokenSignatureException {
        @Nullable
        Attribute attribute = information.getUnsignedAttributes() == null
                ? null
                : information.getUnsignedAttributes().get(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
        if (attribute == null) {
            return Optional.empty();
        }
        TimeStampToken token = new TimeStampToken(
                ContentInfo.getInstance(attribute.getAttrValues().getObjectAt(0)));
        token.validate(
                new JcaSimpleSignerInfoVerifierBuilder().build(certificate(token.getCertificates(), token.getSID())));
        byte[] digest = MessageDigest.getInstance(
                        token.getTimeStampInfo().getMessageImprintAlgOID().getId())
                .digest(information.getSignature());
        if (!Arrays.equals(token.getTimeStampInfo().getMessageImprintDigest(), digest)) {
            throw new BrokenSignatureException("its time stamp belongs to another signature.");
        }
        return Optional.of(token);
    }
}
