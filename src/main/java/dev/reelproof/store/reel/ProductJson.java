package dev.reelproof.store.reel;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.Product;
import dev.reelproof.quantity.Length;
import dev.reelproof.store.RowJson;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The definition of a product in a JSON column. Lengths are in metres; the product's code is a column of its own. */
public final class ProductJson {
    private ProductJson() {}

    /** What the column holds of a product. */
    public static String write(Product product) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("description", product.description());
        node.put("limitSet", product.limitSet());
        node.put("pairs", product.pairs());
        node.put("gauge", product.gauge());
        node.put("nominalVelocity", product.nominalVelocity());
        ArrayNode lays = node.putArray("lays");
        new TreeMap<>(product.lays())
                .forEach((pair, lay) -> lays.addObject().put("pair", pair).put("metres", lay.metres()));
        ArrayNode units = node.putArray("units");
        for (CoreUnit unit : product.units()) {
            ObjectNode one = units.addObject()
                    .put("unit", unit.unit())
                    .put("from", unit.firstPair())
                    .put("to", unit.lastPair());
            ArrayNode adjacent = one.putArray("adjacentTo");
            new TreeSet<>(unit.adjacentTo()).forEach(adjacent::add);
        }
        return RowJson.write(node);
    }

    /** The product of a code, as the column defines it. */
    public static Product read(String id, String json) {
        JsonNode node = RowJson.read(json);
        Map<Integer, Length> lays = new TreeMap<>();
        for (JsonNode lay : node.get("lays")) {
            lays.put(
                    lay.get("pair").intValue(),
                    Length.ofMetres(lay.get("metres").doubleValue()));
        }
        List<CoreUnit> units = new ArrayList<>();
        for (JsonNode unit : node.get("units")) {
            Set<Integer> adjacent = new HashSet<>();
            unit.get("adjacentTo").forEach(other -> adjacent.add(other.intValue()));
            units.add(new CoreUnit(
                    unit.get("unit").intValue(),
                    unit.get("from").intValue(),
                    unit.get("to").intValue(),
                    adjacent));
        }
        return new Product(
                id,
                node.get("description").textValue(),
                node.get("limitSet").textValue(),
                node.get("pairs").intValue(),
                node.get("gauge").textValue(),
                node.get("nominalVelocity").isNull()
                        ? null
                        : node.get("nominalVelocity").doubleValue(),
                lays,
                units);
    }
}
