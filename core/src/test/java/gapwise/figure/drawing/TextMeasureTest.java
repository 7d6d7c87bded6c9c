package gapwise.figure.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import java.util.List;
import org.junit.jupiter.api.Test;

class TextMeasureTest {
  private static final String LONG =
      "Invented series 3.02, Saint Orwen by the Lower Weir and Upper Marsh 2011";

  @Test
  void lettersAreAsWideAsThePainterSetsThemWithoutHinting() throws Exception {
    // Java's own reader of fonts is the measure from outside.
    FontRenderContext context = new FontRenderContext(new AffineTransform(), true, true);
    for (Face face : Face.values()) {
      Font font =
          Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(face.bytes()))
              .deriveFont(1000f);
      int seen = 0;
      for (int point = ' '; point < 0x10000; point++) {
        int type = Character.getType(point);
        if (!font.canDisplay(point)
            || type == Character.NON_SPACING_MARK
            || type == Character.FORMAT
            || type == Character.CONTROL
            || type == Character.LINE_SEPARATOR
            || type == Character.PARAGRAPH_SEPARATOR) {
          continue;
        }
        String text = Character.toString(point);
        double painter = font.createGlyphVector(context, text).getGlyphMetrics(0).getAdvanceX();
        assertEquals(painter, face.width(face.units(point), 1000), 0.6, () -> "letter " + text);
        seen++;
      }
      assertTrue(seen > 2000, "letters seen: " + seen);
    }
  }

  @Test
  void digitsAndCapitalsAreAsWideAsThoseOfArialAndHelvetica() {
    // Adobe Font Metrics of Helvetica and Helvetica-Bold (from memory): thousandths of the size.
    assertEquals(556, TextMeasure.width("7", 1000, false), 0.5);
    assertEquals(278, TextMeasure.width(" ", 1000, false), 0.5);
    assertEquals(944, TextMeasure.width("W", 1000, false), 0.5);
    assertEquals(222, TextMeasure.width("i", 1000, false), 0.5);
    assertEquals(556, TextMeasure.width("7", 1000, true), 0.5);
    assertEquals(889, TextMeasure.width("m", 1000, true), 0.5);
  }

  @Test
  void lettersThatTheFaceHasNotGetAFullSquareAndCombiningMarksNone() {
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
