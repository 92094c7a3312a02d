package dev.reelproof.demo;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DemoStaysHereTest {

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "::", "192.0.2.7", "no.such.host.invalid"})
    void theDemoIsNotServedToOtherMachinesUnlessASecondSettingSaysSo(String host) {
        IllegalStateException refusal =
                assertThrows(IllegalStateException.class, () -> DemoStaysHere.require(true, host, false));
        assertTrue(refusal.getMessage().contains("REELPROOF_DEMO_FOR_ANYONE_ON_THE_NETWORK=true"));
        assertDoesNotThrow(() -> DemoStaysHere.require(true, host, true));
        assertDoesNotThrow(() -> DemoStaysHere.require(false, host, false));
    }

    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "localhost", "::1", "127.8.8.8"})
    void onThisMachineItIs(String host) {
        assertDoesNotThrow(() -> DemoStaysHere.require(true, host, false));
    }

    /** An empty host is every address to the server, and this machine to the look-up of names. */
    @Test
    void anEmptyHostIsEveryAddress() {
        assertThrows(IllegalStateException.class, () -> DemoStaysHere.require(true, "", false));
    }
}
