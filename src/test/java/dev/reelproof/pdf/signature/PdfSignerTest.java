package dev.reelproof.pdf.signature;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.net.httpserver.HttpServer;
import dev.reelproof.pdf.SignedSamples;
import eu.europa.esig.dss.diagnostic.DiagnosticData;
import eu.europa.esig.dss.diagnostic.SignatureWrapper;
import eu.europa.esig.dss.enumerations.SignatureLevel;
import eu.europa.esig.dss.model.InMemoryDocument;
import eu.europa.esig.dss.model.x509.CertificateToken;
import eu.europa.esig.dss.pades.validation.PDFDocumentValidator;
import eu.europa.esig.dss.spi.validation.CommonCertificateVerifier;
import eu.europa.esig.dss.spi.x509.CommonTrustedCertificateSource;
import eu.europa.esig.dss.validation.reports.Reports;
import java.io.ByteArrayInputStream;
import java.math.BigInteger;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Date;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.bc.BcDigestCalculatorProvider;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/** Signed certificates hold before validators that are not ours: poppler's, OpenSSL's, DSS's with its policy, veraPDF's for the archive. */
class PdfSignerTest {
    private static final Instant AT = Instant.parse("2026-03-02T15:20:00Z");

    private static byte[] unsigned;
    private static TestKeys.Keyed authority;

    @TempDir
    Path folder;

    @BeforeAll
    static void draw() throws Exception {
        unsigned = SignedSamples.unsigned();
        authority = TestKeys.authority();
    }

    private SigningKey key(String algorithm) throws Exception {
        TestKeys.Keyed plant = TestKeys.plant(authority, algorithm);
        return KeyStores.file(TestKeys.file(folder, authority, plant, algorithm), TestKeys.PASSWORD, Optional.empty());
    }

