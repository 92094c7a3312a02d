package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.Placement;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;

@Entity
@Table(name = "lot_input")
@IdClass(LotInputRow.Key.class)
class LotInputRow extends PanacheEntityBase {
    record Key(String plant, String child, String parent) {}

    @Id
    public String plant;

    @Id
    public String child;

    @Id
    public String parent;

    public int ordinal;

    @Column(name = "quantity_value")
    public double quantityValue;

    @Column(name = "quantity_unit")
    public String quantityUnit;

    @Column(name = "amount_base")
    public double amountBase;

    @Column(name = "position_from")
    public Double positionFrom;

    @Column(name = "position_to")
    public Double positionTo;

    @Column(name = "position_unit")
    public String positionUnit;

    @Column(name = "onto_from")
    public Double ontoFrom;

    @Column(name = "onto_to")
    public Double ontoTo;

    @Column(name = "onto_unit")
    public String ontoUnit;

    private Placement placement() {
        return positionUnit == null
                ? null
                : new Placement(positionFrom, positionTo, positionUnit, ontoFrom, ontoTo, ontoUnit);
    }

    private Amount quantity() {
        return new Amount(quantityValue, quantityUnit);
    }

    LotInput toInput() {
        return new LotInput(new LotId(parent), quantity(), placement());
    }
}
