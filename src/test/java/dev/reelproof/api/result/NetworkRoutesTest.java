package dev.reelproof.api.result;

import static dev.reelproof.api.TestPlant.newReel;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.api.Problem;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.measurement.End;
import dev.reelproof.network.SyntheticCable;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** A reel measured with a network analyser, from its Touchstone file to the verdict. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class NetworkRoutesTest {
    private static final double[] GRID = SyntheticCable.grid(500);
    private static final int[] ORDER = shuffled(16);

    private static int[] shuffled(int ports) {
        List<Integer> order = new ArrayList<>(IntStream.range(0, ports).boxed().toList());
        Collections.shuffle(order, new Random(4));
        return order.stream().mapToInt(Integer::intValue).toArray();
    }

    private static SyntheticCable cable() {
        return new SyntheticCable(4, 100, 0.68);
    }

    private static String network(String file, String ports) {
        return "{\"file\": \"" + file + "\", \"ports\": " + ports + "}";
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static ValidatableResponse post(String reel, String document, Map<String, byte[]> files) {
        var request = given();
        if (document != null) {
            request.multiPart("result", "result.json", bytes(document), "application/json");
        }
        files.forEach((name, content) -> request.multiPart("file", name, content, "application/octet-stream"));
        return request.post("/api/v1/reels/" + reel + "/tests").then();
    }

    private static byte[] zip(Map<String, byte[]> members) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> member : members.entrySet()) {
                zip.putNextEntry(new ZipEntry(member.getKey()));
                zip.write(member.getValue());
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return bytes.toByteArray();
    }

    @Test
    void aGoodCableOfSixteenPortsIsAcceptedAndExplained() {
        SyntheticCable cable = cable();
        String document = new SampleResult()
                .jsonWithNetworks("[" + network("reel.s16p", SyntheticCable.json(cable.ports(ORDER))) + "]");
        byte[] file = bytes(cable.touchstone(GRID, ORDER));
        String id = post(newReel(100), document, Map.of("reel.s16p", file))
                .statusCode(201)
                .body("warnings", empty())
                .body("findings.outcome", everyItem(equalTo("pass")))
                .body("verdict", equalTo("accepted"))
                .body("original.name", contains("result", "reel.s16p"))
                .extract()
                .path("id");
        assertArrayEquals(
                file,
                get("/api/v1/records/" + id + "/original/1").then().extract().asByteArray());

        List<Float> next = one(id, "next", "pair", 1, "partner", 2, "end", "near")
                .body("unit", equalTo("dB"))
                .body("limit", hasSize(GRID.length))
                .extract()
                .path("measured");
        for (int i = 0; i < GRID.length; i++) {
            assertEquals(cable.next(1, 2, End.NEAR, GRID[i]), next.get(i), 1e-3);
        }
        List<Float> loss = one(id, "insertion-loss", "pair", 1).extract().path("measured");
        assertEquals(cable.loss(GRID[40]), loss.get(40), 1e-3);
        List<Float> delay = one(id, "propagation-delay", "pair", 1).extract().path("measured");
        assertEquals(cable.delay(1, GRID[40]), delay.get(40), 1e-3);
        // what the limit set does not judge is there too, as measured and without a limit
        one(id, "tcl", "pair", 3, "end", "far").body("limit", nullValue()).body("measured", hasSize(GRID.length));
        get("/api/v1/records/" + id + "/sweeps/acr-f").then().body("sweeps", hasSize(24));
        get("/api/v1/records/" + id + "/sweeps/return-loss").then().body("sweeps", hasSize(8));

        get("/api/v1/records/" + id + "/findings/next")
                .then()
                .statusCode(200)
                .body(
                        "explanation.title",
                        hasItems("network file", "renormalised", "mixed mode", "definition", "measured", "limit"))
                .body("explanation[0].detail", containsString("reel.s16p (Touchstone 1, S in RI, MHz), 16 ports"))
                .body("explanation[0].detail", containsString("conductors a, b"))
                .body("explanation.detail", hasItem(containsString("NEXT = −20 log10 |SDD(")))
                .body("explanation.detail", hasItem(containsString("reel.s16p:")));
    }

    private static ValidatableResponse one(String id, String property, Object... query) {
        var request = given();
        for (int i = 0; i < query.length; i += 2) {
            request.queryParam(query[i].toString(), query[i + 1]);
        }
        return request.get("/api/v1/records/" + id + "/sweeps/" + property)
                .then()
                .statusCode(200);
    }

    @Test
    void aCableThatTalksAcrossIsRejectedForIt() {
        SyntheticCable cable = cable().flaw(43);
        String document = new SampleResult()
                .jsonWithNetworks("[" + network("reel.s16p", SyntheticCable.json(cable.ports())) + "]");
        post(newReel(100), document, Map.of("reel.s16p", bytes(cable.touchstone(GRID))))
                .statusCode(201)
                .body("verdict", equalTo("rejected"))
                .body("findings.findAll { it.outcome == 'fail' }.property", contains("next"))
                .body("findings.find { it.property == 'next' }.pair", equalTo(1))
                .body("findings.find { it.property == 'next' }.partner", equalTo(2))
                .body("findings.find { it.property == 'next' }.end", equalTo("near"))
                .body("findings.find { it.property == 'next' }.margin.toDouble()", closeTo(-1.3, 1e-3));
    }

    @Test
    void zippedFilesGiveTheSameRecordAsLooseOnes() {
        SyntheticCable cable = cable();
        String document = new SampleResult()
                .jsonWithNetworks("[" + network("reel.s16p", SyntheticCable.json(cable.ports())) + "]");
        byte[] file = bytes(cable.touchstone(GRID));
        post(newReel(100), document, Map.of("bulk.zip", zip(Map.of("reel.s16p", file))))
                .statusCode(201)
                .body("verdict", equalTo("accepted"))
                .body("original.name", contains("result", "bulk.zip"));
        Map<String, byte[]> all = new LinkedHashMap<>();
        all.put("measured/reel.s16p", file);
        all.put("result.json", bytes(document));
        post(newReel(100), null, Map.of("all.zip", zip(all)))
                .statusCode(201)
                .body("verdict", equalTo("accepted"))
                .body("original.name", contains("all.zip"));
    }

    @Test
    void pairCombinationsOfEightPortsMakeOneCable() {
        SyntheticCable cable = cable();
        List<String> networks = new ArrayList<>();
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (int one = 1; one <= 4; one++) {
            for (int other = one + 1; other <= 4; other++) {
                String name = "pairs-" + one + "-" + other + ".s8p";
                int[] places = cable.placesOf(one, other);
                files.put(name, bytes(cable.touchstone(GRID, places)));
                boolean wholePairs = one + other == 3 || one + other == 7;
                String derive = wholePairs ? "" : ", \"derive\": [\"next\", \"acr-f\"]";
                networks.add("{\"file\": \"" + name + "\", \"ports\": " + SyntheticCable.json(cable.ports(places))
                        + derive + "}");
            }
        }
        String document = new SampleResult().jsonWithNetworks("[" + String.join(", ", networks) + "]");
        post(newReel(100), document, files).statusCode(201).body("verdict", equalTo("accepted"));
    }

    @Test
    void aPartIsFoundByTheNameOfItsFieldToo() {
        SyntheticCable cable = cable();
        String document = new SampleResult()
                .jsonWithNetworks("[" + network("reel.s16p", SyntheticCable.json(cable.ports())) + "]");
        given().multiPart("result", "result.json", bytes(document), "application/json")
                .multiPart("reel.s16p", "export", bytes(cable.touchstone(GRID)), "text/plain")
                .post("/api/v1/reels/" + newReel(100) + "/tests")
                .then()
                .statusCode(201)
                .body("verdict", equalTo("accepted"));
    }

    @Test
    void aFaultIsToldWithFileAndLine() {
        SyntheticCable cable = cable();
        String document = new SampleResult()
                .jsonWithNetworks("[" + network("reel.s16p", SyntheticCable.json(cable.ports())) + "]");
        String broken = cable.touchstone(new double[] {1, 2, 3}).replaceFirst("\n3\\.0 ", "\n1.5 ");
        post(newReel(100), document, Map.of("reel.s16p", bytes(broken)))
                .statusCode(422)
                .contentType(Problem.MEDIA_TYPE)
                .body("errors", hasSize(1))
                .body("errors[0].where", equalTo("reel.s16p:131"))
                .body("errors[0].message", containsString("must ascend"));
        String both = document.replace(
                "\"networks\"",
                "\"grids\": {\"g\": {\"unit\": \"MHz\", \"values\": [1, 2]}}, \"sweeps\": [{\"property\": \"next\", \"pair\": 1,"
                        + " \"partner\": 2, \"end\": \"near\", \"grid\": \"g\", \"unit\": \"dB\", \"values\": [90, 85]}],"
                        + " \"networks\"");
        post(newReel(100), both, Map.of("reel.s16p", bytes(cable.touchstone(GRID))))
                .statusCode(422)
                .body("errors", hasSize(1))
                .body("errors[0].where", equalTo("/sweeps/0/values/0"))
                .body("errors[0].message", containsString("derived from reel.s16p too"));
    }
}
