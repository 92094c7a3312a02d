package dev.reelproof.app.order;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.certificate.DraftCollective;
import dev.reelproof.app.certificate.FindCollectives;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.app.certificate.LivingCertificate;
import dev.reelproof.app.certificate.LivingCollective;
import dev.reelproof.app.certificate.NumberCertificates;
import dev.reelproof.app.certificate.SignCollective;
import dev.reelproof.app.certificate.SigningOfPlant;
import dev.reelproof.app.order.FindOrder.OrderedReel;
import dev.reelproof.app.order.NotAllCertifiedException.Reel;
import dev.reelproof.certificate.CertificateNumber;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.pdf.CollectiveDraft;
import dev.reelproof.store.certificate.CollectiveCertificates;
import dev.reelproof.store.certificate.CollectiveCertificates.ToSign;
import dev.reelproof.store.order.CertificateBatches;
import dev.reelproof.store.order.Orders;
import dev.reelproof.wording.OrderWords;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Issues one certificate over several reels of an order. Each of them must have a current certificate of its own and lack nothing for
 * shipping; the collective certificate names these and judges nothing. For one selection of certificates there is one.
 *
 * <p>As with those of single reels, its pages are laid out with no lock held, a short transaction looks again and numbers it, and its
 * signature follows.
 */
@ApplicationScoped
public class IssueCollective {
    /** No more reels stand on one certificate. */
    public static final int MOST_REELS = 200;

    /** How often the pages are laid out when certificates change meanwhile. */
    private static final int MOST_DRAFTS = 3;

    private final FindOrder find;
    private final Orders orders;
    private final CertificateBatches batches;
    private final CollectiveCertificates collectives;
    private final FindCollectives found;
    private final FindLives lives;
    private final DraftCollective drafting;
    private final NumberCertificates numbers;
    private final SigningOfPlant signing;
    private final SignCollective completion;
    private final Callers callers;
    private final Clock clock;

    IssueCollective(
            FindOrder find,
            Orders orders,
            CertificateBatches batches,
            CollectiveCertificates collectives,
            FindCollectives found,
            FindLives lives,
            DraftCollective drafting,
            NumberCertificates numbers,
            SigningOfPlant signing,
            SignCollective completion,
            Callers callers,
            Clock clock) {
        this.find = find;
        this.orders = orders;
        this.batches = batches;
        this.collectives = collectives;
        this.found = found;
        this.lives = lives;
        this.drafting = drafting;
        this.numbers = numbers;
        this.signing = signing;
        this.completion = completion;
        this.callers = callers;
        this.clock = clock;
    }

    /**
     * What came of asking.
     *
     * @param first false when one names these certificates already
     */
    public record Issued(LivingCollective certificate, boolean first) {}

    /** The certificates that are to be named. */
    private record Selection(@Nullable String customer, List<IssuedCertificate> named) {}

    /** What there is of a number: signed, waiting for its signature, or nothing, where the selection is no longer current. */
    private record Numbered(Optional<IssuedCollective> issued, Optional<ToSign> waiting) {}

    /**
     * Issues a collective certificate.
     *
     * @param reels the reels that it is for; empty for all that the order has
     * @throws dev.reelproof.access.PermissionDeniedException when the caller may not
     * @throws NothingThereException when no reel is registered for the order
     * @throws NotAllCertifiedException when reels have no current certificate, or are not of the order
     * @throws ConflictException when there are too many reels
     * @throws dev.reelproof.app.certificate.CannotBeSignedException when it cannot be signed now; its number is kept for it
     */
    public Issued issue(String plant, String order, List<String> reels) {
        callers.current().require(Action.ISSUE, plant);
        QuarkusTransaction.joiningExisting().run(() -> requireBound(plant, order, reels));
        completion.completeLeftBehind(plant);
        for (int i = 0; i < MOST_DRAFTS; i++) {
            Selection selection = QuarkusTransaction.joiningExisting().call(() -> select(plant, order, reels));
            signing.requireReady();
            try (CollectiveDraft draft = drafting.draft(plant, order, selection.customer(), selection.named())) {
                Numbered numbered =
                        QuarkusTransaction.joiningExisting().call(() -> number(plant, order, selection, draft));
                if (numbered.issued().isPresent()) {
                    return new Issued(found.living(numbered.issued().get()), false);
                }
                if (numbered.waiting().isPresent()) {
                    return complete(plant, numbered.waiting().get());
                }
            }
        }
        throw new ConflictException("Certificates of order " + order
                + " changed while the collective certificate was drawn; ask once more.");
    }

