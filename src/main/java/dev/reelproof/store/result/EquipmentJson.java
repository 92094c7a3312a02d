package dev.reelproof.store.result;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Property;
import dev.reelproof.store.RowJson;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The instruments of a test in a JSON column. */
public final class EquipmentJson {
    private EquipmentJson() {}

    static String write(List<Equipment> equipment) {
        ArrayNode array = JsonNodeFactory.instance.arrayNode();
        for (Equipment instrument : equipment) {
            LocalDate due = instrument.calibrationDue();
            ObjectNode one = array.addObject()
                    .put("id", instrument.id())
                    .put("calibrationDue", due == null ? null : due.toString())
                    .put("class", instrument.equipmentClass());
            ArrayNode properties = one.putArray("properties");
            instrument.properties().stream().sorted().map(Property::id).forEach(properties::add);
        }
        return RowJson.write(array);
    }

    /** The instruments that a column holds. */
    public static List<Equipment> read(String json) {
        List<Equipment> equipment = new ArrayList<>();
        for (JsonNode one : RowJson.read(json)) {
            Set<Property> properties = new HashSet<>();
            one.get("properties").forEach(name -> properties.add(Property.named(name.textValue())));
            String due = one.get("calibrationDue").textValue();
            equipment.add(new Equipment(
                    one.get("id").textValue(),
                    due == null ? null : LocalDate.parse(due),
                    properties,
                    // Records of before the class was known have none.
                    one.path("class").textValue()));
        }
        return equipment;
    }
}
