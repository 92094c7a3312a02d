package dev.reelproof.wording;

import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.record.concession.Terms;
import java.util.List;
import java.util.Optional;

/** Says what a concession concedes, what its approval does, and who agreed on it. */
final class ConcessionSentences {
    private final Catalogue words;

    ConcessionSentences(Catalogue words) {
        this.words = words;
    }

    String title(Terms terms) {
        if (terms instanceof Terms.Regrade regrade) {
            return words.text("concession.regrade", "product", regrade.product());
        }
        if (terms instanceof Terms.Shorten shorten) {
            return words.text("concession.shorten", "length", length(shorten));
        }
        return words.text("concession.use-as-is");
    }

    String effect(Concession concession) {
        String id = String.valueOf(concession.id());
        String reel = concession.reel();
        if (concession.terms() instanceof Terms.Regrade regrade) {
            return words.text(
                    "concession.regrade.effect",
                    "reel",
                    reel,
                    "product",
                    regrade.product(),
                    "from",
                    concession.before().product(),
                    "id",
                    id);
        }
        if (concession.terms() instanceof Terms.Shorten shorten) {
            return words.text(
                    "concession.shorten.effect",
                    "reel",
                    reel,
                    "length",
                    length(shorten),
                    "from",
                    lengthBefore(concession),
                    "id",
                    id);
        }
        return words.text("concession.use-as-is.effect", "reel", reel, "id", id);
    }

    String allows(Concession approved, ConcessionStanding bearing) {
        if (approved.terms() instanceof Terms.Shorten shorten) {
            return words.text(
                    bearing.untested().isPresent() ? "concession.shorten.untested" : "concession.shorten.allows",
                    "length",
                    length(shorten));
        }
        if (bearing.granted().isEmpty()) {
            return words.text("concession.past");
        }
        return approved.terms() instanceof Terms.Regrade regrade
                ? words.text("concession.regrade.allows", "product", regrade.product())
                : words.text("concession.use-as-is.allows");
    }

    /** Why a reel may not go, the shortening first: it comes before what is asked for since. */
    Optional<String> unfinished(ConcessionStanding standing) {
        return standing.untested()
                .map(cut -> words.text("concession.unfinished.untested", "id", String.valueOf(cut.id())))
                .or(() -> standing.open()
                        .map(open -> words.text(
                                "concession.unfinished.open",
                                "id",
                                String.valueOf(open.id()),
                                "asker",
                                open.requestedBy().name())));
    }

    String statement(Concession approved, List<String> requirements) {
        String id = String.valueOf(approved.id());
        if (approved.terms() instanceof Terms.Regrade regrade) {
            return words.text(
                    "concession.regrade.statement",
                    "id",
                    id,
                    "from",
                    approved.before().product(),
                    "product",
                    regrade.product());
        }
        if (approved.terms() instanceof Terms.Shorten shorten) {
            return words.text(
                    "concession.shorten.statement",
                    "id",
                    id,
                    "from",
                    lengthBefore(approved),
                    "length",
                    length(shorten));
        }
        return words.text("concession.use-as-is.statement", "id", id, "requirements", String.join("; ", requirements));
    }

    String persons(Concession approved) {
        Concession.Decision approval = approved.approval();
        return words.text(
                "concession.persons",
                "id",
                String.valueOf(approved.id()),
                "asker",
                approved.requestedBy().name(),
                "askerRole",
                role(approved.requestedBy()),
                "asked",
                approved.requested().toLocalDate().toString(),
                "reason",
                asSentence(approved.reason()),
                "approver",
                approval.by().name(),
                "approverRole",
                role(approval.by()),
                "approved",
                approval.at().toLocalDate().toString(),
                "why",
                asSentence(approval.reason()));
    }

    private String role(Concession.Person person) {
        return words.text("role." + person.role());
    }

    private static String asSentence(String text) {
        return text.endsWith(".") ? text : text + ".";
    }

    private static String length(Terms.Shorten shorten) {
        return Figures.length(shorten.value(), shorten.unit());
    }

    private static String lengthBefore(Concession concession) {
        return Figures.length(concession.before().length(), concession.before().unit());
    }
}
