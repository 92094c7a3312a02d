package dev.reelproof.app.certificate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.app.Settings;
import dev.reelproof.pdf.Provenance.Signing;
import dev.reelproof.pdf.signature.TestKeys;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.runtime.configuration.ConfigurationException;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who configured a key wrongly learns it at the start; a key that expires stops certificates and nothing else. */
class SigningOfPlantTest {
    private static final Instant DURING = Instant.parse("2026-06-01T00:00:00Z");

    @TempDir
    Path folder;

    private String file;

    @BeforeEach
    void make() throws Exception {
        TestKeys.Keyed authority = TestKeys.authority();
        file = TestKeys.file(folder, authority, TestKeys.plant(authority, "EC"), "plant")
                .toString();
    }

    private SigningOfPlant signing(Instant now, Map<String, String> properties) {
        SmallRyeConfig config = new SmallRyeConfigBuilder()
                .withMapping(PaperSettings.class)
                .withMapping(Settings.class)
                .withValidateUnknown(false)
                .withDefaultValue("reelproof.data", folder.toString())
                .withDefaultValues(properties)
                .build();
        return new SigningOfPlant(
                config.getConfigMapping(PaperSettings.class),
                config.getConfigMapping(Settings.class),
                Clock.fixed(now, ZoneOffset.UTC));
    }

    private static void doesNotStart(String words, SigningOfPlant signing) {
        ConfigurationException refusal =
                assertThrows(ConfigurationException.class, () -> signing.start(new StartupEvent()));
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
    }

    @Test
    void aFileThatIsMissingOrDoesNotOpenStopsTheStart() {
        doesNotStart(
                "none.p12 is not there",
                signing(
                        DURING,
                        Map.of(
                                "reelproof.signing.keystore",
                                folder.resolve("none.p12").toString())));
        doesNotStart(
                "does not open with the password given",
                signing(DURING, Map.of("reelproof.signing.keystore", file, "reelproof.signing.password", "wrong")));
        doesNotStart(
                "does not open with the password given", signing(DURING, Map.of("reelproof.signing.keystore", file)));
        doesNotStart(
                "leave one out",
                signing(DURING, Map.of("reelproof.signing.keystore", file, "reelproof.signing.pkcs11-library", file)));
    }

    @Test
    void anExpiredKeyLetsTheServiceStartAndIssuesNothing() {
        SigningOfPlant signing = signing(
                TestKeys.TO.plusSeconds(1),
                Map.of("reelproof.signing.keystore", file, "reelproof.signing.password", TestKeys.PASSWORD));
        signing.start(new StartupEvent());
        CannotBeSignedException refusal = assertThrows(CannotBeSignedException.class, signing::requireReady);
        assertTrue(refusal.getMessage().contains("expired at 2027-01-01"), refusal.getMessage());
    }

    @Test
    void aKeyThatHoldsIsThePlants() {
        SigningOfPlant signing = signing(
                DURING, Map.of("reelproof.signing.keystore", file, "reelproof.signing.password", TestKeys.PASSWORD));
        signing.start(new StartupEvent());
        signing.requireReady();
        assertEquals(Signing.PLANT, signing.signing());
    }

    @Test
    void withoutAKeyTheDemoKeyIsLeftUntilItIsNeeded() {
        SigningOfPlant signing = signing(DURING, Map.of());
        signing.start(new StartupEvent());
        assertEquals(Signing.DEMO, signing.signing());
        assertTrue(Files.notExists(folder.resolve("demo-signing-key.p12")));
        signing.requireReady();
        assertTrue(Files.exists(folder.resolve("demo-signing-key.p12")));
    }
}
