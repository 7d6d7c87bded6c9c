package gapwise.server.page.option;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The table of options taken along as a summary of findings. */
class FindingsFilesTest {
  @RegisterExtension private static final SharedServer SERVER = SharedServer.withDemonstration();

  private static final String ASKED =
      "?from=6&to=6&bone=tibia&infected=yes&method=bone-transport&method=induced-membrane";

  private static List<CSVRecord> lines() throws Exception {
    HttpResponse<String> answer = SERVER.get("/compare/findings.csv" + ASKED);
    assertEquals(200, answer.statusCode(), answer.body());
    assertTrue(
        answer
            .headers()
            .firstValue("Content-Disposition")
            .orElse("")
            .contains("summary-of-findings.csv"));
    return CSVFormat.RFC4180
        .builder()
        .setHeader()
        .setSkipHeaderRecord(true)
        .get()
        .parse(new StringReader(answer.body()))
        .getRecords();
  }

  @Test
  void everyMethodHasALineForEveryOutcomeWithTheNumbersAndCertaintyOfTheApi() throws Exception {
    List<CSVRecord> lines = lines();
    JsonNode api =
        JsonMapper.builder().build().readTree(SERVER.get("/api/v1/options" + ASKED).body());
    for (JsonNode method : api.required("methods")) {
      for (JsonNode cell : method.required("outcomes")) {
        String aspect = label(api, cell.required("aspect").asText());
        List<CSVRecord> own =
            lines.stream()
                .filter(one -> one.get("evidence").equals("one method"))
                .filter(one -> one.get("outcome").equals(aspect))
                .filter(one -> method.required("method").toString().contains(one.get("method")))
                .toList();
        assertEquals(1, own.size(), method.required("method") + " " + aspect);
        CSVRecord line = own.get(0);
        if (cell.has("value")) {
          JsonNode value = cell.required("value");
          assertEquals(
              value.required("estimate").asDouble(), Double.parseDouble(line.get("value")));
          assertEquals(value.required("lower").asDouble(), Double.parseDouble(line.get("lower")));
          assertEquals(value.required("upper").asDouble(), Double.parseDouble(line.get("upper")));
        } else {
          assertEquals("", line.get("value"));
          assertFalse(line.get("in-words").isBlank());
        }
        if (cell.has("certainty")) {
          assertEquals(
              cell.required("certainty").required("level").asText(),
              line.get("certainty").replace(' ', '-'));
          int lowered =
              Integer.parseInt(line.get("levels-bias"))
                  + Integer.parseInt(line.get("levels-inconsistency"))
                  + Integer.parseInt(line.get("levels-indirectness"))
                  + Integer.parseInt(line.get("levels-imprecision"))
                  + Integer.parseInt(line.get("levels-unpublished"));
          assertEquals(lowered == 0, line.get("reasons").isEmpty(), line.get("reasons"));
        } else {
          assertEquals("", line.get("certainty"));
        }
      }
    }
  }

  private static String label(JsonNode api, String aspect) {
    for (JsonNode outcome : api.required("outcomes")) {
      if (outcome.required("aspect").asText().equals(aspect)) {
        return outcome.required("outcome").required("label").asText();
      }
    }
    throw new AssertionError("the API has no " + aspect);
  }

  @Test
  void everyLineSaysThatGroupsAreSeparateAndWhereItIsFrom() throws Exception {
    List<CSVRecord> lines = lines();
    assertTrue(lines.stream().anyMatch(one -> one.get("evidence").startsWith("compared within")));
    for (CSVRecord line : lines) {
      assertTrue(line.get("cautions").contains("no comparison"), line.toString());
      assertTrue(line.get("data-version").contains("change"), line.toString());
      assertEquals("yes", line.get("invented"));
      assertTrue(line.get("address").contains("/compare?"), line.toString());
      assertFalse(line.toString().contains("NaN"), line.toString());
    }
  }

  @Test
  void theTextDocumentHasATableAnOutcomeWithReasonsAndTheSameNumbers() throws Exception {
    HttpResponse<byte[]> answer =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(SERVER.address("/compare/findings.docx" + ASKED)))
                    .build(),
                HttpResponse.BodyHandlers.ofByteArray());
    assertEquals(200, answer.statusCode());
    List<CSVRecord> lines = lines();
    try (XWPFDocument word = new XWPFDocument(new ByteArrayInputStream(answer.body()))) {
      StringBuilder text = new StringBuilder();
      for (XWPFTable table : word.getTables()) {
        assertTrue(table.getRow(0).isRepeatHeader());
        text.append(table.getText());
      }
      assertEquals(
          lines.stream().map(one -> one.get("aspect")).distinct().count(), word.getTables().size());
      for (CSVRecord line : lines) {
        assertTrue(text.toString().contains(line.get("in-words").replaceFirst("^'", "")));
      }
      assertTrue(text.toString().contains("too few patients -"), text.toString());
    }
  }

  @Test
  void thePageOffersBothAndWhatCannotBeReadIsRefused() throws Exception {
    String page = SERVER.get("/compare" + ASKED + "&whole=yes").body();
    assertTrue(page.contains("href=\"/compare/findings.csv?"), page);
    assertTrue(page.contains("href=\"/compare/findings.docx?"), page);
    assertEquals(422, SERVER.get("/compare/findings.csv?age=old").statusCode());
  }
}
