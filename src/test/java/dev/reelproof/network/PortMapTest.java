package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PortMapTest {
    private static List<Port> two() {
        return new ArrayList<>(List.of(
                new Port(1, End.NEAR, 1, Conductor.A),
                new Port(2, End.NEAR, 1, Conductor.B),
                new Port(3, End.FAR, 1, Conductor.A),
                new Port(4, End.FAR, 1, Conductor.B)));
    }

    private static PortMapException refused(List<Port> ports) {
        return assertThrows(PortMapException.class, () -> PortMap.of(ports));
    }

    @Test
    void refusesAPortThatStandsTwice() {
        List<Port> ports = two();
        ports.add(new Port(3, End.NEAR, 2, Conductor.A));
        PortMapException refused = refused(ports);
        assertEquals(4, refused.index());
        assertTrue(refused.getMessage().contains("port 3 stands twice"), refused::getMessage);
    }

    @Test
    void refusesAPlaceThatStandsTwice() {
        List<Port> ports = two();
        ports.set(3, new Port(4, End.FAR, 1, Conductor.A));
        PortMapException refused = refused(ports);
        assertEquals(3, refused.index());
        assertTrue(refused.getMessage().contains("and so is port 3"), refused::getMessage);
    }

    @Test
    void refusesAPairWithOneConductor() {
        PortMapException refused = refused(two().subList(0, 3));
        assertEquals(PortMapException.WHOLE, refused.index());
        assertTrue(refused.getMessage().contains("port 3 is connected to the far end"), refused::getMessage);
    }

    @Test
    void mustNameThePortsOfTheFileAndNoOthers() {
        PortMap map = PortMap.of(two());
        map.requireFits(4);
        PortMapException one = assertThrows(PortMapException.class, () -> map.requireFits(5));
        assertEquals("the file has 5 ports; the map does not say where port 5 is connected", one.getMessage());
        assertEquals(PortMapException.WHOLE, one.index());
        PortMapException missing = assertThrows(PortMapException.class, () -> map.requireFits(6));
        assertTrue(missing.getMessage().contains("port 5 and 1 more"), missing::getMessage);
        PortMapException beyond = assertThrows(PortMapException.class, () -> map.requireFits(2));
        assertTrue(beyond.getMessage().contains("names port 3 too"), beyond::getMessage);
    }
}
