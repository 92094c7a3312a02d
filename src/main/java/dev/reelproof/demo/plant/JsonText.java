package dev.reelproof.demo.plant;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** JSON as text: ordered maps, lists, strings, whole and decimal numbers; the outer levels one entry a line, the inner ones compact. */
final class JsonText {
    private JsonText() {}

    /** An object of the given names and values in their order; an absent value leaves its name out. */
    static Map<String, Object> object(@Nullable Object... namesAndValues) {
        Map<String, Object> object = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            Object value = namesAndValues[i + 1];
            if (value != null) {
                object.put((String) Objects.requireNonNull(namesAndValues[i], "a name"), value);
            }
        }
        return object;
    }

    static Map<String, Object> quantity(Object value, String unit) {
        return object("value", value, "unit", unit);
    }

    /** The value rounded half up to so many decimals, without trailing zeros. */
    static BigDecimal rounded(double value, int decimals) {
        BigDecimal number =
                new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
        return number.scale() < 0 ? number.setScale(0) : number;
    }

    static List<Object> rounded(double[] values, int decimals) {
        List<Object> numbers = new ArrayList<>(values.length);
        for (double value : values) {
            numbers.add(rounded(value, decimals));
        }
        return numbers;
    }

    /** The text, with the outermost levels spread over lines, one entry a line. */
    static String of(Object value, int spreadLevels) {
        StringBuilder text = new StringBuilder();
        write(text, value, spreadLevels, "\n");
        return text.append('\n').toString();
    }

    private static void write(StringBuilder text, Object value, int spread, String newLine) {
        String inner = spread > 0 ? newLine + "  " : "";
        String outer = spread > 0 ? newLine : "";
        String comma = spread > 0 ? "," : ", ";
        if (value instanceof Map<?, ?> map) {
            text.append('{');
            String joint = "";
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                text.append(joint).append(inner);
                quote(text, (String) entry.getKey());
                text.append(": ");
                write(text, entry.getValue(), spread - 1, inner);
                joint = comma;
            }
            text.append(outer).append('}');
        } else if (value instanceof List<?> list) {
            boolean numbers = !list.isEmpty() && list.get(0) instanceof Number;
            text.append('[');
            String joint = "";
            for (Object item : list) {
                text.append(joint).append(numbers ? "" : inner);
                write(text, item, spread - 1, inner);
                joint = numbers ? "," : comma;
            }
            text.append(numbers || list.isEmpty() ? "" : outer).append(']');
        } else if (value instanceof String string) {
            quote(text, string);
        } else if (value instanceof BigDecimal number) {
            text.append(number.toPlainString());
        } else if (value instanceof Integer || value instanceof Boolean) {
            text.append(value);
        } else {
            throw new IllegalArgumentException("no JSON for " + value);
        }
    }

    private static void quote(StringBuilder text, String string) {
        text.append('"');
        for (int i = 0; i < string.length(); i++) {
            char c = string.charAt(i);
            if (c == '"' || c == '\\') {
                text.append('\\');
            }
            text.append(c);
        }
        text.append('"');
    }
}
