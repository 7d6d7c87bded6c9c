package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.testing.SharedServer;
import java.io.StringReader;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One number for one question: for every pooled question that docs/questions.md records, page,
 * figure, table of the figure, result, funnel and line over lengths say the same average; so do the
 * plan of the question when a program sends it, a claim about its methods, and a case beside it.
 */
class OneNumberTest {
  private static final Pattern RECORDED = Pattern.compile("Address: `/pooled\\?([^`]*)`");
  private static final Pattern CLAIM = Pattern.compile("Address: `/claim\\?([^`]*)`");
  private static final Pattern HEADLINE =
      Pattern.compile("(?s)<p>([^<]*)<strong>(.*?)</strong>(.*?)</p>");
  private static final int MOST_IN_A_FIGURE = 3;

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static List<String> questions() throws Exception {
    return recorded(RECORDED);
  }

  private static List<String> recorded(Pattern address) throws Exception {
    return Files.readAllLines(Path.of("../docs/questions.md")).stream()
        .map(address::matcher)
        .filter(Matcher::matches)
        .map(asked -> asked.group(1))
        .distinct()
        .toList();
  }

  private static String page(String path) throws Exception {
    return running.get(path).body().replace('\u00a0', ' ');
  }

  /** The first sentence about each method that has a number. */
  private static List<String> headlines(String page) {
    int from = page.indexOf("<div class=\"answer\">");
    String answer = page.substring(from, page.indexOf("</div>", from));
    return HEADLINE
        .matcher(answer)
        .results()
        .map(
            (MatchResult one) ->
                (one.group(1) + one.group(2) + one.group(3)).replaceAll("\\s+", " ").strip())
        .toList();
  }

  /** The pooled lines of the figure's table, by method. */
  private static Map<String, CSVRecord> pooledLines(String question) throws Exception {
    Map<String, CSVRecord> lines = new TreeMap<>();
    for (CSVRecord line : csv("/api/v1/forest.csv?" + question)) {
      if (line.get("kind").equals("block") && !line.get("estimate").isEmpty()) {
        lines.put(line.get("block"), line);
      }
    }
    return lines;
  }

  private static Iterable<CSVRecord> csv(String path) throws Exception {
    return CSVFormat.RFC4180
        .builder()
        .setHeader()
        .setSkipHeaderRecord(true)
        .get()
        .parse(new StringReader(page(path)));
  }

  /** The average of each pooled method as the result has it. */
  private static Map<String, Double> averages(String question) throws Exception {
    return averages(new ObjectMapper().readTree(page("/api/v1/result.json?" + question)));
  }

  private static Map<String, Double> averages(JsonNode result) {
    Map<String, Double> averages = new TreeMap<>();
    for (JsonNode group : result.path("subgroups")) {
      JsonNode shown = group.path("summary").path("shown");
      if (!shown.isMissingNode()) {
        averages.put(
            Method.of(group.path("level").asText()).label(),
            shown.path("average").asDouble(shown.path("estimate").asDouble()));
      }
    }
    JsonNode alone = result.path("summary").path("shown");
    if (averages.isEmpty() && !alone.isMissingNode()) {
      averages.put("", alone.path("average").asDouble(alone.path("estimate").asDouble()));
    }
    return averages;
  }

  @Test
  void everyRecordedQuestionHasOneNumberEverywhere() throws Exception {
    List<String> questions = questions();
    assertTrue(questions.size() >= 10, questions.toString());
    int compared = 0;
    List<String> differ = new ArrayList<>();
    for (String question : questions) {
      List<String> headlines = headlines(page("/pooled?" + question));
      Map<String, CSVRecord> lines = pooledLines(question);
      Map<String, Double> averages = averages(question);
      String drawing = page("/api/v1/forest.svg?" + question);
      for (Map.Entry<String, CSVRecord> line : lines.entrySet()) {
        compared++;
        double average =
            averages.size() == 1
                ? averages.values().iterator().next()
                : averages.get(line.getKey());
        assertEquals(average, Double.parseDouble(line.getValue().get("estimate")), 1e-12, question);
        String shown = line.getValue().get("shown");
        String number = shown.substring(0, shown.indexOf(" ("));
        String limits = shown.substring(shown.indexOf('(') + 1, shown.indexOf(')'));
        if (headlines.stream()
            .noneMatch(
                told ->
                    told.startsWith(line.getKey())
                        && told.contains(number)
                        && told.contains("(95 % interval " + limits + ")"))) {
          differ.add(question + ": page lacks " + shown + " of " + line.getKey());
        }
        if (!drawing.contains(shown)) {
          differ.add(question + ": figure lacks " + shown);
        }
      }
      for (String other : List.of("/funnel?", "/by-size?")) {
        String page = page(other + question).replaceAll("\\s+", " ");
        boolean drawn = page.contains("<svg") && page.contains("data-part=\"series\"");
        boolean few = headlines.size() <= MOST_IN_A_FIGURE && !headlines.isEmpty();
        if (drawn && few && !headlines.stream().allMatch(page::contains)) {
          differ.add(other + question + " lacks " + headlines);
        }
      }
    }
    assertEquals(List.of(), differ);
    assertTrue(compared >= 10, compared + " pooled values were compared");
  }

