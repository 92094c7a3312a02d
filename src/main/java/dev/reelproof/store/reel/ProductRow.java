package dev.reelproof.store.reel;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import org.hibernate.annotations.ColumnTransformer;

@Entity
@Table(name = "product")
@IdClass(ProductRow.Key.class)
class ProductRow extends PanacheEntityBase {
    record Key(String plant, String id) {}

    @Id
    public String plant;

    @Id
    public String id;

    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(read = "definition::text", write = "?::jsonb")
    public String definition;

    public Instant registered;
}
