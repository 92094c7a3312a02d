package dev.reelproof.pdf.signature;

import eu.europa.esig.dss.enumerations.DigestAlgorithm;
import eu.europa.esig.dss.model.TimestampBinary;
import eu.europa.esig.dss.spi.x509.tsp.TSPSource;
import java.io.IOException;
import java.math.BigInteger;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.security.SecureRandom;
import java.time.Duration;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;

/** Asks a time-stamp authority over HTTP to confirm that something was there at a time (RFC 3161, from memory). */
public final class TimeStampAuthority implements TSPSource {
    private static final long serialVersionUID = 1;
    private static final Duration LONGEST = Duration.ofSeconds(15);
    private static final int OK = 200;
    private static final int NONCE_BITS = 64;

    private final URI address;

    /**
     * An authority.
     *
     * @throws CannotSignException when the address is none
     */
    public TimeStampAuthority(String address) {
        try {
            this.address = new URI(address);
        } catch (java.net.URISyntaxException e) {
            throw new CannotSignException("REELPROOF_SIGNING_TIMESTAMP is no address: " + e.getMessage(), e);
        }
    }

    @Override
    public TimestampBinary getTimeStampResponse(DigestAlgorithm algorithm, byte[] digest) {
        try {
            TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
            generator.setCertReq(true);
            TimeStampRequest request = generator.generate(
                    new ASN1ObjectIdentifier(algorithm.getOid()),
                    digest,
                    new BigInteger(NONCE_BITS, new SecureRandom()));
            TimeStampResponse response = new TimeStampResponse(asked(request.getEncoded()));
            response.validate(request);
            if (response.getTimeStampToken() == null) {
                throw new CannotSignException(
                        "The time-stamp authority " + address + " refused: " + response.getStatusString());
            }
            return new TimestampBinary(response.getTimeStampToken().getEncoded());
        } catch (IOException | TSPException e) {
            throw new CannotSignException(
                    "The time-stamp authority " + address + " gave no time stamp (" + e
                            + "). It must be reachable from here; see REELPROOF_SIGNING_TIMESTAMP.",
                    e);
        }
    }

    private byte[] asked(byte[] request) throws IOException {
        try {
            HttpResponse<byte[]> answer = HttpClient.newBuilder()
                    .connectTimeout(LONGEST)
                    .build()
                    .send(
                            HttpRequest.newBuilder(address)
                                    .timeout(LONGEST)
                                    .header("Content-Type", "application/timestamp-query")
                                    .POST(HttpRequest.BodyPublishers.ofByteArray(request))
                                    .build(),
                            HttpResponse.BodyHandlers.ofByteArray());
            if (answer.statusCode() != OK) {
                throw new IOException("HTTP status " + answer.statusCode());
            }
            return answer.body();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        }
    }
}
