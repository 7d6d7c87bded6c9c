package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import gapwise.server.testing.SharedServer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The risk of bias as judged, on the invented demonstration base. */
class RiskOfBiasTest {
  private static final String ASKED = "outcome=primary-union&method=bone-transport";
  private static final String WITHOUT = "&risk=low&risk=some&risk=not-rated";
  private static final Pattern COUNTED =
      Pattern.compile("Risk of bias of the (\\d+) series, as people judged it: ([^.]*)\\.");
  private static final Pattern MOVED =
      Pattern.compile(
          "(\\d+) \\([\\d.]+ to [\\d.]+\\) with all (\\d+) series, (\\d+) \\([\\d.]+ to [\\d.]+\\) with"
              + " (\\d+) left out for their risk of bias");

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String page(String path) throws Exception {
    var answer = running.get(path);
    assertEquals(200, answer.statusCode(), path);
    return answer.body().replace("&amp;", "&");
  }

  private static JsonNode pooled(String address) throws Exception {
    var answer = running.get("/api/v1/result.json?" + address);
    assertEquals(200, answer.statusCode(), answer.body());
    return JsonMapper.builder().build().readTree(answer.body());
  }

  private static int number(String told, String risk) {
    Matcher found = Pattern.compile("(\\d+) " + risk + "(?:,|$)").matcher(told);
    return found.find() ? Integer.parseInt(found.group(1)) : 0;
  }

  @Test
  void everySeriesIsCountedAtItsRiskAndThoseAtHighRiskComeOffAtAClickWithBothNumbers()
      throws Exception {
    String all = page("/pooled?" + ASKED);
    Matcher counted = COUNTED.matcher(all);
    assertTrue(counted.find(), all);
    int series = Integer.parseInt(counted.group(1));
    String told = counted.group(2);
    int high = number(told, "serious") + number(told, "critical");
    int notRated = number(told, "not rated");
    assertTrue(high > 0 && notRated > 0, told);
    assertEquals(series, high + notRated + number(told, "low") + number(told, "some"), told);
    assertTrue(all.contains("Not rated is not the same as low."));
    assertTrue(all.contains("Without the " + high + " series at serious or critical risk of bias"));
    assertTrue(all.contains("href=\"/pooled?" + ASKED + WITHOUT + "\""), all);

    String without = page("/pooled?" + ASKED + WITHOUT);
    Matcher moved = MOVED.matcher(without);
    assertTrue(moved.find(), without);
    assertEquals(series, Integer.parseInt(moved.group(2)));
    assertEquals(high, Integer.parseInt(moved.group(4)));
    assertEquals(hundredths(pooled(ASKED)), Integer.parseInt(moved.group(1)));
    assertEquals(hundredths(pooled(ASKED + WITHOUT)), Integer.parseInt(moved.group(3)));
    assertTrue(
        without.contains("href=\"/pooled?" + ASKED + "\">Take series of every risk of bias"));
    assertTrue(
        without.contains(
            "Nobody rated the risk of bias of "
                + notRated
                + " of "
                + (series - high)
                + " groups; not rated is not the same as low."));
    assertTrue(without.contains("risk of bias than asked for: serious risk of bias."), without);
    assertTrue(without.contains("without serious or critical risk of bias<span class=\"x\""));
  }

  private static long hundredths(JsonNode result) {
    double average = result.at("/summary/shown/average").asDouble();
    assertTrue(average > 0 && average < 1, result.toString());
    return Math.round(100 * average);
  }

  @Test
  void theListIsNarrowedAndShowsTheRiskAsAColumn() throws Exception {
    String list = page("/studies?risk=serious&column=risk");
    assertTrue(list.contains("serious risk of bias<span class=\"x\""), list);
    assertTrue(list.contains("data-head=\"Risk of bias\">serious<"), list);
    assertFalse(list.contains("data-head=\"Risk of bias\">some<"), list);
  }

  @Test
  void aRiskThatThereIsNotIsRefusedWithThoseThereAre() throws Exception {
    var answer = running.get("/studies?risk=high");
    assertEquals(422, answer.statusCode());
    assertTrue(answer.body().contains("low, some, serious, critical, not-rated"), answer.body());
  }

  @Test
  void aStudyShowsEachJudgementWithReasonAndPlaceAndOneNobodyJudgedSaysSo() throws Exception {
    String judged = page("/studies/invented-54");
    assertTrue(judged.contains("ROBINS-I, version 2016, for Primary union"), judged);
    assertTrue(
        judged.contains("Over all serious risk: the worst domain, by the rule of the instrument."));
    assertTrue(
        judged.contains(
            "<span class=\"judged serious\" aria-hidden=\"true\">S</span>serious risk"));
    assertTrue(judged.contains("Invented for demonstration: confounding, serious risk"));
    assertTrue(judged.contains("Judged by XA, XB"));
    String index = page("/studies/invented-02");
    assertTrue(index.contains("of 16 points. The publication has no bands"), index);
    assertTrue(page("/studies/invented-11").contains("Nobody has judged how this study was made."));
  }

  @Test
  void whatWasJudgedTravelsWithTheRecord() throws Exception {
    var record = running.get("/api/v1/studies/invented-54");
    assertTrue(record.body().contains("\"robins-i\""), record.body());
    assertTrue(running.get("/import/template/appraisal.csv").body().startsWith("study_id,"));
  }
}
