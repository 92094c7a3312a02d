package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.store.AdvisoryLocks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.stream.Stream;
import org.hibernate.Session;

/** Keeps transactions that register lots of one plant out of each other's way, also those of other copies of the service. */
@ApplicationScoped
public class LotLocks {
    private final Session session;

    LotLocks(Session session) {
        this.session = session;
    }

    /** Gives the transaction the plant's lots to itself: no other registers one, and none begins to wait. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void takeAll(String plant) {
        AdvisoryLocks.take(session, plant + "/lots");
    }

    /**
     * Lets the transaction register one lot beside others. Children of one parent register one after the other, so that what they take
     * together is not more than there is; so do outputs of one run, so that they tell the same of it.
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void takeOne(Lot lot) {
        String plant = lot.plant();
        AdvisoryLocks.share(session, plant + "/lots");
        Stream<String> names = Stream.concat(
                        Stream.of(lot.id()), lot.inputs().stream().map(LotInput::lot))
                .map(id -> plant + "/lot/" + id);
        Stream<String> runs = lot.run() == null
                ? Stream.of()
                : Stream.of(plant + "/run/" + lot.run().id());
        AdvisoryLocks.take(session, Stream.concat(names, runs).toArray(String[]::new));
    }
}
