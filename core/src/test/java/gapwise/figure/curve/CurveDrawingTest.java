package gapwise.figure.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.drawing.Contrast;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Curves as a viewer sees them. Invented series. */
class CurveDrawingTest {
  @ParameterizedTest
  @EnumSource(Medium.class)
  void lettersStayInsideAndApartOnEveryMedium(Medium medium) {
    Picture picture = InventedCurves.figure(true).draw(medium).get(0);
    List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
    for (int i = 0; i < letters.size(); i++) {
      DrawnSvg.Letters one = letters.get(i);
      assertTrue(one.left() >= 0 && one.right() <= picture.width(), one::toString);
      assertTrue(one.top() >= 0 && one.bottom() <= picture.height(), one::toString);
      for (DrawnSvg.Letters other : letters.subList(i + 1, letters.size())) {
        assertFalse(one.overlaps(other), () -> one + " over " + other);
      }
    }
  }

  @Test
  void linesDifferWithoutColour() {
    CurveFigure figure = InventedCurves.figure(true);
    Set<String> looks =
        figure.curves().stream()
            .map(curve -> CurveStroke.of(figure, curve))
            .map(stroke -> stroke.width() + " " + stroke.dashes())
            .collect(Collectors.toSet());
    assertEquals(figure.curves().size(), looks.size());
    for (Curve curve : figure.curves()) {
      assertTrue(Contrast.between(CurveStroke.of(figure, curve).colour(), Ink.GROUND) >= 3);
    }
  }

  @Test
  void aDrawingNamesItselfAndEveryCurve() {
    DrawnSvg drawn = DrawnSvg.of(InventedCurves.figure(true).draw(Medium.PAGE).get(0));
    assertEquals("img", drawn.root().getAttribute("role"));
    assertEquals(InventedCurves.figure(true).title(), drawn.all("title").get(0).getTextContent());
    assertTrue(drawn.all("desc").get(0).getTextContent().contains("All series: 87 of 100 at 26"));
    assertEquals(4, drawn.parts("curve").size());
  }

  @Test
  void aRisingFigureIsTheOtherTurnedOver() throws IOException {
    List<CSVRecord> up = rows(InventedCurves.figure(true));
    List<CSVRecord> down = rows(InventedCurves.figure(false));
    assertEquals(4 * 13, up.size());
    for (int i = 0; i < up.size(); i++) {
      assertEquals(up.get(i).get("time"), down.get(i).get("time"));
      assertEquals(1, share(up.get(i)) + share(down.get(i)), 1e-12);
    }
    assertEquals(0, share(up.get(0)));
  }

  private static List<CSVRecord> rows(CurveFigure figure) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(figure.csv(), format)) {
      return parser.getRecords();
    }
  }

  private static double share(CSVRecord row) {
    return Double.parseDouble(row.get("share"));
  }

  @Test
  void patientsStillFollowedStandUnderTheAxis() {
    DrawnSvg drawn = DrawnSvg.of(InventedCurves.figure(true).draw(Medium.PAGE).get(0));
    List<String> words = drawn.letters().stream().map(DrawnSvg.Letters::text).toList();
    for (Curve curve : InventedCurves.figure(true).curves()) {
      assertTrue(
          words.contains(Integer.toString(curve.atRisk().get(0).patients())), words::toString);
    }
  }

  @Test
  void aCurveThatGoesBackIsRefused() {
    Curve.Step low = new Curve.Step(2, 0.5, Optional.empty());
    Curve.Step high = new Curve.Step(3, 0.6, Optional.empty());
    List<Curve.Step> rises = List.of(low, high);
    assertThrows(
        IllegalArgumentException.class,
        () -> new Curve("A", false, rises, 5, List.of(), List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Curve("A", false, List.of(low), 1, List.of(), List.of()));
  }
}
