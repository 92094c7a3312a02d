package dev.reelproof.page;

import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The frames as they are served, and what they name. */
@QuarkusTest
class PageFramesTest {
    private static final Path MODULES = Path.of("src", "main", "resources", "META-INF", "resources", "modules");
    private static final Pattern NAMED = Pattern.compile("(?:href|src)=\"(/[^\"#]*)\"");
    private static final Pattern IMPORTED_FROM_ELSEWHERE = Pattern.compile("from '(/[^']+)'");
    private static final Pattern WITH_A_VERSION = Pattern.compile("/\\d+\\.\\d+\\.\\d+/");
    private static final Pattern INLINE = Pattern.compile("<style|<script>|<script [^>]*>[^<]|\\son[a-z]+=|\\sstyle=");

    private static ValidatableResponse get(String address) {
        return RestAssured.given()
                .redirects()
                .follow(false)
                .get(address)
                .then()
                .statusCode(200)
                .header("Content-Security-Policy", startsWith("default-src 'self'"));
    }

    private static Stream<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map((MatchResult match) -> match.group(1));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/index.html",
                "/accounts.html",
                "/approvals.html",
                "/password.html",
                "/set-up.html",
                "/sign-in.html?next=%2F",
                "/verify.html?number=NORTH-2026-000123"
            })
    void aPageHasTheOneFrameAndNothingInline(String address) {
        String page = get(address)
                .contentType("text/html")
                .header("Cache-Control", equalTo("no-cache"))
                .extract()
                .asString();
        for (String once :
                List.of("<head>", "<nav ", "<main ", "<footer ", "id=\"notice\"", "id=\"done\"", "type=\"module\"")) {
            assertEquals(2, page.split(once, -1).length, "how often " + once + " stands in " + address);
        }
        assertFalse(INLINE.matcher(page).find(), "a script or style inline");
        assertFalse(page.contains("{"), "a part of the template was not filled");
        found(NAMED, page).forEach(PageFramesTest::get);
    }

    @Test
    void whatAPageIsMadeOfIsAskedForAgain() {
        for (String part : List.of(
                "/modules/reel/main.js",
                "/styles/base.css",
                "/mark.svg",
                "/_static/lit-html/lit-html.js",
                "/webjars/uplot/dist/uPlot.esm.js")) {
            get(part).header("Cache-Control", equalTo("no-cache"));
        }
    }

    @Test
    void whatModulesTakeFromWebPartsIsServedWithoutAVersionInItsAddress() throws IOException {
        Set<String> imported = new TreeSet<>();
        try (Stream<Path> files = Files.walk(MODULES)) {
            files.filter(Files::isRegularFile)
                    .flatMap(file -> found(IMPORTED_FROM_ELSEWHERE, text(file)))
                    .forEach(imported::add);
        }
        assertTrue(imported.contains("/_static/lit-html/lit-html.js"), imported.toString());
        assertTrue(imported.contains("/webjars/uplot/dist/uPlot.esm.js"), imported.toString());
        for (String address : imported) {
            assertFalse(WITH_A_VERSION.matcher(address).find(), address);
            get(address).contentType("text/javascript");
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
