package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import org.junit.jupiter.api.Test;

class PortTest {
    @Test
    void portsAndPairsAreCountedFromOne() {
        assertEquals("near end, pair 1, conductor a", new Port(1, End.NEAR, 1, Conductor.A).place());
        assertThrows(IllegalArgumentException.class, () -> new Port(0, End.NEAR, 1, Conductor.A));
        assertThrows(IllegalArgumentException.class, () -> new Port(1, End.NEAR, 0, Conductor.A));
        assertThrows(IllegalArgumentException.class, () -> new Port(1, null, 1, Conductor.A));
        assertThrows(IllegalArgumentException.class, () -> new Port(1, End.NEAR, 1, null));
    }
}
