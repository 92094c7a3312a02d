package dev.reelproof.api.description;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.PathItem;

/**
 * Names every operation by its method and path, such as {@code putReel} and {@code getReelAncestors}: generated clients call their
 * methods so. Java names would do as well until somebody renames a class; the path is a promise.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD, priority = DescriptionOrder.NAMES)
public class OperationNames implements OASFilter {
    private static final String PREFIX = "/api/v1/";
    private static final Pattern PARAMETER = Pattern.compile("\\{(?<name>[^}]+)}(?:\\.(?<format>\\w+))?");

    @Override
    public void filterOpenAPI(OpenAPI openApi) {
        openApi.getPaths().getPathItems().forEach((path, item) -> item.getOperations()
                .forEach((method, operation) -> {
                    if (operation.getOperationId() == null) {
                        operation.setOperationId(name(method, path));
                    }
                }));
    }

    /**
     * The name of an operation. What a parameter picks from is named in the singular: {@code /reels} is {@code reels},
     * {@code /reels/{reel}} is {@code reel}. A parameter after a parameter gives its own name, a format its ending.
     */
    static String name(PathItem.HttpMethod method, String path) {
        List<String> words = new ArrayList<>();
        boolean afterParameter = false;
        for (String segment : List.of(path.substring(PREFIX.length()).split("/", -1))) {
            Matcher parameter = PARAMETER.matcher(segment);
            if (!parameter.matches()) {
                words.add(segment);
                afterParameter = false;
                continue;
            }
            if (afterParameter) {
                words.add(parameter.group("name"));
            } else {
                words.add(singular(words.remove(words.size() - 1)));
            }
            if (parameter.group("format") != null) {
                words.add(parameter.group("format"));
            }
            afterParameter = true;
        }
        StringBuilder name = new StringBuilder(method.name().toLowerCase(Locale.ROOT));
        for (String word : words) {
            for (String part : List.of(word.split("[-.]", -1))) {
                name.append(part.substring(0, 1).toUpperCase(Locale.ROOT)).append(part.substring(1));
            }
        }
        return name.toString();
    }

    private static String singular(String plural) {
        return plural.endsWith("s") ? plural.substring(0, plural.length() - 1) : plural;
    }
}
