package gapwise.figure.funnel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.FileKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** All figures here are invented, see {@link InventedFunnels}. */
class FunnelDrawingTest {
  private static final Map<String, Funnel> FIGURES =
      Map.of(
          "ratios", InventedFunnels.ratios(),
          "proportions", InventedFunnels.proportions(),
          "one series", InventedFunnels.alone(),
          "no series", InventedFunnels.empty());

  static Stream<Arguments> everyFigureInEveryMedium() {
    return FIGURES.keySet().stream()
        .sorted()
        .flatMap(name -> Stream.of(Medium.values()).map(medium -> Arguments.of(name, medium)));
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void everySeriesStandsOnceInsideTheField(String name, Medium medium) {
    Funnel funnel = FIGURES.get(name);
    Picture picture = funnel.draw(medium).get(0);
    DrawnSvg drawn = DrawnSvg.of(picture);
    assertEquals(funnel.points().size(), drawn.parts("series").size());
    assertEquals(funnel.imagined().size(), drawn.parts("imagined").size());
    for (Element circle : drawn.all("circle")) {
      double x = DrawnSvg.number(circle, "cx");
      double y = DrawnSvg.number(circle, "cy");
      assertTrue(x > 0 && x < picture.width() && y > 0 && y < picture.height());
    }
    assertEquals("img", drawn.root().getAttribute("role"));
    assertEquals(funnel.title(), DrawnSvg.children(drawn.root(), "title").get(0).getTextContent());
    String words = DrawnSvg.children(drawn.root(), "desc").get(0).getTextContent();
    assertTrue(
        words.contains(FigureProvenance.INVENTED) && words.contains(funnel.axis().heading()));
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void noTextOverlapsAnotherOrLeavesTheDrawing(String name, Medium medium) {
    Picture picture = FIGURES.get(name).draw(medium).get(0);
    List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < letters.size(); i++) {
      DrawnSvg.Letters one = letters.get(i);
      if (one.left() < 0
          || one.top() < 0
          || one.right() > picture.width()
          || one.bottom() > picture.height()) {
        wrong.add("outside: " + one);
      }
      for (int j = i + 1; j < letters.size(); j++) {
        if (one.overlaps(letters.get(j))) {
          wrong.add(one + " overlaps " + letters.get(j));
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void everyDrawingSaysThatDataAreInventedAndPrintsCautions(String name, Medium medium) {
    Funnel funnel = FIGURES.get(name);
    Picture picture = funnel.draw(medium).get(0);
    String words =
        String.join(
            " ", DrawnSvg.of(picture).letters().stream().map(DrawnSvg.Letters::text).toList());
    assertTrue(words.contains(FigureProvenance.INVENTED), words);
    funnel.cautions().forEach(caution -> assertTrue(words.contains(caution), words));
    assertEquals(picture, funnel.draw(medium).get(0), "the same bytes");
  }

  @Test
  void aSeriesStandsAtItsEffectAndItsStandardError() {
    Funnel funnel = InventedFunnels.ratios();
    DrawnSvg drawn = DrawnSvg.of(funnel.draw(Medium.PAGE).get(0));
    List<Element> series = drawn.parts("series");
    double[] x = new double[16];
    double[] y = new double[16];
    for (int i = 0; i < 16; i++) {
      Element circle = DrawnSvg.children(series.get(i), "circle").get(0);
      x[i] = DrawnSvg.number(circle, "cx");
      y[i] = DrawnSvg.number(circle, "cy");
    }
    // Equal steps on the analysis scale take equal room; precise series stand higher.
    double perEffect = (x[0] - x[15]) / (-0.32 + 1.31);
    double perError = (y[15] - y[0]) / (0.74 - 0.11);
    for (int i = 0; i < 16; i++) {
      Funnel.Point point = funnel.points().get(i);
      assertEquals(x[15] + perEffect * (point.effect() + 1.31), x[i], 0.03);
      assertEquals(y[0] + perError * (point.standardError() - 0.11), y[i], 0.03);
    }
    assertTrue(perEffect > 0 && perError > 0);
  }

  @Test
  void contoursDifferInShadeAndInTheirLines() {
    DrawnSvg drawn = DrawnSvg.of(InventedFunnels.ratios().draw(Medium.PAGE).get(0));
    List<Element> cones = DrawnSvg.children(drawn.parts("field").get(0), "path");
    List<String> fills =
        cones.stream()
            .map(cone -> cone.getAttribute("fill") + cone.getAttribute("stroke-dasharray"))
            .filter(fill -> !fill.startsWith("none"))
            .toList();
    assertEquals(3, fills.stream().distinct().count(), fills.toString());
  }

  @Test
  void theTableListsSeriesThenImaginedOnesWithAllDigits() {
    List<String> lines = FunnelTable.of(InventedFunnels.ratios()).csv().lines().toList();
    assertEquals(1 + 16 + 3, lines.size());
    assertTrue(lines.get(1).startsWith("series,Invented series 1,-0.32,0.11,0.73,-0.46,"));
    assertTrue(lines.get(17).startsWith("imagined,"), lines.get(17));
  }

  @Test
  void aPictureCanBePaintedAndIsTheSameEachTime() {
    Funnel funnel = InventedFunnels.ratios();
    FigureFile.Wish phone = new FigureFile.Wish(Medium.PHONE, 1, Optional.empty());
    assertArrayEquals(
        FigureFile.of(funnel, FileKind.PNG, phone), FigureFile.of(funnel, FileKind.PNG, phone));
  }

  @Test
  void whatCannotBeASeriesIsRefused() {
    assertThrows(IllegalArgumentException.class, () -> new Funnel.Point("x", Double.NaN, 1));
    assertThrows(IllegalArgumentException.class, () -> new Funnel.Point("x", 0, -1));
    assertThrows(IllegalArgumentException.class, () -> new Funnel.Contour(1, 2));
  }
}
