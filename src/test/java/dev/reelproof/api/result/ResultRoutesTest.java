package dev.reelproof.api.result;

import static dev.reelproof.api.TestPlant.newReel;
import static dev.reelproof.api.TestPlant.putProduct;
import static dev.reelproof.api.TestPlant.putReel;
import static dev.reelproof.api.TestPlant.test;
import static io.restassured.RestAssured.get;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.Problem;
import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The path of a reel: registered, tested, recorded, certified. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class ResultRoutesTest {

    @Test
    void registersAProductOnceAndChangesItAfterwards() {
        String product = "P-" + UUID.randomUUID();
        putProduct(product, "category-6a-cable", 4).statusCode(201).body("lays[0].lay.value", equalTo(9.1f));
        putProduct(product, "category-6a-cable", 4).statusCode(200);
        putProduct(product, "category-6-cable", 4).statusCode(200);
        get("/api/v1/products/" + product)
                .then()
                .statusCode(200)
                .body("limitSet", equalTo("category-6-cable"))
                .body("pairs", equalTo(4))
                .body("units", empty());
        get("/api/v1/products").then().body("products.product", hasItem(product));
    }

    @Test
    void registersAReelAndFindsItByPartsOfWhatItSays() {
        String reel = newReel();
        putReel(
                        reel,
                        "{\"product\": \"HD6A-4P\", \"length\": {\"value\": 1000, \"unit\": \"ft\"}, \"customer\": \"100%_Cable\"}")
                .statusCode(200)
                .body("length.unit", equalTo("ft"))
                .body("plant", equalTo("north"));
        get("/api/v1/reels/" + reel)
                .then()
                .body("length.value", equalTo(1000f))
                .body("order", nullValue())
                .body("records", empty())
                .body("certificates", empty());
        given().queryParam("query", reel.substring(2).toUpperCase(Locale.ROOT))
                .get("/api/v1/reels")
                .then()
                .body("reels.reel", contains(reel))
                .body("reels[0].verdict", nullValue());
        given().queryParam("query", "0%_cAbLe").get("/api/v1/reels").then().body("reels.reel", hasItem(reel));
        given().queryParam("query", "no reel says this")
                .get("/api/v1/reels")
                .then()
                .body("reels", empty());
    }

    @Test
    void takesAResultAndKeepsWhatWasFound() {
        String reel = newReel(100);
        String sent = new SampleResult().json();
        String id = test(reel, sent)
                .statusCode(201)
                .header("Location", containsString("/api/v1/records/"))
                .body("verdict", equalTo("accepted"))
                .body("attempt", equalTo(1))
                .body("warnings", empty())
                .body("limitSet.id", equalTo("category-6a-cable"))
                .body("findings.outcome", everyItem(equalTo("pass")))
                .extract()
                .path("id");

        get("/api/v1/records/" + id)
                .then()
                .statusCode(200)
                .body("reel", equalTo(reel))
                .body("plant", equalTo("north"))
                .body("technician", equalTo("M. Årsen"))
                .body("temperature.unit", equalTo("°C"))
                .body("equipment[0].calibrationDue", equalTo("2026-12-31"))
                .body("finished", equalTo("2026-03-02T14:09:30Z"))
                .body("findings.find { it.property == 'next' }.pair", equalTo(1))
                .body("findings.find { it.property == 'next' }.partner", equalTo(2))
                .body("findings.find { it.property == 'next' }.frequency.unit", equalTo("MHz"))
                .body("findings.find { it.property == 'next' }.points", greaterThan(400))
                .body("findings.find { it.property == 'ps-next' }.derived", equalTo(true))
                .body("findings.find { it.property == 'ps-next' }.sense", equalTo("at-least"))
                .body("original", hasSize(1));
        get("/api/v1/records/" + id + "/findings/conductor-resistance")
                .then()
                .statusCode(200)
                .body("value", equalTo(7.07f))
                .body("limit", equalTo(9.38f))
                .body("conductor", equalTo("b"))
                .body("requirements", contains("conductor-resistance"))
                .body("explanation.title", hasItem("margin"))
                .body("explanation.source", hasItem(notNullValue()));
        get("/api/v1/records/" + id + "/sweeps/next")
                .then()
                .statusCode(200)
                .body("sweeps", hasSize(6))
                .body("limit.sense", equalTo("at-least"))
                .body("limit.upper", nullValue())
                .body("limit.lower.size()", greaterThan(70))
                .body("limits.requirement", contains("next"))
                .body("limits[0].statistic", equalTo("individual"));
        given().queryParam("pair", 2)
                .queryParam("partner", 3)
                .queryParam("end", "near")
                .get("/api/v1/records/" + id + "/sweeps/next")
                .then()
                .statusCode(200)
                .body("frequencies.unit", equalTo("MHz"))
                .body("measured[0]", equalTo(90.5f))
                .body("limit.size()", greaterThan(70))
                .body("limits.requirement", contains("next"));
        byte[] original = get("/api/v1/records/" + id + "/original/0")
                .then()
                .statusCode(200)
                .header("Content-Disposition", containsString("attachment"))
                .extract()
                .asByteArray();
        assertArrayEquals(sent.getBytes(StandardCharsets.UTF_8), original);
        given().queryParam("query", reel)
                .get("/api/v1/reels")
                .then()
                .body("reels[0].verdict", equalTo("accepted"))
                .body("reels[0].record", equalTo(id));
    }

    @Test
    void theSameUploadGivesTheFirstRecordBack() {
        String reel = newReel(100);
        String json = new SampleResult().json();
        String id = test(reel, json).statusCode(201).extract().path("id");
        test(reel, json).statusCode(200).body("id", equalTo(id));
        test(reel, json + " ").statusCode(201).body("attempt", equalTo(2));
        get("/api/v1/reels/" + reel)
                .then()
                .body("records.attempt", contains(2, 1))
                .body("records[1].id", equalTo(id));

        String other = newReel(100);
        test(other, json).statusCode(201).body("warnings", hasItem(containsString(reel)));
    }

    @Test
    void theSameUploadSentAtOnceIsOneRecord() throws Exception {
        String reel = newReel(100);
        String json = new SampleResult().json();
        ExecutorService bays = Executors.newFixedThreadPool(6);
        try {
            List<Future<Integer>> answers = new ArrayList<>();
            for (int i = 0; i < 6; i++) {
                answers.add(bays.submit(() -> test(reel, json).extract().statusCode()));
            }
            List<Integer> codes = new ArrayList<>();
            for (Future<Integer> answer : answers) {
                codes.add(answer.get());
            }
            assertEquals(1, codes.stream().filter(code -> code == 201).count(), codes.toString());
            assertEquals(5, codes.stream().filter(code -> code == 200).count(), codes.toString());
        } finally {
            bays.shutdown();
        }
        get("/api/v1/reels/" + reel).then().body("records", hasSize(1));
    }

    @Test
    void takesCsvFilesBesideTheDocument() {
        String reel = newReel(100);
        byte[] document = new SampleResult().jsonWithoutBulk().getBytes(StandardCharsets.UTF_8);
        String csv = "property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit\n"
                + "mutual-capacitance,1,,,,,,4.8,nF\nmutual-capacitance,2,,,,,,4.9,nF\n";
        String id = given().multiPart("result", "measured.json", document, "application/json")
                .multiPart("bulk", "readings.csv", csv.getBytes(StandardCharsets.UTF_8), "text/csv")
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(201)
                .body("verdict", equalTo("incomplete"))
                .body("findings.find { it.property == 'mutual-capacitance' }.outcome", equalTo("not-tested"))
                .body("findings.find { it.property == 'next' }.reason", notNullValue())
                .body("original.name", contains("result", "readings.csv"))
                .extract()
                .path("id");
        byte[] kept =
                get("/api/v1/records/" + id + "/original/1").then().extract().asByteArray();
        assertArrayEquals(csv.getBytes(StandardCharsets.UTF_8), kept);
        // The same parts in another order, the document as a plain field: the same content.
        String body = "--b\r\nContent-Disposition: form-data; name=\"x\"; filename=\"readings.csv\"\r\n\r\n" + csv
                + "\r\n--b\r\nContent-Disposition: form-data; name=\"result\"\r\n\r\n"
                + new String(document, StandardCharsets.UTF_8) + "\r\n--b--\r\n";
        given().config(RestAssuredConfig.config()
                        .encoderConfig(EncoderConfig.encoderConfig()
                                .encodeContentTypeAs("multipart/form-data", ContentType.BINARY)))
                .contentType("multipart/form-data; boundary=b")
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post("/api/v1/reels/" + reel + "/tests")
                .then()
                .statusCode(200)
                .body("id", equalTo(id));
    }

    @Test
    void warnsWhenTheLengthIsNotTheRegisteredOne() {
        test(newReel(305), new SampleResult().json())
                .statusCode(201)
                .body("warnings", hasItem(containsString("differs from the registered")));
    }

    @Test
    void certifiesAnAcceptedReelOnce() {
        String reel = newReel(100);
        given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(409)
                .contentType(Problem.MEDIA_TYPE)
                .body("detail", containsString("never tested"));
        test(reel, new SampleResult().json()).statusCode(201);
        String pdf = given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .body("issue", equalTo(1))
                .body("number", containsString("NORTH-"))
                .extract()
                .path("pdf");
        String number = given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(200)
                .body("pdf", equalTo(pdf))
                .extract()
                .path("number");
        byte[] first = get(pdf).then()
                .statusCode(200)
                .contentType("application/pdf")
                .extract()
                .asByteArray();
        assertTrue(new String(first, 0, 5, StandardCharsets.ISO_8859_1).startsWith("%PDF-"));
        assertArrayEquals(first, get(pdf).asByteArray());
        get("/api/v1/reels/" + reel)
                .then()
                .body("certificates.number", contains(number))
                .body("certificates[0].pdf", endsWith(number + ".pdf"));
        given().queryParam("query", number.toLowerCase(Locale.ROOT))
                .get("/api/v1/certificates")
                .then()
                .body("certificates.reel", contains(reel));

        test(reel, new SampleResult().resistance(9.9).json()).statusCode(201).body("verdict", equalTo("rejected"));
        given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(409)
                .body("detail", containsString("conductor-resistance"));
    }

    @Test
    void saysWhatElseAFailedReelCouldBe() {
        String failed = test(newReel(100), new SampleResult().resistance(9.6).json())
                .statusCode(201)
                .body("verdict", equalTo("rejected"))
                .extract()
                .path("id");
        get("/api/v1/records/" + failed + "/alternatives")
                .then()
                .statusCode(200)
                .body("record", equalTo(failed))
                .body("cutTo", nullValue())
                .body("passes", empty())
                .body("blockedBy", contains("conductor-resistance"))
                .body("notTested", empty())
                .body("requirements[0].why", containsString("stays the same however long"))
                .body(
                        "limitSets.limitSet",
                        contains(
                                "iec-category-6a-cable",
                                "category-6-cable",
                                "iec-category-6-cable",
                                "category-5e-cable",
                                "iec-category-5e-cable",
                                "category-3-cable"))
                .body(
                        "limitSets.find { it.limitSet == 'category-6-cable' }.onlyObstacle",
                        equalTo("conductor-resistance"))
                .body(
                        "limitSets.find { it.limitSet == 'iec-category-6-cable' }.onlyObstacle",
                        equalTo("loop-resistance"))
                .body("advice", containsString("whoever has the authority"));

        // Far beyond the limit of category 6A from 1 MHz up, and below that of category 5e.
        String noisy = test(
                        newReel(100), new SampleResult().crosstalkWorseBy(19).json())
                .body("verdict", equalTo("rejected"))
                .extract()
                .path("id");
        get("/api/v1/records/" + noisy + "/alternatives")
                .then()
                .body("cutTo", nullValue())
                .body("blockedBy", contains("next", "ps-next", "acr-f", "ps-acr-f"))
                .body("passes", hasItem("category-5e-cable"))
                .body("passes", not(hasItem("category-6-cable")));

        String accepted =
                test(newReel(100), new SampleResult().json()).extract().path("id");
        get("/api/v1/records/" + accepted + "/alternatives")
                .then()
                .body("verdict", equalTo("accepted"))
                .body("cutTo", nullValue())
                .body("blockedBy", empty())
                .body("passes", hasItems("category-6-cable", "category-5e-cable"));
        get("/api/v1/records/" + UUID.randomUUID() + "/alternatives").then().statusCode(404);
    }

    @Test
    void whatElseItCouldBeIsReadFromAllPartsOfTheUpload() {
        byte[] document = new SampleResult().jsonWithoutBulk().getBytes(StandardCharsets.UTF_8);
        String csv = "property,pair,partner,conductor,end,frequency,frequencyUnit,value,unit\n"
                + "conductor-resistance,1,,a,,,,9.9,ohm\n";
        String id = given().multiPart("result", "measured.json", document, "application/json")
                .multiPart("bulk", "readings.csv", csv.getBytes(StandardCharsets.UTF_8), "text/csv")
                .post("/api/v1/reels/" + newReel(100) + "/tests")
                .then()
                .statusCode(201)
                .body("verdict", equalTo("rejected"))
                .extract()
                .path("id");
        get("/api/v1/records/" + id + "/alternatives")
                .then()
                .statusCode(200)
                .body("blockedBy", contains("conductor-resistance"))
                .body("notTested", hasItem("next"))
                .body("limitSets.find { it.limitSet == 'category-6-cable' }.inTheWay", hasItem("conductor-resistance"))
                .body("limitSets.find { it.limitSet == 'category-6-cable' }.onlyObstacle", nullValue());
    }

    @Test
    void theSweepsNameEveryLimitThatBindsThem() {
        String product = "T-" + UUID.randomUUID();
        putProduct(product, "us-terminating-cable-24awg", 12).statusCode(201);
        String reel = newReel();
        putReel(reel, "{\"product\": \"" + product + "\", \"length\": {\"value\": 300, \"unit\": \"m\"}}")
                .statusCode(200);
        String id = test(
                        reel,
                        "{\"product\": \"" + product + "\", \"length\": {\"value\": 300, \"unit\": \"m\"},"
                                + " \"temperature\": {\"value\": 20, \"unit\": \"°C\"}, \"readings\": [{\"property\":"
                                + " \"fext\", \"pair\": 1, \"partner\": 2, \"frequency\": {\"value\": 150, \"unit\":"
                                + " \"kHz\"}, \"value\": 90, \"unit\": \"dB\"}]}")
                .statusCode(201)
                .extract()
                .path("id");
        get("/api/v1/records/" + id + "/sweeps/fext")
                .then()
                .statusCode(200)
                .body("limit.requirement", equalTo("fext-rms"))
                .body("limits.requirement", contains("fext-rms", "fext"))
                .body("limits.statistic", contains("rms", "individual"))
                .body("limits.scope", everyItem(equalTo("core")))
                .body("limits.unit", everyItem(equalTo("dB/km")))
                .body("limits.lower", contains(contains(68f), contains(58f)))
                .body("limits.frequencies", everyItem(contains(0.15f)));
    }
}
