package gapwise.figure.forest;

import static gapwise.figure.drawing.DrawnSvg.number;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Contrast;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Svg;
import gapwise.figure.span.Span;
import gapwise.figure.value.Estimate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** All figures here are invented, see {@link InventedForests}. */
class ForestDrawingTest {
  private static final Map<String, Forest> FIGURES =
      Map.of(
          "two methods", InventedForests.twoMethods(),
          "50 series", InventedForests.many(50, 7),
          "300 series", InventedForests.many(300, 7),
          "ratios", InventedForests.ratios(),
          "one series and an empty block", InventedForests.oneSeriesAndAnEmptyBlock(),
          "means without a spread", InventedForests.meansWithoutASpread(),
          "hostile words", InventedForests.hostileWords());

  private static final Map<String, List<Picture>> DRAWN = new HashMap<>();

  /** Each figure is drawn once for all tests that only look at it. */
  private static List<Picture> drawn(String name, Medium medium) {
    return DRAWN.computeIfAbsent(name + medium, key -> FIGURES.get(name).draw(medium));
  }

  static Stream<Arguments> everyFigureInEveryMedium() {
    return FIGURES.keySet().stream()
        .sorted()
        .flatMap(name -> Stream.of(Medium.values()).map(medium -> Arguments.of(name, medium)));
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void everySeriesStandsOnceInAWellFormedDrawingThatNamesItself(String name, Medium medium) {
    Forest forest = FIGURES.get(name);
    int series = 0;
    int leftOut = 0;
    int pooled = 0;
    for (Picture picture : drawn(name, medium)) {
      DrawnSvg drawn = DrawnSvg.of(picture);
      series += drawn.parts("series").size();
      leftOut += drawn.parts("left-out").size();
      pooled += drawn.parts("pooled").size();
      Element title = DrawnSvg.children(drawn.root(), "title").get(0);
      assertTrue(title.getTextContent().startsWith(visible(forest.heading().title())));
      Element description = DrawnSvg.children(drawn.root(), "desc").get(0);
      assertTrue(description.getTextContent().contains(forest.axis().heading()));
      assertTrue(List.of("img", "group").contains(drawn.root().getAttribute("role")));
      assertEquals(
          "0 0 " + Svg.n(picture.width()) + " " + Svg.n(picture.height()),
          drawn.root().getAttribute("viewBox"));
    }
    assertEquals(forest.rows().size(), series);
    assertEquals(forest.leftOut().size(), leftOut);
    assertEquals(forest.pooled().size(), pooled);
  }

  private static String visible(String text) {
    return text.replace("\u0001", "\ufffd");
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void noTextOverlapsAnotherOrLeavesTheDrawing(String name, Medium medium) {
    for (Picture picture : drawn(name, medium)) {
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
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void everyPageSaysThatDataAreInventedAndPrintsCautionsAndProvenance(String name, Medium medium) {
    Forest forest = FIGURES.get(name);
    for (Picture picture : drawn(name, medium)) {
      String words =
          String.join(
              " ", DrawnSvg.of(picture).letters().stream().map(DrawnSvg.Letters::text).toList());
      assertTrue(words.contains(FigureProvenance.INVENTED), words);
      forest.cautions().forEach(caution -> assertTrue(words.contains(caution), words));
      assertTrue(words.contains(forest.provenance().phrases().get(0)), words);
    }
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void textHasContrastAndSizeEnoughToBeRead(String name, Medium medium) {
    // In print 96 units are an inch and 7 pt the least size (common practice, no source).
    double least =
        switch (medium) {
          case COLUMN, TWO_COLUMNS, A4 -> 7 * 96 / 72.0;
          case SLIDE -> 14;
          case PHONE -> 12;
          case PAGE -> 11;
        };
    for (Picture picture : drawn(name, medium)) {
      for (DrawnSvg.Letters letters : DrawnSvg.of(picture).letters()) {
        assertTrue(letters.size() >= least, letters.toString());
        assertTrue(Contrast.between(letters.fill(), Ink.GROUND) >= 4.5, letters.toString());
        assertTrue(Contrast.between(letters.fill(), Ink.BONE) >= 4.5, letters.toString());
      }
    }
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("everyFigureInEveryMedium")
  void theSameFigureGivesTheSameBytes(String name, Medium medium) {
    Forest forest = FIGURES.get(name);
    assertEquals(drawn(name, medium), forest.draw(medium));
  }

  @Test
  void marksThatCarryMeaningStandOutFromTheGround() {
    // WCAG 2.1, criterion 1.4.11: at least 3:1 for parts of a graphic.
    for (String mark : List.of(Ink.BONE_GREY, Ink.BONE_EDGE, Ink.ACCENT, Ink.INK, Ink.SOFT)) {
      assertTrue(Contrast.between(mark, Ink.GROUND) >= 3, mark);
    }
  }

  @Test
  void anEstimateStandsWhereTheAxisSaysAndItsBarEndsAtItsLimits() {
    Forest forest = InventedForests.twoMethods();
    DrawnSvg drawn = DrawnSvg.of(forest.draw(Medium.PAGE).get(0));
    Map<Double, Double> ticks = tickPositions(drawn);
    double at50 = ticks.get(50.0);
    double perUnit = (ticks.get(100.0) - at50) / 50;
    List<Element> series = drawn.parts("series");
    for (int i = 0; i < series.size(); i++) {
      Estimate estimate = forest.rows().get(i).estimate();
      double x = number(DrawnSvg.children(series.get(i), "ellipse").get(0), "cx");
      assertEquals(at50 + (estimate.value() * 100 - 50) * perUnit, x, 0.02);
      Element bar = DrawnSvg.children(series.get(i), "rect").get(0);
      double right = number(bar, "x") + number(bar, "width");
      assertEquals(at50 + (estimate.upper() * 100 - 50) * perUnit, right, 0.03);
    }
  }

  @Test
  void onALogAxisEqualRatiosTakeEqualRoom() {
    Forest forest = InventedForests.ratios();
    DrawnSvg drawn = DrawnSvg.of(forest.draw(Medium.PAGE).get(0));
    Map<Double, Double> ticks = tickPositions(drawn);
    double decade = ticks.get(10.0) - ticks.get(1.0);
    assertEquals(decade, ticks.get(1.0) - ticks.get(0.1), 0.02);
    List<Element> series = drawn.parts("series");
    for (int i = 0; i < series.size(); i++) {
      double value = forest.rows().get(i).estimate().value();
      double x = number(DrawnSvg.children(series.get(i), "ellipse").get(0), "cx");
      assertEquals(ticks.get(1.0) + Math.log10(value) * decade, x, 0.02);
    }
  }

  private static Map<Double, Double> tickPositions(DrawnSvg drawn) {
    Map<Double, Double> positions = new HashMap<>();
    for (Element text : DrawnSvg.children(drawn.parts("axis").get(0), "text")) {
      if (text.getTextContent().matches("[0-9.]+")) {
        positions.put(Double.valueOf(text.getTextContent()), number(text, "x"));
      }
    }
    return positions;
  }

  @Test
  void theAreaOfALensIsProportionalToItsWeight() {
    Forest forest = InventedForests.twoMethods();
    DrawnSvg drawn = DrawnSvg.of(forest.draw(Medium.PAGE).get(0));
    List<Element> series = drawn.parts("series");
    double perPercent = areaPerPercent(series.get(0), forest.rows().get(0));
    for (int i = 1; i < series.size(); i++) {
      // Radii are written with two decimals: half a hundredth on a radius near 2 is half a percent.
      assertEquals(1, areaPerPercent(series.get(i), forest.rows().get(i)) / perPercent, 0.01);
    }
  }

  private static double areaPerPercent(Element series, ForestRow row) {
    Element lens = DrawnSvg.children(series, "ellipse").get(0);
    return number(lens, "rx") * number(lens, "ry") / row.weightPercent().getAsDouble();
  }

  @Test
  void anIntervalThatLeavesTheAxisGetsAnArrowHeadAndOthersNone() {
    DrawnSvg drawn = DrawnSvg.of(InventedForests.twoMethods().draw(Medium.PAGE).get(0));
    List<Integer> arrows =
        drawn.parts("series").stream()
            .map(
                g ->
                    (int)
                        DrawnSvg.children(g, "path").stream()
                            .filter(p -> p.getAttribute("fill").equals(Ink.BONE_GREY))
                            .count())
            .toList();
    assertEquals(List.of(0, 0, 0, 0, 0, 0, 0, 1), arrows);
  }

  @Test
  void aPooledValueIsARhombusWithItsHatchedPredictionBelow() {
    DrawnSvg drawn = DrawnSvg.of(InventedForests.twoMethods().draw(Medium.PAGE).get(0));
    for (Element pooled : drawn.parts("pooled")) {
      List<Element> paths = DrawnSvg.children(pooled, "path");
      assertEquals(Ink.ACCENT, paths.get(0).getAttribute("fill"));
      assertEquals(Ink.ACCENT, paths.get(1).getAttribute("stroke"));
      assertTrue(paths.get(1).getAttribute("d").split("M", -1).length > 10, "strokes of hatching");
      Element band = DrawnSvg.children(pooled, "rect").get(0);
      assertEquals("none", band.getAttribute("fill"));
    }
  }

  @Test
  void aShortenedNameKeepsItsFullWordsInTheTitleOfItsRow() {
    Forest forest = InventedForests.many(300, 7);
    DrawnSvg drawn = DrawnSvg.of(forest.draw(Medium.PAGE).get(0));
    List<Element> series = drawn.parts("series");
    boolean shortened = false;
    for (int i = 0; i < series.size(); i++) {
      String full = DrawnSvg.children(series.get(i), "title").get(0).getTextContent();
      assertTrue(full.contains(forest.rows().get(i).study()), full);
      shortened |= series.get(i).getTextContent().contains("\u2026");
    }
    assertTrue(shortened, "the example must hold names that are too long");
  }

  @Test
  void linksAreKeptAndADrawingWithLinksIsNoClosedImage() {
    DrawnSvg linked = DrawnSvg.of(InventedForests.twoMethods().draw(Medium.PAGE).get(0));
    assertEquals("group", linked.root().getAttribute("role"));
    assertEquals(4, linked.all("a").size());
    DrawnSvg plain = DrawnSvg.of(InventedForests.ratios().draw(Medium.PAGE).get(0));
    assertEquals("img", plain.root().getAttribute("role"));
  }

  @Test
  void metadataNamesModelVersionAndDate() {
    Forest forest = InventedForests.twoMethods();
    DrawnSvg drawn = DrawnSvg.of(forest.draw(Medium.PAGE).get(0));
    assertEquals("2026-01-31", drawn.all("date").get(0).getTextContent());
    assertTrue(drawn.all("source").get(0).getTextContent().contains("change 412"));
    String caption = drawn.all("description").get(0).getTextContent();
    assertTrue(caption.contains("Hartung-Knapp") && caption.contains("8 series, 187 limbs"));
  }

  @Test
  void longFiguresFillSeveralPagesAndSayWhichBlockGoesOn() {
    List<Picture> pages = InventedForests.many(300, 7).draw(Medium.A4);
    assertTrue(pages.size() > 3, "pages: " + pages.size());
    String second = DrawnSvg.of(pages.get(1)).root().getTextContent();
    assertTrue(second.contains(", continued"), second);
    assertTrue(second.contains("Page 2 of " + pages.size()), second);
    for (Picture page : pages) {
      assertEquals(Math.sqrt(2), page.height() / page.width(), 0.001); // ISO 216
    }
  }

  @ParameterizedTest
  @EnumSource(
      value = Medium.class,
      names = {"PAGE", "PHONE"})
  void thousandsOfSeriesAreCutIntoSheetsOfAScreenThatTellOfTheOthers(Medium medium) {
    Forest forest = InventedForests.many(2000, 7);
    List<Picture> sheets = forest.draw(medium);
    assertTrue(sheets.size() > 3, "sheets: " + sheets.size());
    int series = 0;
    for (int i = 0; i < sheets.size(); i++) {
      assertTrue(sheets.get(i).height() <= 40_000, "height " + sheets.get(i).height());
      DrawnSvg drawn = DrawnSvg.of(sheets.get(i));
      series += drawn.parts("series").size();
      String told = "Page " + (i + 1) + " of " + sheets.size();
      String text = drawn.root().getTextContent().replaceAll("\\s+", " ");
      assertTrue(text.contains(told + "; the table (CSV) holds all 2000 series"), text);
    }
    assertEquals(2000, series);
    assertEquals(sheets.size(), forest.sheets(medium));
  }

  @Test
  void aNameOfAHundredThousandLettersIsShortInTheDrawingAndWholeInTheTable() {
    Forest few = InventedForests.twoMethods();
    String name = "Invented " + "w".repeat(100_000) + " 2011";
    ForestRow row =
        new ForestRow(
            name,
            "x".repeat(100_000),
            new Span.NotReported(),
            "",
            Estimate.of(.5, .2, .8),
            OptionalDouble.empty(),
            ForestRow.OpenEnd.NONE,
            Optional.empty());
    Forest forest =
        new Forest(
            few.heading(),
            few.measure(),
            few.axis(),
            List.of(new Block("", List.of(row), new ForestSummary.NotPooled("Not pooled", "One"))),
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            few.provenance());
    for (Medium medium : Medium.values()) {
      String svg = forest.draw(medium).get(0).svg();
      assertTrue(svg.length() < 60_000, medium + ": " + svg.length());
      assertTrue(svg.contains("\u2026 2011"), medium + " keeps the year");
    }
    assertTrue(forest.csv().contains(name));
  }

  @Test
  void aFigureOfRealDataDoesNotSayThatItIsInvented() {
    Forest invented = InventedForests.ratios();
    FigureProvenance from = invented.provenance();
    FigureProvenance real =
        new FigureProvenance(
            from.series(),
            from.participants(),
            from.model(),
            from.dataVersion(),
            from.dataDate(),
            false);
    Forest forest = InventedForests.from(invented, real);
    String svg = forest.draw(Medium.PAGE).get(0).svg();
    assertFalse(svg.contains(FigureProvenance.INVENTED));
    assertNotEquals(svg, invented.draw(Medium.PAGE).get(0).svg());
  }

  @Test
  void manyWordsOfCountsLeaveThePlotItsRoom() {
    Forest forest = InventedForests.meansWithoutASpread();
    ForestColumns columns = ForestColumns.of(forest, Medium.PAGE.style(5));
    double plot = columns.plotRight() - columns.plotLeft();
    assertTrue(plot > 0.2 * Medium.PAGE.style(5).sheet().width(), "plot " + plot);
  }

  @Test
  void aValueWithoutASpreadIsSaidToHaveNone() {
    Forest forest = InventedForests.meansWithoutASpread();
    String svg = forest.draw(Medium.PAGE).get(0).svg();
    assertTrue(svg.contains("9.2 (no SD)"));
    String csv = ForestTable.of(forest).csv();
    String first = csv.lines().skip(1).findFirst().orElseThrow();
    assertTrue(first.contains(",9.2,,,"), first);
    assertTrue(first.contains("Sedge A. Invented series 0. 2020"), first);
  }
}
