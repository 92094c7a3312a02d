package dev.reelproof.certificate.life;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What no longer matches is named. */
class DifferenceTest {
    private static final FileParts ISSUED = new FileParts(List.of("p1", "p2"), Map.of("result.json", "a"));

    private static List<Difference> between(FileParts found) {
        return Difference.between(ISSUED, Optional.of(found), 0);
    }

    @Test
    void namesPagesAndAttachments() {
        assertEquals(
                List.of(new Difference.PageCount(1, 2)), between(new FileParts(List.of("p1"), ISSUED.attachments())));
        assertEquals(List.of(new Difference.Page(2)), between(new FileParts(List.of("p1", "x"), ISSUED.attachments())));
        assertEquals(
                List.of(new Difference.Attachment("result.json", Difference.Attachment.Change.EXCHANGED)),
                between(new FileParts(ISSUED.pages(), Map.of("result.json", "b"))));
        assertEquals(
                List.of(
                        new Difference.Attachment("other.json", Difference.Attachment.Change.ADDED),
                        new Difference.Attachment("result.json", Difference.Attachment.Change.MISSING)),
                between(new FileParts(ISSUED.pages(), Map.of("other.json", "a"))));
    }

    @Test
    void saysSoWhenNothingThatIsSeenDiffers() {
        assertEquals(List.of(new Difference.OtherBytes()), between(ISSUED));
    }

    @Test
    void aSecondRevisionIsNamedThoughItChangesNothingThatIsSeen() {
        assertEquals(List.of(new Difference.Appended(9)), Difference.between(ISSUED, Optional.of(ISSUED), 9));
        assertEquals(List.of(new Difference.Unreadable()), Difference.between(ISSUED, Optional.empty(), 0));
    }
}