  @Test
  void thePlanOfAQuestionRunByTheApiHasItsNumber() throws Exception {
    int compared = 0;
    for (String question : questions()) {
      Map<String, Double> averages = averages(question);
      if (averages.isEmpty()) {
        continue;
      }
      String answer =
          running
              .send(
                  running
                      .request("/api/v1/syntheses")
                      .header("Content-Type", "application/json")
                      .POST(BodyPublishers.ofString(page("/api/v1/plan.json?" + question))))
              .body();
      assertEquals(averages, averages(new ObjectMapper().readTree(answer)), question);
      compared += averages.size();
    }
    assertTrue(compared >= 10, compared + " averages were compared");
  }

  @Test
  void aClaimSaysOfEachMethodWhatItsPooledResultSays() throws Exception {
    int compared = 0;
    for (String claim : recorded(CLAIM)) {
      JsonNode told = new ObjectMapper().readTree(page("/api/v1/claim?" + claim));
      String question = claim.replace("a=", "method=").replace("&b=", "&method=");
      List<String> headlines = headlines(page("/pooled?" + question));
      for (JsonNode method : told.path("separate").path("methods")) {
        String sentence = method.path("sentence").asText().replace('\u00a0', ' ');
        if (sentence.contains("95 %")) {
          compared++;
          assertTrue(headlines.contains(sentence), claim + ": " + sentence + headlines);
        }
      }
      JsonNode comparator = told.path("settling").path("plan").path("comparator");
      if (!comparator.isMissingNode()) {
        String second = Method.of(told.path("claim").path("b").path("code").asText()).label();
        compared++;
        assertEquals(averages(question).get(second), comparator.asDouble(), 1e-12, claim);
      }
    }
    assertTrue(compared >= 6, compared + " numbers were compared");
  }

  @ParameterizedTest
  @CsvSource({
    "frame-off, external-fixation-time, frame-on",
    "unsupported, time-to-unsupported-weight-bearing, definitive-operation",
    "union, time-to-union, definitive-operation"
  })
  void aCaseIsPlacedBesideTheAverageThatTheQuestionHas(
      String milestone, String outcome, String clock) throws Exception {
    Map<String, CSVRecord> lines = pooledLines("outcome=" + outcome + "&clock=" + clock);
    String from = milestone.equals("frame-off") ? "" : "&" + milestone + "-from=" + clock;
    int compared = 0;
    for (CSVRecord line : csv("/api/v1/case.csv?" + milestone + "=9" + from)) {
      if (line.get("kind").equals("pooled")) {
        CSVRecord pooled = lines.get(Method.of(line.get("method")).label());
        if (pooled == null) {
          // A series alone is no pooled value, but the case may stand beside it.
          assertEquals("1", line.get("series"), line.toString());
          continue;
        }
        for (List<String> names :
            List.of(
                List.of("months", "estimate"),
                List.of("lower", "lower"),
                List.of("upper", "upper"))) {
          assertEquals(
              Double.parseDouble(pooled.get(names.get(1))),
              Double.parseDouble(line.get(names.get(0))),
              1e-12,
              line.toString());
        }
        compared++;
      }
    }
    assertEquals(lines.size(), compared, lines.keySet().toString());
    assertTrue(compared > 1, "too few methods to compare");
  }
}
