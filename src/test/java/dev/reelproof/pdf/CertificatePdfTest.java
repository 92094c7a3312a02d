package dev.reelproof.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import dev.reelproof.certificate.CertificateSamples;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class CertificatePdfTest {
    @Test
    void sameContentGivesTheSameBytes() throws Exception {
        byte[] one = CertificatePdf.render(CertificateSamples.fourPair());
        Files.write(Path.of("target/cert.pdf"), one);
        Files.write(Path.of("target/cert25.pdf"), CertificatePdf.render(CertificateSamples.content(25, 500)));
        assertArrayEquals(one, CertificatePdf.render(CertificateSamples.fourPair()));
    }
}
