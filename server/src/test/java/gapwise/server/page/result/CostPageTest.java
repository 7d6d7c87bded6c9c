package gapwise.server.page.result;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gapwise.server.testing.SharedServer;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Costs of the demonstration base are in XTS, the letters that ISO 4217 keeps for tests. */
class CostPageTest {
  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String text(String path) throws Exception {
    return running.get(path).body().replace('\u00a0', ' ');
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/pooled?outcome=cost",
        "/by-size?outcome=cost",
        "/funnel?outcome=cost",
        "/studies?outcome=cost",
        "/api/v1/forest.csv?outcome=cost",
        "/api/v1/forest.svg?outcome=cost",
        "/api/v1/by-size.csv?outcome=cost",
        "/claim?a=bone-transport&says=more&outcome=cost&b=primary-amputation"
      })
  void noPlaceSaysCurrencyForTheNameOfOne(String path) throws Exception {
    String body = text(path);
    assertFalse(body.contains("0 currency") || body.matches("(?s).*\\d currency.*"), body);
    assertFalse(body.contains("mean, currency"), body);
  }

  @Test
  void amountsStandInTheCurrencyOfTheirRowsWithThousandsApart() throws Exception {
    String page = text("/pooled?outcome=cost&method=bone-transport");
    assertTrue(page.contains("<strong>18,079 XTS</strong>"), page);
    assertTrue(page.contains("(95 % interval 14,977 to 21,824)"), page);
    assertTrue(page.contains("The costs are in XTS, in prices of "), page);
  }

  @Test
  void figureAndResultSayInWhatTheyAre() throws Exception {
    assertTrue(text("/api/v1/forest.csv?outcome=cost").contains("mean, XTS"));
    assertTrue(text("/api/v1/forest.svg?outcome=cost").contains("XTS"));
    JsonNode result = new ObjectMapper().readTree(text("/api/v1/result.json?outcome=cost"));
    List<JsonNode> prices =
        result.path("warnings").findParents("code").stream()
            .filter(warning -> warning.path("code").asText().equals("prices"))
            .toList();
    assertEquals(1, prices.size(), result.toString());
    assertTrue(prices.get(0).path("message").asText().startsWith("The costs are in XTS"));
  }
}
