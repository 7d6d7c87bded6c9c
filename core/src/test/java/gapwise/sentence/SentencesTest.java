package gapwise.sentence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The catalogue of sentences: how it is filled, and rules that every sentence keeps. */
class SentencesTest {
  /** A name of a sentence as the code writes it. */
  private static final Pattern NAME = Pattern.compile("\"([a-z]+[.][a-z]+(?:-[a-z]+)*)\"");

  private static String filled(String template, Map<String, ?> values) {
    return Template.of(template).filled(values);
  }

  @Test
  void oneIsToldInTheSingularAndEveryOtherNumberInThePlural() {
    String template = "{n#1 study of {who}|# studies of {who}}.";
    assertEquals("1 study of A.", filled(template, Map.of("n", 1, "who", "A")));
    assertEquals("0 studies of A.", filled(template, Map.of("n", 0, "who", "A")));
    assertEquals("1,204 studies of A.", filled(template, Map.of("n", 1204, "who", "A")));
  }

  @Test
  void whatIsFilledInIsNeverReadAsAPlace() {
    assertEquals(
        "Of {who#1|2} and |.",
        filled("Of {who} and {other}.", Map.of("who", "{who#1|2}", "other", "|")));
  }

  @Test
  void aTemplateWhoseBracesDoNotMatchIsRefused() {
    for (String wrong : new String[] {"{a", "a}", "{n#1|2", "{n#1}"}) {
      assertThrows(IllegalArgumentException.class, () -> Template.of(wrong), wrong);
    }
  }

  @Test
  void aValueThatIsMissingOrHasNoPlaceIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> Sentences.say("told.from"));
    assertThrows(
        IllegalArgumentException.class, () -> Sentences.say("told.limit", Map.of("series", 1)));
    assertThrows(IllegalArgumentException.class, () -> Sentences.say("no.such"));
  }

  @Test
  void everySentenceIsSaidSomewhereAndNothingElseIs() throws IOException {
    Set<String> said = new TreeSet<>();
    for (String module : List.of("src/main", "../server/src/main")) {
      try (Stream<Path> files = Files.walk(Path.of(module))) {
        for (Path file : files.filter(SentencesTest::isCode).toList()) {
          String code = Files.readString(file);
          if (code.contains("Sentences.say")) {
            NAME.matcher(code).results().map((MatchResult one) -> one.group(1)).forEach(said::add);
          }
        }
      }
    }
    assertEquals(Sentences.all().keySet(), said);
  }

  private static boolean isCode(Path file) {
    return file.toString().endsWith(".java") || file.toString().endsWith(".jte");
  }

  @Test
  void noSentenceHasDoubleSpacesOrSpacesBeforeItsSigns() {
    Sentences.all()
        .forEach(
            (name, template) -> {
              Map<String, Object> values = new HashMap<>();
              template.places().forEach(place -> values.put(place, 2));
              String text = template.filled(values);
              assertTrue(!text.contains("  ") && !text.matches(".* [.,;:].*"), name + ": " + text);
            });
  }

  /**
   * Words that promise more than a number carries (rules of the GRADE papers on plain statements,
   * see docs/methods/certainty.md). "Best estimate" and "no effect" of statistics, "best" as the
   * end of a range and words within words stay.
   */
  @Test
  void noSentencePromisesMoreThanANumberCarries() {
    Pattern promising =
        Pattern.compile(
            "(?i)\\b(significant(ly)?|proven|safer?|superior|inferior|equally good|ineffective"
                + "|no evidence of harm|is best|the best (method|option|treatment)|works)\\b");
    List<String> found = new ArrayList<>();
    Sentences.all()
        .forEach(
            (name, template) -> {
              Map<String, Object> values = new HashMap<>();
              template.places().forEach(place -> values.put(place, 2));
              if (promising.matcher(template.filled(values)).find()) {
                found.add(name);
              }
            });
    assertEquals(List.of(), found);
  }
}
