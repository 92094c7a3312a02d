package dev.reelproof.api.limits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.api.Quantity;
import dev.reelproof.limit.LimitSamples;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.LimitSetReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class LimitSetAnswerTest {

    @Test
    void saysHowTheSetReadsNetworkAnalyserData() throws IOException {
        String shipped = Files.readString(Path.of("limits/category-6a-cable.yaml"));
        LimitSet set = new LimitSetReader(LimitSamples.LAW_CHECK)
                .read(
                        "own.yaml",
                        shipped + "network: { differential: 120 ohm, common: 30 ohm, acr-f-loss: disturbing }\n");

        assertEquals(
                new LimitSetAnswer.NetworkAnswer(new Quantity(120, "ohm"), new Quantity(30, "ohm"), "disturbing"),
                LimitSetAnswer.of(set).network());
    }
}
