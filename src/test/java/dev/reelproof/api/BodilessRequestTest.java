package dev.reelproof.api;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A request with neither a body nor a word of its size, as a script sends it: it is let through to who answers it. */
@QuarkusTest
class BodilessRequestTest {
    private static final int TEN_SECONDS = 10_000;

    @TestHTTPResource("/")
    URI service;

    @ParameterizedTest
    @ValueSource(strings = {"", "Content-Type: application/json\r\n"})
    void reachesTheRoute(String header) throws IOException {
        try (Socket socket = new Socket(service.getHost(), service.getPort())) {
            socket.setSoTimeout(TEN_SECONDS);
            String request =
                    "POST /api/v1/orders/SO-NONE/collective-certificate HTTP/1.1\r\nHost: x\r\nConnection: close\r\n"
                            + header + "\r\n";
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertEquals("401", answer.split(" ")[1], "nobody is signed in: " + answer);
        }
    }
}
