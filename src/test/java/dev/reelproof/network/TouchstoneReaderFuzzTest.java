package dev.reelproof.network;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever is done to a file, it is read or refused with a line of its own; nothing else comes out. */
class TouchstoneReaderFuzzTest {
    private static final long SEED = 4;
    private static final int TRIES = 5000;
    private static final String VERSION_TWO =
            "[Version] 2.0\n# MHz S MA R 50\n[Number of Ports] 4\n[Number of Frequencies] 2\n"
                    + "[Reference] 50 60 70\n80\n[Matrix Format] Lower\n[Network Data]\n1 .1 9\n.1 9 .2 8\n.1 9 .2 8 .3 7\n.1 9 .2 8 .3 7 .4"
                    + " 6\n2 .1 9\n.1 9 .2 8\n.1 9 .2 8 .3 7\n.1 9 .2 8 .3 7 .4 6\n[End]\n";

    @Test
    void readsOrRefuses() throws IOException {
        Random random = new Random(SEED);
        String versionOne = new SyntheticCable(1, 100, 0.68).touchstone(new double[] {1, 2, 3});
        String letters = VERSION_TWO + "0123456789.eE+-!#[] \n\r\t\0ÿNaInf";
        int read = 0;
        int refused = 0;
        for (int i = 0; i < TRIES; i++) {
            StringBuilder text = new StringBuilder(random.nextBoolean() ? versionOne : VERSION_TWO);
            for (int change = random.nextInt(4); change >= 0 && text.length() > 1; change--) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(4)) {
                    case 0 -> text.setCharAt(at, letters.charAt(random.nextInt(letters.length())));
                    case 1 -> text.insert(at, letters.charAt(random.nextInt(letters.length())));
                    case 2 -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(40)));
                    default -> text.setLength(at);
                }
            }
            byte[] bytes = text.toString().getBytes(StandardCharsets.ISO_8859_1);
            try {
                NetworkData data = new TouchstoneReader().read("x.ts", 4, new ByteArrayInputStream(bytes));
                assertTrue(data.size() > 0, "seed " + SEED + ", try " + i);
                read++;
            } catch (NetworkException e) {
                assertTrue(e.where().matches("x\\.ts:[1-9]\\d*"), "seed " + SEED + ", try " + i + ": " + e.where());
                refused++;
            }
        }
        assertTrue(read > TRIES / 50 && refused > TRIES / 50, read + " read, " + refused + " refused");
    }
}