    /** Runs a tool and gives what it says; the test is skipped where it is not installed, unless the environment demands it. */
    private static String say(String... command) throws Exception {
        boolean present = Files.isExecutable(Path.of("/usr/bin", command[0]));
        if (!"required".equals(System.getenv("REELPROOF_SIGNATURE_TOOLS"))) {
            assumeTrue(present, command[0] + " is not installed");
        }
        assertTrue(present, command[0] + " is not installed");
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(1, TimeUnit.MINUTES), command[0]);
        return said;
    }

    @ParameterizedTest
    @ValueSource(strings = {"RSA", "EC"})
    void popplerFindsTheSignatureValidAndTheWholeDocumentSigned(String algorithm) throws Exception {
        Path file = folder.resolve("signed.pdf");
        Files.write(file, new PdfSigner(key(algorithm), Optional.empty()).sign(unsigned, AT));
        String said = say("pdfsig", file.toString());
        assertTrue(said.contains("Signature is Valid"), said);
        assertTrue(said.contains("Total document signed"), said);
        assertTrue(said.contains("ETSI.CAdES.detached"), said);
        assertTrue(said.contains("Invented Cable Works"), said);
        assertFalse(said.contains("Signature #2"), said);
    }

    @Test
    void opensslAcceptsTheMessageOverTheBytesThatItCovers() throws Exception {
        byte[] pdf = new PdfSigner(key("RSA"), Optional.empty()).sign(unsigned, AT);
        Path covered = folder.resolve("covered");
        Path message = folder.resolve("message.der");
        Path trusted = folder.resolve("authority.der");
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDSignature signature = document.getLastSignatureDictionary();
            Files.write(covered, signature.getSignedContent(pdf));
            Files.write(message, signature.getContents());
        }
        Files.write(trusted, authority.certificate().getEncoded());
        String time = Long.toString(AT.getEpochSecond());
        List<String> verify = List.of(
                "openssl",
                "cms",
                "-verify",
                "-binary",
                "-inform",
                "DER",
                "-in",
                message.toString(),
                "-content",
                covered.toString(),
                "-out",
                folder.resolve("out").toString(),
                "-CAfile",
                pem(trusted).toString(),
                "-purpose",
                "any",
                "-attime",
                time);
        String said = say(verify.toArray(String[]::new));
        assertTrue(said.contains("successful"), said);
        byte[] bytes = Files.readAllBytes(covered);
        bytes[bytes.length / 2] ^= 1;
        Files.write(covered, bytes);
        assertFalse(say(verify.toArray(String[]::new)).contains("successful"));
    }

    private Path pem(Path der) throws Exception {
        Path pem = folder.resolve("authority.pem");
        say("openssl", "x509", "-inform", "DER", "-in", der.toString(), "-out", pem.toString());
        return pem;
    }

    private static Reports validated(byte[] pdf) {
        CommonCertificateVerifier verifier = new CommonCertificateVerifier();
        CommonTrustedCertificateSource trusted = new CommonTrustedCertificateSource();
        trusted.addCertificate(new CertificateToken(authority.certificate()));
        verifier.setTrustedCertSources(trusted);
        PDFDocumentValidator validator = new PDFDocumentValidator(new InMemoryDocument(pdf));
        validator.setCertificateVerifier(verifier);
        validator.setValidationTime(Date.from(AT));
        return validator.validateDocument();
    }

    @Test
    void theLibrarysOwnValidatorCallsItBaselineBIntactAndOfTheAuthority() throws Exception {
        DiagnosticData found = validated(new PdfSigner(key("EC"), Optional.empty()).sign(unsigned, AT))
                .getDiagnosticData();
        assertEquals(1, found.getSignatures().size());
        SignatureWrapper signature = found.getSignatures().get(0);
        assertEquals(SignatureLevel.PAdES_BASELINE_B, signature.getSignatureFormat());
        assertTrue(signature.isSignatureIntact() && signature.isSignatureValid());
        assertTrue(signature.isBLevelTechnicallyValid());
        assertTrue(signature.isTrustedChain());
        assertFalse(signature.arePdfObjectModificationsDetected());
    }

    @Test
    void theLibrarysOwnValidatorFindsAChangedByte() throws Exception {
        byte[] pdf = new PdfSigner(key("EC"), Optional.empty()).sign(unsigned, AT);
        pdf[unsigned.length / 2] ^= 1;
        assertFalse(validated(pdf).getDiagnosticData().getSignatures().get(0).isSignatureIntact());
    }

    @Test
    void whatWasDrawnStaysAsItWasAndTwoSignaturesDifferInSignatureAndTimeAlone() throws Exception {
        PdfSigner signer = new PdfSigner(key("EC"), Optional.empty());
        byte[] one = signer.sign(unsigned, AT);
        byte[] other = signer.sign(unsigned, AT.plusSeconds(61));
        assertArrayEquals(unsigned, Arrays.copyOf(one, unsigned.length));
        assertFalse(Arrays.equals(one, other));
        assertEquals(-1, Arrays.mismatch(blanked(one), blanked(other)));
        assertArrayEquals(unsigned, SignedSamples.unsigned(), "the same judgement, drawn again");
    }

    /** The file without the signature, its time, and the identifier of the revision that follows from both. */
    private static byte[] blanked(byte[] pdf) {
        return new String(pdf, StandardCharsets.ISO_8859_1)
                .replaceFirst("/Contents <[0-9a-f]+>", "/Contents <>")
                .replaceFirst("/M \\(D:[^)]*\\)", "/M ()")
                .replaceAll("/ID \\[(<[0-9A-F]+>) <[0-9A-F]+>\\]", "/ID [$1 <>]")
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    @Test
    void aSignedCertificateIsStillPdfA3b() throws Exception {
        byte[] pdf = new PdfSigner(key("RSA"), Optional.empty()).sign(unsigned, AT);
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser =
                        Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_B);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_B, false)) {
            ValidationResult result = validator.validate(parser);
            assertTrue(result.isCompliant(), () -> result.getFailedChecks().toString());
        }
    }

    @Test
    void anExpiredKeySignsNothing() throws Exception {
        PdfSigner signer = new PdfSigner(key("EC"), Optional.empty());
        CannotSignException refusal =
                assertThrows(CannotSignException.class, () -> signer.sign(unsigned, TestKeys.TO.plusSeconds(1)));
        assertTrue(refusal.getMessage().contains("expired"), refusal.getMessage());
    }

    @Test
    void aTimeStampAuthorityConfirmsWhen() throws Exception {
        TestKeys.Keyed stamps = TestKeys.timeStamps(authority);
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            try (exchange) {
                byte[] answer = answer(stamps, exchange.getRequestBody().readAllBytes());
                exchange.sendResponseHeaders(200, answer.length);
                exchange.getResponseBody().write(answer);
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        server.start();
        try {
            String address = "http://localhost:" + server.getAddress().getPort() + "/";
            byte[] pdf = new PdfSigner(key("EC"), Optional.of(new TimeStampAuthority(address))).sign(unsigned, AT);
            assertEquals(
                    SignatureLevel.PAdES_BASELINE_T,
                    validated(pdf).getDiagnosticData().getSignatures().get(0).getSignatureFormat());
            try (PDDocument document = Loader.loadPDF(pdf)) {
                PdfSignature signature = PdfSignature.firstOf(document, pdf).orElseThrow();
                assertEquals(Optional.of(AT.plusSeconds(2)), signature.stamped());
                assertEquals(Optional.of("CN=Invented Authority"), signature.stampedBy());
            }
        } finally {
            server.stop(0);
        }
    }

    private static byte[] answer(TestKeys.Keyed stamps, byte[] request) throws Exception {
        TimeStampTokenGenerator tokens = new TimeStampTokenGenerator(
                new JcaSimpleSignerInfoGeneratorBuilder()
                        .build("SHA256withRSA", stamps.pair().getPrivate(), stamps.certificate()),
                new BcDigestCalculatorProvider()
                        .get(new AlgorithmIdentifier(new ASN1ObjectIdentifier(TSPAlgorithms.SHA256.getId()))),
                new ASN1ObjectIdentifier("1.2.3.4"));
        tokens.addCertificates(new JcaCertStore(List.of(stamps.certificate())));
        return new TimeStampResponseGenerator(tokens, TSPAlgorithms.ALLOWED)
                .generate(new TimeStampRequest(request), BigInteger.ONE, Date.from(AT.plusSeconds(2)))
                .getEncoded();
    }

    @Test
    void aTimeStampAuthorityThatDoesNotAnswerIsNamed() throws Exception {
        PdfSigner signer = new PdfSigner(key("EC"), Optional.of(new TimeStampAuthority("http://localhost:1/stamps")));
        CannotSignException refusal = assertThrows(CannotSignException.class, () -> signer.sign(unsigned, AT));
        assertTrue(refusal.getMessage().contains("http://localhost:1/stamps gave no time stamp"), refusal.getMessage());
        assertThrows(CannotSignException.class, () -> new TimeStampAuthority("no address"));
    }

    @Test
    void aDeviceSignsThroughPkcs11() throws Exception {
        Path library = Path.of("/usr/lib/softhsm/libsofthsm2.so");
        if (!"required".equals(System.getenv("REELPROOF_SIGNATURE_TOOLS"))) {
            assumeTrue(Files.exists(library), "SoftHSM is not installed");
        }
        // The library reads its place from the environment of this very process, which nobody can set here: a process
        // of its own signs.
        Path tokens = Files.createDirectories(folder.resolve("tokens"));
        Path settings = Files.writeString(
                folder.resolve("softhsm2.conf"), "directories.tokendir = " + tokens + "\nobjectstore.backend = file\n");
        ProcessBuilder device = new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                SignsByDevice.class.getName(),
                library.toString(),
                folder.resolve("device.pdf").toString());
        device.environment().put("SOFTHSM2_CONF", settings.toString());
        Process process = device.redirectErrorStream(true).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), said);
        assertTrue(said.contains("does not open: CKR_PIN_INCORRECT"), said);
        byte[] pdf = Files.readAllBytes(folder.resolve("device.pdf"));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PdfSignature signature = PdfSignature.firstOf(document, pdf).orElseThrow();
            assertEquals(
                    "CN=Invented Device",
                    signature.signer().getSubjectX500Principal().getName());
        }
    }

    @Test
    void theMessageIsHexadecimalAndNothingElseIsLeftOut() throws Exception {
        byte[] pdf = new PdfSigner(key("EC"), Optional.empty()).sign(unsigned, AT);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            int[] range = document.getLastSignatureDictionary().getByteRange();
            String left = new String(pdf, range[1] + 1, range[2] - range[1] - 2, StandardCharsets.ISO_8859_1);
            assertTrue(HexFormat.of().parseHex(left).length > 1000);
            assertEquals(pdf.length, range[2] + range[3]);
        }
    }
}
