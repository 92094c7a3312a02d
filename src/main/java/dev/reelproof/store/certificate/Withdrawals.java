package dev.reelproof.store.certificate;

import dev.reelproof.certificate.life.Withdrawal;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** The certificates that were taken back. A withdrawal is added, never changed. */
@ApplicationScoped
public class Withdrawals {
    private final Session session;
    private final Sealing sealing;

    Withdrawals(Session session, Sealing sealing) {
        this.session = session;
        this.sealing = sealing;
    }

    private record Row(String number, String reason, String askedBy, String withdrawnBy, Instant withdrawn) {
        Withdrawal withdrawal() {
            return new Withdrawal(reason, askedBy, withdrawnBy, UtcTimes.utc(withdrawn));
        }
    }

    /**
     * Keeps a withdrawal; the database takes one a number, by two persons.
     *
     * @param approval the id of the approval by which it is done
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keep(String plant, String number, Withdrawal withdrawal, long approval) {
        session.createNativeMutationQuery(
                        """
                        insert into certificate_withdrawal (plant, number, reason, asked_by, withdrawn_by, withdrawn, approval)
                        values (:plant, :number, :reason, :asked, :by, :at, :approval)""")
                .setParameter("plant", plant)
                .setParameter("number", number)
                .setParameter("reason", withdrawal.reason())
                .setParameter("asked", withdrawal.askedBy())
                .setParameter("by", withdrawal.approvedBy())
                .setParameter("at", UtcTimes.instant(withdrawal.at()))
                .setParameter("approval", approval)
                .executeUpdate();
        sealing.seal(LeafKind.WITHDRAWAL, plant, List.of(number));
    }

    /** The withdrawal of a number; empty when it was not withdrawn. */
    @Transactional
    public Optional<Withdrawal> of(String plant, String number) {
        return Optional.ofNullable(of(plant, List.of(number)).get(number));
    }

    /** The withdrawals among these numbers. */
    @Transactional
    public Map<String, Withdrawal> of(String plant, Collection<String> numbers) {
        return session
                .createNativeQuery(
                        """
                        select number, reason, asked_by, withdrawn_by, withdrawn from certificate_withdrawal
                        where plant = :plant and number = any(:numbers)""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("numbers", numbers.toArray(String[]::new))
                .getResultList()
                .stream()
                .collect(Collectors.toMap(Row::number, Row::withdrawal));
    }
}
