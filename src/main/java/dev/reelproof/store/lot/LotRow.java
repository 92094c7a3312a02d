package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.store.UtcTimes;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;

@Entity
@Table(name = "lot")
@IdClass(LotRow.Key.class)
class LotRow extends PanacheEntityBase {
    record Key(String plant, String id) {}

    @Id
    public String plant;

    @Id
    public String id;

    public String kind;

    @Column(name = "quantity_value")
    public double quantityValue;

    @Column(name = "quantity_unit")
    public String quantityUnit;

    public Instant made;

    public String step;

    public String machine;

    public String run;

    @Column(name = "source_sha256")
    public String sourceSha256;

    public Instant registered;

    LotKind kind() {
        return LotKind.named(kind);
    }

    LotId lotId() {
        return new LotId(id);
    }

    Amount quantity() {
        return new Amount(quantityValue, quantityUnit);
    }

    Lot toLot(List<LotInput> inputs, StepRun ofRun, List<Sample> samples) {
        return new Lot(
                lotId(),
                plant,
                LotKind.named(kind),
                quantity(),
                UtcTimes.utc(made),
                step,
                machine,
                inputs,
                ofRun,
                samples);
    }
}
