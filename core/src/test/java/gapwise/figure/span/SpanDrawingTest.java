package gapwise.figure.span;

import static gapwise.figure.drawing.DrawnSvg.number;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Picture;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

class SpanDrawingTest {
  private static final Optional<SpanRule> NO_RULE = Optional.empty();

  static Stream<Span> kinds() {
    return Stream.of(
        new Span.Mean(5.1, Optional.of(SpanRule.range(3, 8))),
        new Span.Mean(6, Optional.of(SpanRule.standardDeviation(6, 2.1))),
        new Span.Median(6.8, Optional.of(SpanRule.quartiles(5, 9.5))),
        new Span.Median(0.5, NO_RULE),
        new Span.PerPatient(List.of(3.0, 4.0, 4.0, 11.5), 4),
        new Span.RangeOnly(2.5, 12.5),
        new Span.Threshold(4),
        new Span.Mean(26, NO_RULE),
        new Span.NotReported());
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void everyKindIsDrawnInsideItsWidthAndNamesItself(Span span) {
    for (double width : new double[] {90, 116, 150, 230}) {
      Picture picture = SpanDrawing.draw(span, 12, width);
      DrawnSvg drawn = DrawnSvg.of(picture);
      assertEquals("Missing bone: " + span.words(), drawn.all("title").get(0).getTextContent());
      assertTrue(width < 150 || drawn.letters().size() == 1, "from 150 the number always stands");
      for (DrawnSvg.Letters letters : drawn.letters()) {
        assertTrue(letters.left() >= 0 && letters.right() <= width, letters.toString());
        assertTrue(letters.top() >= 0 && letters.bottom() <= picture.height(), letters.toString());
      }
    }
  }

  @Test
  void theGapIsToScaleForAllSpansOfOneList() {
    double scale = gap(SpanDrawing.draw(new Span.Mean(3, NO_RULE), 12, 200)) / 3;
    for (double length : new double[] {1, 5.5, 9, 12}) {
      double gap = gap(SpanDrawing.draw(new Span.Mean(length, NO_RULE), 12, 200));
      assertEquals(length * scale, gap, 0.03);
    }
  }

  @Test
  void theRuleBelowIsAtTheSameScaleFromTheSameCut() {
    Span span = new Span.Mean(6, Optional.of(SpanRule.standardDeviation(6, 2)));
    Picture picture = SpanDrawing.draw(span, 12, 200);
    Element rule = DrawnSvg.of(picture).all("line").get(0);
    double scale = gap(picture) / 6;
    assertEquals(4 * scale, number(rule, "x2") - number(rule, "x1"), 0.03);
    assertEquals(cuts(picture)[0] + 4 * scale, number(rule, "x1"), 0.03);
  }

  @Test
  void everyPatientHasATickAndSpreadRulesLookDifferent() {
    Span patients = new Span.PerPatient(List.of(3.0, 4.0, 5.0, 11.5), 4.5);
    // One line from shortest to longest, and one for each patient.
    assertEquals(5, DrawnSvg.of(SpanDrawing.draw(patients, 12, 150)).all("line").size());
    String range = ruled(SpanRule.range(4, 8));
    String deviation = ruled(SpanRule.standardDeviation(6, 2));
    String quartiles = ruled(SpanRule.quartiles(4, 8));
    assertFalse(range.equals(deviation) || deviation.equals(quartiles) || range.equals(quartiles));
  }

  private static String ruled(SpanRule rule) {
    return SpanDrawing.draw(new Span.Mean(6, Optional.of(rule)), 12, 150)
        .svg()
        .replaceFirst("<title>.*</title>", "");
  }

  @Test
  void wordsSayHowItWasReported() {
    assertEquals(
        List.of(
            "mean 5.1 cm, 3 to 8 cm",
            "mean 6 cm, 3.9 to 8.1 cm within one SD",
            "median 6.8 cm, middle half 5 to 9.5 cm",
            "median 0.5 cm",
            "each patient, 3 to 11.5 cm",
            "only the range, 2.5 to 12.5 cm",
            "over 4 cm, no average",
            "mean 26 cm",
            "not reported"),
        kinds().map(Span::words).toList());
  }

  @Test
  void aPatientAloneOrPatientsAllAlikeHaveOneLengthAndNoRange() {
    assertEquals("1 patient, 15.9 cm", new Span.PerPatient(List.of(15.9), 15.9).words());
    assertEquals("each patient, 4 cm", new Span.PerPatient(List.of(4.0, 4.0), 4).words());
  }

  @Test
  void impossibleLengthsAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Span.Mean(-1, NO_RULE));
    assertThrows(IllegalArgumentException.class, () -> new Span.Threshold(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> new Span.RangeOnly(9, 3));
    assertThrows(IllegalArgumentException.class, () -> new Span.PerPatient(List.of(), 3));
    assertThrows(
        IllegalArgumentException.class, () -> SpanDrawing.draw(new Span.NotReported(), 12, 40));
  }

  @Test
  void aDrawingCanStandInAPage() {
    Picture picture = SpanDrawing.draw(new Span.Threshold(4), 12, 150);
    assertTrue(picture.inline().startsWith("<svg"));
    assertEquals("150", DrawnSvg.of(picture.inline()).root().getAttribute("width"));
  }

  private static double gap(Picture picture) {
    double[] cuts = cuts(picture);
    return cuts[1] - cuts[0];
  }

  /** The x of both cut faces: each bone end's path reaches its cut by its first straight line. */
  private static double[] cuts(Picture picture) {
    Pattern firstLine = Pattern.compile("L([0-9.]+) ");
    double[] cuts = new double[2];
    List<Element> bones = DrawnSvg.of(picture).all("path");
    for (int i = 0; i < 2; i++) {
      Matcher matcher = firstLine.matcher(bones.get(i).getAttribute("d"));
      assertTrue(matcher.find());
      cuts[i] = Double.parseDouble(matcher.group(1));
    }
    return cuts;
  }
}