    private void requireBound(String plant, String order, List<String> reels) {
        int ofOrder = orders.countReels(plant, order);
        if (ofOrder == 0) {
            throw FindOrder.unknown(plant, order);
        }
        int asked = reels.isEmpty() ? ofOrder : reels.size();
        if (!(asked <= MOST_REELS)) {
            throw new ConflictException("A collective certificate is for at most " + MOST_REELS + " reels, not " + asked
                    + ". Name the reels of order " + order + " that each is to be for.");
        }
    }

    private Selection select(String plant, String order, List<String> reels) {
        FindOrder.Order all = find.one(plant, order);
        Map<String, OrderedReel> ofNumber = all.reels().stream()
                .collect(Collectors.toMap(one -> one.reel().line().reel().id(), Function.identity()));
        List<String> wanted = reels.isEmpty()
                ? ofNumber.keySet().stream().sorted().toList()
                : reels.stream().distinct().sorted().toList();
        List<Reel> without = new ArrayList<>();
        List<IssuedCertificate> named = new ArrayList<>();
        for (String reel : wanted) {
            OrderedReel ordered = ofNumber.get(reel);
            if (ordered == null) {
                without.add(new Reel(reel, "no reel of this order"));
            } else if (!ordered.needs().isEmpty()) {
                without.add(new Reel(reel, OrderWords.english().needs(ordered.needs())));
            } else {
                named.add(ordered.certificate().orElseThrow().certificate());
            }
        }
        if (!without.isEmpty()) {
            throw new NotAllCertifiedException(order, wanted.size(), without);
        }
        return new Selection(all.customers().isEmpty() ? null : String.join("; ", all.customers()), named);
    }

    /** Numbers a draft, so that it waits for its signature only; nothing comes of it when what it names is no longer current. */
    private Numbered number(String plant, String order, Selection selection, CollectiveDraft draft) {
        // Locked before it is read: who waited for the lock must see what the other wrote.
        batches.lock(plant, order);
        String names = draft.content().namesSha256();
        // What waits is asked for first: it is kept in the moment in which it no longer waits, and no lock of ours
        // holds that up.
        Optional<ToSign> waiting = collectives.waitingOfNames(plant, names);
        Optional<IssuedCollective> issued = collectives.ofNames(plant, names);
        if (issued.isPresent() || waiting.isPresent()) {
            return new Numbered(issued, waiting);
        }
        if (!areCurrent(plant, selection.named())) {
            return new Numbered(Optional.empty(), Optional.empty());
        }
        OffsetDateTime now = OffsetDateTime.now(clock);
        CertificateNumber number = numbers.next(plant, now.getYear());
        CollectiveContent content = draft.content().numbered(number, now);
        ToSign added = new ToSign(plant, content, now, draft.finish(content));
        collectives.add(added);
        return new Numbered(Optional.empty(), Optional.of(added));
    }

    private boolean areCurrent(String plant, List<IssuedCertificate> named) {
        return lives.of(plant, named).stream().map(LivingCertificate::life).allMatch(life -> life.isCurrent());
    }

    /** Signs and keeps what has its number. */
    private Issued complete(String plant, ToSign waiting) {
        return completion
                .complete(waiting)
                .map(issued -> new Issued(found.living(issued), true))
                .orElseGet(() -> new Issued(
                        found.living(collectives
                                .of(plant, waiting.content().number())
                                .orElseThrow()),
                        false));
    }
}
