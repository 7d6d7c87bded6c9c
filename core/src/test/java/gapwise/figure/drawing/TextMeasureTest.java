package gapwise.figure.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.util.List;
import org.junit.jupiter.api.Test;

class TextMeasureTest {
  private static final String LONG =
      "Invented series 3.02, Saint Orwen by the Lower Weir and Upper Marsh 2011";

  @Test
  void theTableKeepsEnoughRoomForTheSansTypefaceOfThisMachine() {
    // The machine's own letters are the measure from outside; one in a hundred is left for hinting.
    FontRenderContext context = new FontRenderContext(new AffineTransform(), true, true);
    for (int style : new int[] {Font.PLAIN, Font.BOLD}) {
      Font font = new Font(Font.SANS_SERIF, style, 1).deriveFont(style, 100f);
      for (String text : List.of(LONG, "87 (70 to 96)", "Zähne, Øre, façade, łódź", "\u22120.4")) {
        double machine = font.getStringBounds(text, context).getWidth();
        double kept = TextMeasure.width(text, 100, style == Font.BOLD);
        assertTrue(machine <= kept * 1.01, text + ": " + machine + " > " + kept);
      }
    }
  }

  @Test
  void lettersOutsideTheTableGetAFullSquareAndCombiningMarksNone() {
    assertTrue(TextMeasure.width("\u9aa8", 10, false) >= 10);
    assertEquals(TextMeasure.width("e", 10, false), TextMeasure.width("e\u0301", 10, false), 1e-12);
  }

  @Test
  void wrappedLinesFitAndLoseNoWord() {
    Lettering lettering = Lettering.plain(12);
    List<String> lines = TextMeasure.wrap(LONG, lettering, 150);
    assertEquals(LONG, String.join(" ", lines));
    lines.forEach(line -> assertTrue(lettering.width(line) <= 150, line));
  }

  @Test
  void aWordWiderThanTheRoomIsCutAndNotLost() {
    Lettering lettering = Lettering.plain(12);
    String word = "Donaudampfschifffahrtsgesellschaftskrankenhaus";
    List<String> lines = TextMeasure.wrap(word, lettering, 60);
    assertEquals(word, String.join("", lines));
    lines.forEach(line -> assertTrue(lettering.width(line) <= 60, line));
  }

  @Test
  void aShortenedNameKeepsItsYear() {
    Lettering lettering = Lettering.plain(12);
    String shortened = TextMeasure.shorten(LONG, lettering, 180);
    assertTrue(shortened.endsWith("\u2026 2011"), shortened);
    assertTrue(lettering.width(shortened) <= 180, shortened);
  }

  @Test
  void aTextOfAHundredThousandLettersIsShortenedToSomePages() {
    Lettering lettering = Lettering.plain(12);
    for (String text : List.of("w".repeat(100_000), "word ".repeat(20_000))) {
      List<String> lines = TextMeasure.wrap(text, lettering, 200);
      assertTrue(lines.get(lines.size() - 1).endsWith("\u2026"));
      String told = String.join("", lines).replace(" ", "");
      assertTrue(told.length() > 7000 && told.length() <= Words.IN_A_TEXT + 1, "" + told.length());
      lines.forEach(line -> assertTrue(lettering.width(line) <= 200, line));
    }
  }

  @Test
  void aNameOfAHundredThousandLettersInTwoLinesKeepsItsYear() {
    Lettering lettering = Lettering.plain(12);
    String name = "Invented series " + "w".repeat(100_000) + " 2011";
    List<String> lines = TextMeasure.wrap(name, lettering, 180, 2);
    assertEquals(2, lines.size());
    assertTrue(lines.get(1).endsWith("\u2026 2011"), lines.get(1));
    lines.forEach(line -> assertTrue(lettering.width(line) <= 180, line));
  }

  @Test
  void aLetterOfTwoHalvesIsNeverCutInTwo() {
    String bones = "\ud83e\uddb4".repeat(10);
    assertEquals("\ud83e\uddb4\u2026", Words.atMost(bones, 3));
    assertEquals(bones, Words.atMost(bones, 20));
  }
}
