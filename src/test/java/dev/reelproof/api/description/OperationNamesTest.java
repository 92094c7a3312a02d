package dev.reelproof.api.description;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.eclipse.microprofile.openapi.models.PathItem.HttpMethod;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OperationNamesTest {
    @ParameterizedTest
    @CsvSource({
        "GET, /api/v1/reels, getReels",
        "PUT, /api/v1/reels/{reel}, putReel",
        "POST, /api/v1/reels/{reel}/tests, postReelTests",
        "GET, /api/v1/limit-sets/{id}/{property}, getLimitSetProperty",
        "GET, /api/v1/certificates/{number}.pdf, getCertificatePdf",
        "GET, /api/v1/records/{id}/original/{n}, getRecordOriginal",
        "POST, /api/v1/lots/common-ancestors, postLotsCommonAncestors",
        "DELETE, /api/v1/lots/waiting/{lot}, deleteLotsWaiting",
        "GET, /api/v1/orders/{order}/certificates.zip, getOrderCertificatesZip",
        "GET, /api/v1/status, getStatus"
    })
    void readsAsMethodAndPath(HttpMethod method, String path, String name) {
        assertEquals(name, OperationNames.name(method, path));
    }
}
