package dev.reelproof.store;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.Pedigree;
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

    static LotInputRow of(String plant, LotId child, int ordinal, LotInput input) {
        LotInputRow row = new LotInputRow();
        row.plant = plant;
        row.child = child.value();
        row.parent = input.lot().value();
        row.ordinal = ordinal;
        row.quantityValue = input.quantity().value();
        row.quantityUnit = input.quantity().unit();
        row.amountBase = input.quantity().base();
        return row;
    }

    private Amount quantity() {
        return new Amount(quantityValue, quantityUnit);
    }

    LotInput toInput() {
        return new LotInput(new LotId(parent), quantity());
    }

    Pedigree.Link toLink() {
        return new Pedigree.Link(new LotId(parent), new LotId(child), quantity());
    }
}
