package dev.reelproof.app.reel;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.reel.ReelRegistration;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.reel.Changes;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.function.Supplier;

/** Registers a reel, or changes what is registered of it. */
@ApplicationScoped
public class RegisterReel {
    private final Plants plants;
    private final Callers callers;
    private final Products products;
    private final Reels reels;
    private final AuditTrail audit;
    private final Clock clock;

    RegisterReel(Plants plants, Callers callers, Products products, Reels reels, AuditTrail audit, Clock clock) {
        this.plants = plants;
        this.callers = callers;
        this.products = products;
        this.reels = reels;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * A reel as it is registered now.
     *
     * @param isNew whether it was registered by this
     */
    public record Registered(RegisteredReel reel, boolean isNew) {}

    /**
     * Registers a reel; the same registration again changes nothing.
     *
     * @param sent gives the registration; asked only once the caller may register
     * @throws IntakeException when its product or plant is unknown
     */
    @Transactional
    public Registered register(Supplier<ReelRegistration> sent) {
        callers.current().require(Action.REGISTER);
        ReelRegistration registration = sent.get();
        String plant = plants.named(registration.plant(), "/plant");
        requireProduct(plant, registration.product());
        Changes changes = reels.put(new RegisteredReel(
                plant,
                registration.reel(),
                registration.product(),
                registration.length(),
                registration.lengthSent(),
                registration.lengthUnit(),
                registration.lengthMarks(),
                registration.order(),
                registration.customer(),
                OffsetDateTime.now(clock)));
        if (!changes.isEmpty()) {
            audit.write(
                    plant,
                    changes.isNew() ? "reel-registered" : "reel-changed",
                    "reel/" + registration.reel(),
                    null,
                    changes.values());
        }
        return new Registered(reels.byId(plant, registration.reel()).orElseThrow(), changes.isNew());
    }

    private void requireProduct(String plant, String product) {
        if (products.byId(plant, product).isEmpty()) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/product",
                    "unknown product '" + product + "'; register it with PUT /api/v1/products/" + product + " first");
        }
    }
}
