import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import reelproof.client.ApiClient;
import reelproof.client.ApiException;
import reelproof.client.api.CertificatesApi;
import reelproof.client.api.ProductsAndReelsApi;
import reelproof.client.api.ResultsAndRecordsApi;
import reelproof.client.model.CertificateAnswer;
import reelproof.client.model.Problem;
import reelproof.client.model.ProductRegistration;
import reelproof.client.model.QuantityValue;
import reelproof.client.model.RecordAnswer;
import reelproof.client.model.ReelRegistration;
import reelproof.client.model.Result;

/**
 * The main job through a generated client: a product and a reel are registered, a result is sent, its record is read, the certificate
 * is issued and downloaded. Compiled and run by GeneratedClientTest.
 */
public class MainJob {
    private MainJob() {}

    /**
     * Does the job.
     *
     * @param service the service's address
     * @param authorization value of the header: "Bearer " and an API token
     * @param resultFile a result as JSON, which passes category 6A
     * @return a line a step
     */
    public static String run(String service, String authorization, Path resultFile) throws Exception {
        ApiClient client = new ApiClient();
        client.updateBaseUri(service);
        client.setRequestInterceptor(request -> request.header("Authorization", authorization));
        ProductsAndReelsApi products = new ProductsAndReelsApi(client);
        ResultsAndRecordsApi results = new ResultsAndRecordsApi(client);
        CertificatesApi certificates = new CertificatesApi(client);
        StringBuilder steps = new StringBuilder();

        products.putProduct(
                "GENERATED-6A",
                new ProductRegistration()
                        .description("invented 4-pair cable")
                        .limitSet("category-6a-cable")
                        .pairs(4)
                        .gauge("23 AWG"),
                null);
        products.putReel(
                "GENERATED-1",
                new ReelRegistration()
                        .product("GENERATED-6A")
                        .length(new QuantityValue().value(305.0).unit("m"))
                        .order("SO-GENERATED"));

        try {
            certificates.postReelCertificates("GENERATED-1", null);
        } catch (ApiException refused) {
            Problem problem = client.getObjectMapper().readValue(refused.getResponseBody(), Problem.class);
            steps.append("untested: ").append(problem.getStatus()).append('\n');
        }

        Result result = client.getObjectMapper().readValue(resultFile.toFile(), Result.class);
        RecordAnswer taken = results.postReelTests("GENERATED-1", result.product("GENERATED-6A"), null);
        RecordAnswer record = results.getRecord(taken.getId().toString(), null);
        steps.append("verdict: ").append(record.getVerdict().getValue()).append('\n');
        steps.append("findings: ").append(record.getFindings().size() > 10 ? "many" : "few").append('\n');
        steps.append("return loss: ")
                .append(results.getRecordFinding(record.getId().toString(), "return-loss", null)
                        .getOutcome()
                        .getValue())
                .append('\n');

        CertificateAnswer certificate = certificates.postReelCertificates("GENERATED-1", null);
        File pdf = certificates.getCertificatePdf(certificate.getNumber(), null);
        steps.append("certificate: ")
                .append(new String(Files.readAllBytes(pdf.toPath()), 0, 5, java.nio.charset.StandardCharsets.US_ASCII))
                .append('\n');
        Files.delete(pdf.toPath());
        steps.append("genuine: ")
                .append(certificates
                        .getCertificateVerification(certificate.getNumber(), certificate.getPdfSha256())
                        .getGenuine());
        return steps.toString();
    }
}
