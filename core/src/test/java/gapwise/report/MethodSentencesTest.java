package gapwise.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.sentence.Catalogue;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The sentences of the paragraph and the papers that they name. */
class MethodSentencesTest {
  private static final Map<String, String> LINES =
      Catalogue.lines(MethodSentences.class, "methods.properties");

  @Test
  void everyPaperNamedIsListedAndEveryPaperListedIsNamed() {
    Set<String> named = new TreeSet<>();
    MethodSentences.names().forEach(name -> named.addAll(MethodSentences.cited(name)));
    assertEquals(new TreeSet<>(Citation.all().keySet()), named);
  }

  @Test
  void noSentenceKeepsTheSignOfAPaperThatWasNotRead() {
    for (String name : MethodSentences.names()) {
      int signs = LINES.get(name).split("@", -1).length - 1;
      assertEquals(signs, MethodSentences.cited(name).size(), name);
    }
  }

  @Test
  void noSentenceHasAFullStopOfItsOwnOrSpeaksInThePresent() {
    LINES.forEach(
        (name, text) -> {
          assertTrue(!text.endsWith("."), name);
          assertTrue(!text.matches(".*\\b(is|are|we|We)\\b.*"), () -> name + ": " + text);
        });
  }

  @Test
  void aPaperOfAJournalHasVolumeAndPagesAndABookAPublisher() {
    Citation.all()
        .forEach(
            (key, citation) -> {
              boolean journal = citation.volume().isPresent();
              assertTrue(
                  journal ? citation.pages().isPresent() : citation.source().contains(": "), key);
              assertTrue(key.endsWith("-" + citation.year()), key);
            });
  }

  @Test
  void aReferenceIsPrintedWithAuthorsTitleJournalYearVolumeAndPages() {
    assertEquals(
        "Egger M, Davey Smith G, Schneider M, Minder C. Bias in meta-analysis detected by a simple,"
            + " graphical test. BMJ. 1997;315:629-634. doi:10.1136/bmj.315.7109.629",
        Citation.named("egger-1997").line());
  }
}
