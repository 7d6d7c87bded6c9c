package gapwise.server.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.server.testing.PageStates;
import gapwise.server.testing.SharedServer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a page says of a drawing it says once, outside of it; the same drawing taken away says it
 * within its own frame.
 */
class DrawingsWithinPagesTest {
  private static final Pattern FIGURE =
      Pattern.compile("(?s)<figure class=\"figure\">(.*?)</figure>");
  private static final Pattern HEADING = Pattern.compile("(?s)<h([12])[^>]*>(.*?)</h\\1>");
  private static final Pattern SVG_FILE = Pattern.compile("href=\"([^\"]*\\.svg[^\"]*)\" download");
  private static final Pattern LETTERS = Pattern.compile("(?s)<text[^>]*>(.*?)</text>");
  private static final Pattern WARNED = Pattern.compile("(?s)<div class=\"caution\".*?</div>");

  private static final Pattern RULE =
      Pattern.compile("<rect [^>]*y=\"([0-9.]+)\" width=\"2.4\" height=\"([0-9.]+)\"");
  private static final Pattern LINE =
      Pattern.compile("<text [^>]*y=\"([0-9.]+)\"[^>]*>([^<]*)</text>");

  @RegisterExtension static final SharedServer running = SharedServer.withDemonstration();

  private static String said(String markup) {
    return markup
        .replaceAll("<[^>]+>", " ")
        .replace("&#34;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&")
        .replace('\u00a0', ' ')
        .replaceAll("\\s+", " ")
        .strip();
  }

  private static List<String> all(Pattern pattern, int group, String text) {
    return pattern.matcher(text).results().map(one -> one.group(group)).toList();
  }

  /** The words that are drawn, not those for readers who cannot see them. */
  private static String drawn(String svg) {
    return said(String.join(" ", all(LETTERS, 1, svg)));
  }

  private static int times(String words, String text) {
    return text.split(Pattern.quote(words), -1).length - 1;
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "pooled: one method | Union, as the paper counts it, after bone transport"
            + " | Union, as the paper counts it, after bone transport",
        "pooled: all methods, a time | Time to union: missing bone reaching into 5 to 8 cm"
            + " | Time to union: missing bone reaching into 5 to 8 cm",
        "by size: a line | Union, as the paper counts it, by size"
            + " | Union, as the paper counts it, by length of missing bone",
        "funnel | Union, as the paper counts it, after bone transport, small against large series"
            + " | Union, as the paper counts it, after bone transport, small against large series",
        "comparisons | Methods that stand side by side within a study"
            + " | Methods that stand side by side within a study",
        "claim: examined | The studies that hold both methods"
            + " | Primary union: bone transport against induced membrane",
        "case: placed | The course of one case beside published averages"
            + " | The course of one case beside published averages"
      })
  void onceInThePageAndWithinTheFile(String state, String heading, String title) throws Exception {
    String page = running.get(PageStates.byName().get(state)).body();
    Matcher figure = FIGURE.matcher(page);
    assertTrue(figure.find(), state);
    String within = drawn(figure.group(1));
    String outside = FIGURE.matcher(page).replaceAll("");

    List<String> headings = all(HEADING, 2, outside).stream().map(each -> said(each)).toList();
    assertEquals(1, headings.stream().filter(heading::equals).count(), headings::toString);
    assertEquals(1, times("Invented data.", said(outside)), "the banner");
    assertFalse(within.contains(title), within);
    assertFalse(within.contains("nvented d"), within);
    assertTrue(figure.group(1).contains("<title>" + title), "words for who cannot see it");

    String path =
        all(SVG_FILE, 1, outside).stream()
            .filter(one -> !one.contains("for="))
            .findFirst()
            .orElseThrow();
    String file = running.get(path.replace("&amp;", "&")).body();
    String alone = drawn(file);
    assertTrue(alone.contains(title), alone);
    assertTrue(alone.contains(FigureProvenance.INVENTED), alone);
    String warned = said(String.join(" ", all(WARNED, 0, outside)));
    List<String> cautions = cautions(file);
    assertFalse(cautions.isEmpty(), file);
    for (String caution : cautions) {
      assertTrue(alone.contains(caution), () -> caution + " not in " + alone);
      assertTrue(warned.contains(caution), () -> caution + " not in " + warned);
      assertFalse(within.contains(caution), within);
    }
    assertTrue(said(outside).contains("Data version: "), "the source");
    assertFalse(within.contains("Data version: "), within);
  }

  /** What stands beside the upright rules at the foot of a drawing. */
  private static List<String> cautions(String svg) {
    List<String> cautions = new ArrayList<>();
    for (MatchResult rule : RULE.matcher(svg).results().toList()) {
      double top = Double.parseDouble(rule.group(1));
      double bottom = top + Double.parseDouble(rule.group(2));
      List<String> lines = new ArrayList<>();
      for (MatchResult line : LINE.matcher(svg).results().toList()) {
        double y = Double.parseDouble(line.group(1));
        if (y > top && y < bottom) {
          lines.add(line.group(2));
        }
      }
      cautions.add(said(String.join(" ", lines)));
    }
    return cautions;
  }
}
