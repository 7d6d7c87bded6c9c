package gapwise.server.page.part;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.analysis.result.Result;
import gapwise.problem.Problem;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PlainWarningsTest {
  private static final Path CORE = Path.of("..", "core", "src", "main", "java", "gapwise");

  /** Rooms whose warnings stand on a page of pooled series. */
  private static final List<String> ROOMS =
      List.of(
          "analysis/pooling",
          "analysis/subgroups",
          "analysis/bayesian",
          "analysis/synthesis",
          "synthesis/bayes",
          "synthesis/pooling");

  /** Rooms whose warnings stand on the page of an event over time. */
  private static final List<String> ROOMS_OF_CURVES =
      List.of("analysis/curves", "synthesis/pooling", "synthesis/heterogeneity");

  /** What only two groups held against each other are warned of, which that page does not do. */
  private static final Set<String> OF_TWO_GROUPS = Set.of("no-spread-in-a-group");

  private static final Pattern TOLD =
      Pattern.compile(
          "(?:Warning\\.of|new Problem|\\bwarn)\\(\\s*(?:(?:\"\"|name|group),\\s*)?"
              + "\"([a-z]+(?:-[a-z]+)+)\"");

  /** Words of who works the numbers out; common practice, no source. */
  private static final Pattern JARGON =
      Pattern.compile(
          "(?i)likelihood|posterior|prior|\\btau\\b|variance|quadrature|heterogen|estimator|;|'");

  private static Properties words() throws IOException {
    Properties words = new Properties();
    try (Reader in =
        new InputStreamReader(
            PlainWarnings.class.getResourceAsStream("warnings.properties"),
            StandardCharsets.UTF_8)) {
      words.load(in);
    }
    return words;
  }

  @Test
  void everyCodeThatAPooledResultGivesHasWordsOfItsOwn() throws IOException {
    Set<String> codes = codes(ROOMS);
    assertTrue(codes.size() > 20, "found " + codes);
    assertEquals(List.of(), codes.stream().filter(code -> !PlainWarnings.isWorded(code)).toList());
  }

  @Test
  void everyCodeThatAResultOfCurvesGivesHasWordsWhereTheyAreTold() throws IOException {
    Set<String> codes = codes(ROOMS_OF_CURVES);
    assertTrue(
        codes.containsAll(
            Set.of(
                "reading-levelled",
                "censoring-assumed",
                "follow-up-too-short",
                "limits-left-out",
                "study-left-out",
                "between-study-variance-at-zero")),
        "found " + codes);
    assertEquals(
        OF_TWO_GROUPS,
        codes.stream()
            .filter(code -> !PlainWarnings.isWordedOfCurves(code))
            .collect(Collectors.toSet()));
  }

  private static Set<String> codes(List<String> rooms) throws IOException {
    Set<String> codes = new TreeSet<>();
    for (String room : rooms) {
      try (Stream<Path> files = Files.walk(CORE.resolve(room))) {
        for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
          Matcher told = TOLD.matcher(Files.readString(file));
          while (told.find()) {
            codes.add(told.group(1));
          }
        }
      }
    }
    return codes;
  }

  @Test
  void noneIsInTheWordsOfWhoWorksNumbersOut() throws IOException {
    Properties words = words();
    for (String code : words.stringPropertyNames()) {
      String said = words.getProperty(code);
      assertFalse(JARGON.matcher(said).find(), code + ": " + said);
      assertFalse(said.endsWith("."), code);
      assertTrue(Character.isLowerCase(said.charAt(0)) || said.startsWith("{"), code);
    }
  }

  @Test
  void aWarningOfCurvesNamesTheirMethodAndItsStudy() {
    assertEquals(
        "Bone transport: Tarn 2031 is not followed as far as the mean of all reaches, so it does"
            + " not count in that mean.",
        PlainWarnings.ofCurves(
            Result.Warning.of("study-left-out", "pooled curve: left out", "Tarn 2031"),
            "Bone transport"));
    assertEquals(
        "Bone transport: the upper limits of 2 medians are left out.",
        PlainWarnings.ofCurves(
            Result.Warning.of("limits-left-out", "the upper limits of 2 medians are left out; why"),
            "Bone transport"));
  }

  @Test
  void aGroupIsNamedAStudyTooAndOtherCodesKeepTheirWords() {
    Problem none = new Problem("", "no-events", "no event anywhere, so the likelihood rises");
    assertEquals(
        "Allograft: no patient in any of these series had the event, so no average is worked out"
            + " for them. That does not show that it cannot happen.",
        PlainWarnings.sentence(Result.Warning.ofGroup("allograft", none), level -> "Allograft"));
    Result.Warning median = Result.Warning.of("median-looks-skewed", "far off", "Tarn 2031");
    assertTrue(
        PlainWarnings.sentence(median, level -> level)
            .startsWith("Tarn 2031 reports a median far to one side of its range"));
    Result.Warning twice =
        Result.Warning.of("study-given-twice", "Tarn 2031 stands in 2 rows, and so on; remove one");
    assertEquals(
        "Tarn 2031 stands in 2 rows, and so on. Where they are the same patients, they count too"
            + " often.",
        PlainWarnings.sentence(twice, level -> level));
    Result.Warning other = Result.Warning.of("something-else", "it is said as it was");
    assertEquals("It is said as it was.", PlainWarnings.sentence(other, level -> level));
  }
}
