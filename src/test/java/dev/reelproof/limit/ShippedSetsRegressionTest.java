package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A revision that may have judged a reel is never edited: its digest is frozen here, as sha256sum of GNU coreutils gives it. */
class ShippedSetsRegressionTest {

    @ParameterizedTest
    @CsvSource({
        "category-5e-cable, 0d1e897a5d69e83f64827d04c4bbb312ad5f2f5911180242b3555ccabcb26834",
        "category-6-cable, 0e0e1cd99857725a255a880ab32be9cd788f08804f266b5c749ffeb48d8bb3fe",
        "category-6a-cable, 6db46d1ba16bd90add4e24425d093af12fe2fb259ef1f004a37f8950b80c8668",
        "us-buried-wire-22awg, b2d479a0fa4133dd1de6d27537e1f02630c259a4f6dc19054df2279c25203ec1",
        "us-buried-wire-24awg, 8aac2d39f33f5945fe1115ae3a09fbc02e57f03dc980fae4162335adc7dc50df",
        "us-terminating-cable-22awg, e4341b657101e15615da761439d00dc0a7f160b1729cdfbea6a60428d14a5220",
        "us-terminating-cable-24awg, 5ca60a26d26ec6e182c54c6170fdd16ac764debc89b4603c2bb94f49e956d111"
    })
    void theFirstRevisionsAreAsTheyWere(String id, String sha256) {
        LimitSet set = LimitSamples.shipped(id);

        assertEquals(1, set.revision());
        assertEquals(sha256, set.sha256(), "write a new revision of " + Path.of("limits", id + ".yaml") + " instead");
    }
}
