package gapwise.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;

/** What must hold for each plot wherever it is taken to; a new plot joins {@link EveryFigure}. */
class EveryFigureInEveryMediumTest {
  /** Where a path begins to be drawn, and where it is drawn to along a level. */
  private static final Pattern ACROSS = Pattern.compile("[MH]([0-9.]+)");

  private static final Map<String, Figure> FIGURES = EveryFigure.byName();

  static Stream<Arguments> each() {
    return FIGURES.keySet().stream()
        .flatMap(name -> Stream.of(Medium.values()).map(medium -> Arguments.of(name, medium)));
  }

  static Stream<String> names() {
    return FIGURES.keySet().stream();
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("each")
  void noWordsOverlapOthersOrLeaveTheDrawing(String name, Medium medium) {
    for (Picture picture : FIGURES.get(name).draw(medium)) {
      List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
      for (int i = 0; i < letters.size(); i++) {
        DrawnSvg.Letters one = letters.get(i);
        assertTrue(one.left() >= 0 && one.right() <= picture.width(), one::toString);
        assertTrue(one.top() >= 0 && one.bottom() <= picture.height(), one::toString);
        for (DrawnSvg.Letters other : letters.subList(0, i)) {
          assertFalse(one.overlaps(other), () -> one + " over " + other);
        }
      }
    }
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("each")
  void printKeepsLettersAtSevenPointsAndLinesAtHalfAPoint(String name, Medium medium) {
    for (Picture picture : FIGURES.get(name).draw(medium)) {
      // Points of print: 72 to the inch, of which a drawing has 96 units, at its own width.
      double points = medium.printed() ? 72 / 96.0 : 1;
      for (DrawnSvg.Letters letters : DrawnSvg.of(picture).letters()) {
        assertTrue(letters.size() * points >= 7, letters::toString);
      }
      for (String shape : List.of("line", "path", "circle", "ellipse", "rect")) {
        for (Element element : DrawnSvg.of(picture).all(shape)) {
          if (element.hasAttribute("stroke-width")) {
            double width = DrawnSvg.number(element, "stroke-width");
            assertTrue(width * points >= 0.5, shape + " of width " + width);
          }
        }
      }
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void aSlideIsSixteenToNineAndLettersOfTheResultFillEnoughOfItsHeight(String name) {
    for (Picture picture : FIGURES.get(name).draw(Medium.SLIDE)) {
      assertEquals(16.0 / 9, picture.width() / picture.height(), 1e-9);
      // Common practice, no source: the largest words at least a thirty-sixth of the height, the
      // smallest, cautions and source, at least a seventieth.
      List<DrawnSvg.Letters> letters = DrawnSvg.of(picture).letters();
      double largest = letters.stream().mapToDouble(DrawnSvg.Letters::size).max().orElse(0);
      double smallest = letters.stream().mapToDouble(DrawnSvg.Letters::size).min().orElse(0);
      assertTrue(largest >= picture.height() / 36, "" + largest);
      assertTrue(smallest >= picture.height() / 70, smallest + " on " + picture.height());
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void thePlotHasHalfOfASlideAndAThirdOfAColumn(String name) {
    // A network and a flow have no axis, and bars of ranks stand on none; they take what the words
    // beside them
    // leave.
    if (!Set.of("network", "ranks", "flow").contains(name)) {
      Picture slide = FIGURES.get(name).draw(Medium.SLIDE).get(0);
      double wide = plotWidth(slide) / slide.width();
      assertTrue(wide >= 0.5 - 1e-3, () -> "of a slide " + wide);
      for (Picture column : FIGURES.get(name).draw(Medium.COLUMN)) {
        double narrow = plotWidth(column) / column.width();
        assertTrue(narrow >= 1.0 / 3, () -> "of a column " + narrow);
      }
    }
  }

  /** From the first to the last line of the grid; without one, along the axis. */
  private static double plotWidth(Picture picture) {
    DrawnSvg drawn = DrawnSvg.of(picture);
    double grid = extent(drawn, Ink.GRID);
    return grid > 0 ? grid : extent(drawn, Ink.SOFT);
  }

  private static double extent(DrawnSvg drawn, String colour) {
    List<Double> across = new ArrayList<>();
    for (Element path : drawn.all("path")) {
      if (path.getAttribute("stroke").equals(colour)) {
        ACROSS
            .matcher(path.getAttribute("d"))
            .results()
            .forEach(found -> across.add(Double.parseDouble(found.group(1))));
      }
    }
    for (Element line : drawn.all("line")) {
      if (line.getAttribute("stroke").equals(colour)) {
        across.add(DrawnSvg.number(line, "x1"));
        across.add(DrawnSvg.number(line, "x2"));
      }
    }
    double left = across.stream().mapToDouble(x -> x).min().orElse(0);
    return across.stream().mapToDouble(x -> x).max().orElse(0) - left;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void widthsOnPaperAreThoseOfColumns(String name) {
    for (Map.Entry<Medium, Double> width :
        Map.of(Medium.COLUMN, 85.0, Medium.TWO_COLUMNS, 175.0, Medium.A4, 210.0).entrySet()) {
      for (Picture picture : FIGURES.get(name).draw(width.getKey())) {
        String stated = DrawnSvg.of(picture).root().getAttribute("width");
        assertTrue(stated.endsWith("mm"), stated);
        assertEquals(width.getValue(), Double.parseDouble(stated.replace("mm", "")), 0.05);
      }
    }
  }

  @ParameterizedTest(name = "{0}, {1}")
  @MethodSource("each")
  void captionAndStudiesStandInTheMetadataAndTheSourceLineOnTheDrawing(String name, Medium medium) {
    Figure figure = FIGURES.get(name);
    for (Picture picture : figure.draw(medium)) {
      DrawnSvg drawn = DrawnSvg.of(picture);
      assertEquals(figure.caption(), drawn.all("description").get(0).getTextContent());
      List<String> sources = drawn.all("source").stream().map(Element::getTextContent).toList();
      for (Reference reference : EveryFigure.REFERENCES) {
        assertTrue(sources.contains(reference.line()), sources::toString);
      }
      String words = words(drawn);
      assertTrue(words.contains(figure.source().get(0)), words);
      figure.cautions().forEach(caution -> assertTrue(words.contains(caution), words));
      assertTrue(words.contains(FigureProvenance.INVENTED), words);
    }
    assertEquals(figure.sheets(medium), figure.draw(medium).size());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void withinAPageItHoldsItsMarksAndNothingThatThePageSays(String name) {
    Figure figure = FIGURES.get(name);
    for (Medium medium : List.of(Medium.PAGE, Medium.PHONE)) {
      Picture picture = figure.draw(Setting.withinPage(medium)).get(0);
      DrawnSvg within = DrawnSvg.of(picture);
      String words = words(within);
      String alone = words(DrawnSvg.of(figure.draw(medium).get(0)));
      List<String> saidByThePage = new ArrayList<>(figure.cautions());
      saidByThePage.addAll(
          List.of(
              figure.title(), String.join(" \u00b7 ", figure.source()), FigureProvenance.INVENTED));
      for (String said : saidByThePage) {
        assertFalse(words.contains(said), () -> said + " in " + words);
        assertTrue(alone.contains(said), () -> said + " not in " + alone);
      }
      assertEquals(List.of(), within.all("metadata"));
      assertEquals(figure.title(), within.all("title").get(0).getTextContent());
      assertEquals(figure.description(), within.all("desc").get(0).getTextContent());
      assertEquals(marks(DrawnSvg.of(figure.draw(medium).get(0))), marks(within), "the same marks");
      assertTrue(picture.height() < figure.draw(medium).get(0).height());
    }
  }

  /** What each drawn part is, in order, and how many words stand in it. */
  private static List<String> marks(DrawnSvg drawn) {
    return drawn.all("g").stream()
        .map(part -> part.getAttribute("data-part") + part.getElementsByTagName("text").getLength())
        .toList();
  }

  private static String words(DrawnSvg drawn) {
    return String.join(" ", drawn.letters().stream().map(DrawnSvg.Letters::text).toList());
  }

  @Test
  void onlyScreensHaveAPageRoundADrawing() {
    for (Medium medium : List.of(Medium.SLIDE, Medium.COLUMN, Medium.TWO_COLUMNS, Medium.A4)) {
      assertThrows(IllegalArgumentException.class, () -> Setting.withinPage(medium));
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("names")
  void captionAndNumbersSayHowManyStudiesAndPeople(String name) {
    Figure figure = FIGURES.get(name);
    FigureProvenance from = figure.provenance();
    assertTrue(figure.caption().contains(from.series().groups() + " "), figure.caption());
    assertTrue(figure.caption().contains(from.participants()), figure.caption());
    List<String> lines = figure.csv().lines().toList();
    assertTrue(lines.get(0).contains("model") && lines.get(0).contains("data-date"));
    for (String line : lines.subList(1, lines.size())) {
      assertTrue(line.contains(from.participants()), line);
      assertTrue(line.contains(",yes,"), line);
    }
  }
}
