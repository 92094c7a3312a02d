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
        "us-filled-cable-19awg, 1bdbd191012e0e0014884c2bc2928c50e7be09c62ccf10902a6aecdd5b73b3df",
        "us-filled-cable-22awg, ba4f1d3df0a6834482bec5b5ffc993ae3e72d37c02c4a2de7d7a496f612daee5",
        "us-filled-cable-24awg, a8342bd6522f7c220a29d85b19c1310ff42e092e5380ab47e6a25ed95e32a3e6",
        "us-filled-cable-26awg, faf8b9f649edd8ffe1fd1c68e2885e0158e0e1b8107f15e4d49391c3c95c7a29",
        "us-filled-t1c-cable-19awg, 34591148b5085273c76654d5dd8332989498313b045c3b042d836878a72d0c42",
        "us-filled-t1c-cable-22awg, 0c2d66095299810d8508700ce2ea18cbca6152ab30cd3c214aff230b5809eb7e",
        "us-filled-t1c-cable-24awg, 9d9d857ffa0e0bcd01b4979d5b43852d7bf105aa003488c14379786a0dfebc5c",
        "us-terminating-cable-22awg, e4341b657101e15615da761439d00dc0a7f160b1729cdfbea6a60428d14a5220",
        "us-terminating-cable-24awg, 5ca60a26d26ec6e182c54c6170fdd16ac764debc89b4603c2bb94f49e956d111"
    })
    void theFirstRevisionsAreAsTheyWere(String id, String sha256) {
        LimitSet set = LimitSamples.shipped(id);

        assertEquals(1, set.revision());
        assertEquals(sha256, set.sha256(), "write a new revision of " + Path.of("limits", id + ".yaml") + " instead");
    }

    @ParameterizedTest
    @CsvSource({
        "us-buried-wire-22awg, 85c01aa420911c0ecbc02ddf87f24f7e22adcff1ae710f8006cb25837e6ba78f",
        "us-buried-wire-24awg, 01cc6e53bd4d4124f1d87d1e9b7d975294e9425747dbb738be559bdb9044f474",
        "us-terminating-cable-22awg, a2b51d037cb82a292670fb91fb9b1b8564b622bbea94221e82c5e2c7c37c654f",
        "us-terminating-cable-24awg, 1919d44c01163aa15d5f5e03e8c5bcc7b93a354b43d7b8dcb18b468a8496d092"
    })
    void theSecondRevisionsAreAsTheyWere(String id, String sha256) {
        assertEquals(sha256, LimitSamples.shipped(id, 2).sha256(), "write a new revision of " + id + " instead");
    }
}
