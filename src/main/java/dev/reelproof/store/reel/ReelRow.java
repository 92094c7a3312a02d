package dev.reelproof.store.reel;

import dev.reelproof.quantity.Length;
import dev.reelproof.store.UtcTimes;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "reel")
@IdClass(ReelRow.Key.class)
class ReelRow extends PanacheEntityBase {
    record Key(String plant, String id) {}

    @Id
    public String plant;

    @Id
    public String id;

    public String product;

    @Column(name = "length_m")
    public double lengthMetres;

    @Column(name = "length_sent")
    public double lengthSent;

    @Column(name = "length_unit")
    public String lengthUnit;

    @Column(name = "order_number")
    public String orderNumber;

    public String customer;

    public Instant registered;

    /** Made by the database for the search. */
    @Column(insertable = false, updatable = false)
    public String searched;

    RegisteredReel toReel() {
        return new RegisteredReel(
                plant,
                id,
                product,
                Length.ofMetres(lengthMetres),
                lengthSent,
                lengthUnit,
                orderNumber,
                customer,
                UtcTimes.utc(registered));
    }
}
