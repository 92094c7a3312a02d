package dev.reelproof.access;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a caller may, by role, plant and kind. */
class CallerTest {
    private static Caller caller(Caller.Kind kind, String plant, Role... roles) {
        return new Caller(kind, "anna", plant, Set.of(roles), null);
    }

    @ParameterizedTest
    @EnumSource(Action.class)
    void nobodyAndTheServiceMayNothing(Action action) {
        assertThrows(NotAuthenticatedException.class, () -> Caller.nobody("192.0.2.1")
                .require(action));
        assertThrows(PermissionDeniedException.class, () -> Caller.SERVICE.require(action));
    }

    @Test
    void aRefusalNamesTheRolesThatMay() {
        Caller technician = caller(Caller.Kind.PERSON, null, Role.TECHNICIAN);
        assertDoesNotThrow(() -> technician.require(Action.UPLOAD));
        assertEquals(
                "This needs the role engineer or quality-manager.",
                assertThrows(PermissionDeniedException.class, () -> technician.require(Action.HOLD))
                        .getMessage());
    }

    @Test
    void aCallerOfAPlantActsThereAlone() {
        Caller ofNorth = caller(Caller.Kind.TOKEN, "north", Role.ADMINISTRATOR);
        assertDoesNotThrow(() -> ofNorth.require(Action.MANAGE_USERS, "north"));
        assertThrows(PermissionDeniedException.class, () -> ofNorth.require(Action.MANAGE_USERS, "south"));
        assertThrows(PermissionDeniedException.class, ofNorth::requireEveryPlant);
        assertDoesNotThrow(() -> caller(Caller.Kind.TOKEN, null).requirePlant("south"));
        assertDoesNotThrow(() -> caller(Caller.Kind.TOKEN, null).requireEveryPlant());
    }

    @Test
    void aPersonIsKnownHoweverTheNameIsSpeltAndATokenIsNoPerson() {
        assertTrue(caller(Caller.Kind.PERSON, null).isPerson("ANNA"));
        assertFalse(caller(Caller.Kind.PERSON, null).isPerson("ben"));
        assertFalse(caller(Caller.Kind.TOKEN, null).isPerson("anna"));
        assertTrue(caller(Caller.Kind.TOKEN, null).is("token", "Anna"));
        assertThrows(PermissionDeniedException.class, () -> caller(Caller.Kind.TOKEN, null)
                .requirePerson());
    }
}
