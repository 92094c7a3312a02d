package dev.reelproof.app.limits;

import dev.reelproof.access.Action;
import dev.reelproof.access.Approval;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.access.ApprovalEffect;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.limit.WrongRevision;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.limits.LimitSetArchive;
import dev.reelproof.store.limits.WrongRevisions;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks a revision of a limit set as found wrong at a plant: one person asks, the approval of another does it. The file stays as it
 * is; what the plant certified by it is in question from then on, and nothing more is certified by it.
 */
@ApplicationScoped
public class MarkRevisionWrong implements ApprovalEffect {
    private static final Pattern SUBJECT = Pattern.compile("limit-set/(?<id>.+)/(?<revision>[1-9][0-9]{0,8})/wrong");
    private static final int MOST_NAMED = 100;

    private final LimitSets limitSets;
    private final LimitSetArchive archive;
    private final WrongRevisions wrongRevisions;
    private final Certificates certificates;
    private final Callers callers;
    private final AuditTrail audit;

    MarkRevisionWrong(
            LimitSets limitSets,
            LimitSetArchive archive,
            WrongRevisions wrongRevisions,
            Certificates certificates,
            Callers callers,
            AuditTrail audit) {
        this.limitSets = limitSets;
        this.archive = archive;
        this.wrongRevisions = wrongRevisions;
        this.certificates = certificates;
        this.callers = callers;
        this.audit = audit;
    }

    private record Meant(String limitSet, int revision) {}

    /** The subject of an approval to mark a revision as wrong. */
    static String subject(String limitSet, int revision) {
        return "limit-set/" + limitSet + "/" + revision + "/wrong";
    }

    private static Meant meant(String subject) {
        Matcher matcher = SUBJECT.matcher(subject);
        if (!matcher.matches()) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/subject",
                    "'" + subject + "' names no revision of a limit set; name it such as limit-set/ID/3/wrong");
        }
        return new Meant(matcher.group("id"), Integer.parseInt(matcher.group("revision")));
    }

    @Override
    public Action action() {
        return Action.CHANGE_LIMITS;
    }

    @Override
    @Transactional(Transactional.TxType.MANDATORY)
    public void requireSubject(String plant, String subject) {
        callers.current().require(Action.CHANGE_LIMITS, plant);
        Meant meant = meant(subject);
        // A plant's own file may be gone; what was judged by it is kept.
        if (limitSets.revision(meant.limitSet(), meant.revision()).isEmpty()
                && archive.text(meant.limitSet(), meant.revision()).isEmpty()) {
            throw new NothingThereException("There is no limit set '" + meant.limitSet() + "' of revision "
                    + meant.revision() + "; GET /api/v1/limit-sets lists them.");
        }
        requireNotMarked(plant, meant);
    }

    @Override
    @Transactional(Transactional.TxType.MANDATORY)
    public void take(String plant, Approval given) {
        Meant meant = meant(given.subject());
        wrongRevisions.lockForMarking(plant);
        requireNotMarked(plant, meant);
        WrongRevision wrong = new WrongRevision(
                meant.limitSet(),
                meant.revision(),
                given.reason(),
                given.requestedBy(),
                Objects.requireNonNull(given.decidedBy(), "a given approval has a person"),
                Objects.requireNonNull(given.decided(), "a given approval has a time"));
        List<String> questioned = certificates.judgedBy(plant, meant.limitSet(), meant.revision(), MOST_NAMED + 1);
        wrongRevisions.keep(plant, wrong, given.id());
        audit.write(
                plant,
                "limits-found-wrong",
                "limit-set/" + meant.limitSet(),
                given.reason(),
                Map.of(
                        "revision", meant.revision(),
                        "askedBy", given.requestedBy(),
                        "approval", given.id(),
                        "questionedCertificates",
                                questioned.stream().limit(MOST_NAMED).toList(),
                        "andMore", questioned.size() > MOST_NAMED));
    }

    private void requireNotMarked(String plant, Meant meant) {
        wrongRevisions.of(plant, meant.limitSet(), meant.revision()).ifPresent(before -> {
            throw new ConflictException(meant.limitSet() + " revision " + meant.revision() + " was marked as wrong on "
                    + before.at().toLocalDate() + " already: " + before.reason());
        });
    }
}
