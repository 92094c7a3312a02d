package dev.reelproof;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.pdf.SignedSamples;
import dev.reelproof.pdf.signature.KeyStores;
import dev.reelproof.pdf.signature.PdfSigner;
import dev.reelproof.pdf.signature.TestKeys;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command says in sentences what a file shows, and ends with a code that a script can read. */
class VerifyCommandTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private java.util.logging.Level level;

    @TempDir
    Path folder;

    private Path pdf;
    private Path pem;

    @BeforeEach
    void sign() throws Exception {
        level = java.util.logging.Logger.getLogger("").getLevel();
        TestKeys.Keyed authority = TestKeys.authority();
        TestKeys.Keyed plant = TestKeys.plant(authority, "EC");
        PdfSigner signer = new PdfSigner(
                KeyStores.file(TestKeys.file(folder, authority, plant, "k"), TestKeys.PASSWORD, Optional.empty()),
                Optional.empty());
        pdf = Files.write(
                folder.resolve("a certificate.pdf"),
                signer.sign(SignedSamples.unsigned(), Instant.parse("2026-03-02T15:20:00Z")));
        pem = Files.writeString(
                folder.resolve("plant.pem"),
                "-----BEGIN CERTIFICATE-----\n"
                        + Base64.getMimeEncoder()
                                .encodeToString(plant.certificate().getEncoded())
                        + "\n-----END CERTIFICATE-----\n");
    }

    @AfterEach
    void restore() {
        java.util.logging.Logger.getLogger("").setLevel(level);
    }

    private int run(String... arguments) {
        out.reset();
        err.reset();
        return Commands.run(List.of(arguments), new PrintStream(out), new PrintStream(err));
    }

    private void says(ByteArrayOutputStream where, String words) {
        String said = where.toString(StandardCharsets.UTF_8);
        assertTrue(said.contains(words), said);
    }

    @Test
    void theCodeTellsGenuineFromOpenFromChangedFromUnreadable() throws Exception {
        assertEquals(0, run("verify", pdf.toString(), "--trust", pem.toString()));
        says(out, "Unchanged since the plant signed it");
        assertEquals(0, run("verify", "--trust", pem.toString(), pdf.toString()));
        assertEquals(3, run("verify", pdf.toString()));
        says(out, "give the plant's certificate");
        byte[] bytes = Files.readAllBytes(pdf);
        Path changed = Files.write(folder.resolve("changed.pdf"), java.util.Arrays.copyOf(bytes, bytes.length + 3));
        assertEquals(1, run("verify", changed.toString(), "--trust", pem.toString()));
        says(out, "! Something was appended");
        says(out, "NOT AS IT WAS ISSUED");
        assertEquals(2, run("verify", pem.toString()));
        says(err, "is no PDF that can be read");
    }

    @Test
    void wrongUseIsAnsweredWithHowItIsUsed() throws Exception {
        assertEquals(2, run("verify"));
        says(err, "verify FILE.pdf");
        assertEquals(2, run("verify", folder.resolve("none.pdf").toString()));
        says(err, "is not there");
        assertEquals(2, run("verify", pdf.toString(), "--trust"));
        assertEquals(2, run("verify", pdf.toString(), "--trust", pdf.toString()));
        says(err, "has no X.509 certificate");
        assertEquals(2, run("verify", pdf.toString(), "--fast"));
        assertEquals(2, run("verfiy", pdf.toString()));
        says(err, "There is no command 'verfiy'");
        says(err, "verify FILE.pdf");
    }

    @Test
    void optionsAndNothingMeanTheService() {
        assertFalse(Commands.isMeant());
        assertFalse(Commands.isMeant("-Dx=y"));
        assertTrue(Commands.isMeant("verify"));
    }
}
