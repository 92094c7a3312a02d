package dev.reelproof.api.reel;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.access.Role;
import dev.reelproof.api.TestPlant;
import dev.reelproof.api.access.SignedIn;
import dev.reelproof.api.access.TestSignIn;
import dev.reelproof.api.result.SampleResult;
import io.agroal.api.AgroalDataSource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The length marks of a reel: registered, answered, replaced, and printed on its certificate. */
@QuarkusTest
@ExtendWith(SignedIn.class)
class LengthMarksRoutesTest {
    private static final String CHECK_VIOLATION = "23514";
    private static final String MARKS = "{\"first\": 1250, \"last\": 1350, \"unit\": \"m\"}";

    @Inject
    AgroalDataSource database;

    private static ValidatableResponse put(String reel, String more) {
        return TestPlant.putReel(
                reel, "{\"product\": \"HD6A-4P\", \"length\": {\"value\": 100, \"unit\": \"m\"}" + more + "}");
    }

    private static ValidatableResponse mark(String reel, String marks) {
        return put(reel, ", \"lengthMarks\": " + marks);
    }

    private static ValidatableResponse show(String reel) {
        return given().get("/api/v1/reels/" + reel).then().statusCode(200);
    }

    @Test
    void aReelHasTheMarksThatItsLastRegistrationStates() {
        String reel = TestPlant.newReel(100);
        show(reel).body("lengthMarks", nullValue()).body("printedLengthMarks", nullValue());
        mark(reel, MARKS).statusCode(200).body("lengthMarks.first", equalTo(1250f));
        show(reel)
                .body("lengthMarks.first", equalTo(1250f))
                .body("lengthMarks.last", equalTo(1350f))
                .body("lengthMarks.unit", equalTo("m"))
                .body("printedLengthMarks", equalTo("1250 to 1350 m"));
        mark(reel, "{\"first\": 1350, \"last\": 1250, \"unit\": \"m\"}").statusCode(200);
        show(reel).body("printedLengthMarks", equalTo("1350 to 1250 m"));
        // As with the order and the customer: what a registration leaves out is registered no longer.
        put(reel, ", \"order\": \"SO-1\"").statusCode(200);
        show(reel).body("lengthMarks", nullValue()).body("customer", nullValue());
        TestSignIn.person("ada", Role.QUALITY_MANAGER)
                .queryParam("subject", "reel/" + reel)
                .get("/api/v1/audit")
                .then()
                .statusCode(200)
                .body("entries[0].details.lengthMarks.from.first", equalTo(1350f))
                .body("entries[0].details.lengthMarks", hasKey("to"))
                .body("entries[0].details.lengthMarks.to", nullValue());
    }

    @Test
    void theSameMarksAgainChangeNothing() {
        String reel = TestPlant.newReel(100);
        mark(reel, MARKS).statusCode(200);
        mark(reel, MARKS).statusCode(200);
        TestSignIn.person("ada", Role.QUALITY_MANAGER)
                .queryParam("subject", "reel/" + reel)
                .get("/api/v1/audit")
                .then()
                .body("entries", hasSize(2))
                .body("entries.action", contains("reel-changed", "reel-registered"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"first\": NaN, \"last\": 1350, \"unit\": \"m\"}",
                "{\"first\": -50, \"last\": 50, \"unit\": \"m\"}",
                "{\"first\": 1250, \"unit\": \"m\"}",
                "{\"first\": 1250, \"last\": 1350}",
                "{\"first\": 1250, \"last\": 1350, \"unit\": \"yard\"}",
                "{\"first\": 1250, \"last\": 1250, \"unit\": \"m\"}",
                "[1250, 1350]"
            })
    void brokenMarksAreRefusedAndChangeNothing(String marks) {
        String reel = TestPlant.newReel(100);
        mark(reel, MARKS).statusCode(200);
        mark(reel, marks).statusCode(422).body("errors[0].where", containsString("/lengthMarks"));
        show(reel).body("printedLengthMarks", equalTo("1250 to 1350 m"));
    }

    @Test
    void marksThatDoNotFitTheLengthAreRefusedWithBothFigures() {
        mark(TestPlant.newReel(100), "{\"first\": 1250, \"last\": 1355, \"unit\": \"m\"}")
                .statusCode(422)
                .body("errors[0].where", equalTo("/lengthMarks"))
                .body("errors[0].message", containsString("105 m lie between"))
                .body("errors[0].message", containsString("the length is 100 m"));
    }

    @Test
    void theCertificatePrintsThem() throws IOException {
        String marked = TestPlant.newReel(100);
        mark(marked, "{\"first\": 4101, \"last\": 4429, \"unit\": \"ft\"}").statusCode(200);
        String text = certificateOf(marked);
        assertTrue(text.contains("Length marks 4101 to 4429 ft (1249.98 to 1349.96 m)"), text);
        String plain = certificateOf(TestPlant.newReel(100));
        assertTrue(!plain.contains("Length marks"), plain);
    }

    private static String certificateOf(String reel) throws IOException {
        TestPlant.test(reel, new SampleResult().json()).statusCode(201);
        String number = given().post("/api/v1/reels/" + reel + "/certificates")
                .then()
                .statusCode(201)
                .extract()
                .path("number");
        byte[] pdf = given().get("/api/v1/certificates/" + number + ".pdf").asByteArray();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "last_mark = null",
                "mark_unit = null",
                "first_mark = -1",
                "first_mark = 'NaN'",
                "last_mark = 'infinity'",
                "last_mark = first_mark",
                "mark_unit = ''"
            })
    void theTableKeepsNoHalfMarks(String change) throws SQLException {
        String reel = TestPlant.newReel(100);
        mark(reel, MARKS).statusCode(200);
        try (Connection connection = database.getConnection();
                PreparedStatement update = connection.prepareStatement(
                        "update reel set " + change + " where plant = 'north' and id = ?")) {
            update.setString(1, reel);
            assertEquals(
                    CHECK_VIOLATION,
                    assertThrows(SQLException.class, update::executeUpdate).getSQLState());
        }
        show(reel).body("lengthMarks", not(nullValue()));
    }
}
