package dev.reelproof;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.runtime.QuarkusBindException;
import io.quarkus.runtime.configuration.ConfigurationException;
import java.net.BindException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What the person reads who starts a service that does not start. */
class MainTest {

    @Test
    void aPortInUseIsSaidInOneSentenceWithItsNumber() {
        Throwable taken = new QuarkusBindException("0.0.0.0", 8080, new BindException("Address already in use"));
        String said = "Port 8080 is taken by another program. Stop that program, or set QUARKUS_HTTP_PORT to another"
                + " port.";
        assertEquals(Optional.of(said), Main.reason(taken));
        assertEquals(Optional.of(said), Main.reason(new IllegalStateException("Unable to start", taken)));
    }

    @Test
    void aWrongSettingIsSaidInItsOwnWords() {
        assertEquals(
                Optional.of("no such level"),
                Main.reason(new RuntimeException("start", new ConfigurationException("no such level"))));
    }

    @Test
    void whatIsNoMatterOfSettingsGoesToTheLog() {
        assertEquals(Optional.empty(), Main.reason(new RuntimeException("start", new NullPointerException())));
    }
}
