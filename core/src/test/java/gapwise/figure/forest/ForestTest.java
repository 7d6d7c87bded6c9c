package gapwise.figure.forest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.Axis;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Medium;
import gapwise.figure.span.Span;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Quantity;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ForestTest {
  private static ForestRow row(Estimate estimate, Optional<String> href) {
    return new ForestRow(
        "Invented series 1",
        "",
        new Span.NotReported(),
        "",
        estimate,
        OptionalDouble.empty(),
        ForestRow.OpenEnd.NONE,
        href);
  }

  private static Forest forest(Quantity measure, Estimate estimate) {
    Forest like = InventedForests.ratios();
    return new Forest(
        like.heading(),
        measure,
        new AxisWords("axis", "", "", List.of()),
        List.of(
            new Block(
                "",
                List.of(row(estimate, Optional.empty())),
                new ForestSummary.NotPooled("Not pooled", "One only"))),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        like.provenance());
  }

  @Test
  void numbersThatTheMeasureCannotTakeAreRefusedWithTheNameOfTheSeries() {
    Estimate percent = Estimate.of(87, 70, 96);
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> forest(Quantity.of100(), percent));
    assertTrue(refused.getMessage().contains("Invented series 1"), refused.getMessage());
    assertThrows(
        IllegalArgumentException.class, () -> forest(Quantity.ratio(), Estimate.of(-1, -2, 3)));
    assertThrows(IllegalArgumentException.class, () -> Estimate.of(Double.NaN, 0, 1));
    assertThrows(IllegalArgumentException.class, () -> Estimate.of(.5, .8, .2));
  }

  @Test
  void aRatioWhoseLowerLimitIsZeroLeavesTheLogAxis() {
    Forest forest = forest(Quantity.ratio(), Estimate.of(.4, 0, 2.5));
    DrawnSvg drawn = DrawnSvg.of(forest.draw(Medium.PAGE).get(0));
    long arrows =
        DrawnSvg.children(drawn.parts("series").get(0), "path").stream()
            .filter(path -> path.getAttribute("fill").equals(Ink.BONE_GREY))
            .count();
    assertEquals(1, arrows);
  }

  @Test
  void anEnormousIntervalDoesNotFlattenTheFigure() {
    Forest forest = forest(Quantity.ratio(), Estimate.of(.8, 1e-30, 1e30));
    Axis axis = Board.of(forest, Medium.PAGE.style(0)).axis();
    assertTrue(axis.ticks().lower() >= 0.01 && axis.ticks().upper() <= 100, axis.toString());
  }

  @Test
  void onlyAddressesOfPagesAreLinks() {
    Estimate estimate = Estimate.of(.5, .2, .8);
    for (String good : List.of("studies/3", "/studies?id=a:b", "https://example.org/x", "#a")) {
      assertEquals(good, row(estimate, Optional.of(good)).href().orElseThrow());
    }
    for (String bad : List.of("javascript:alert(1)", " JavaScript:x", "data:text/html,x", " ")) {
      assertThrows(IllegalArgumentException.class, () -> row(estimate, Optional.of(bad)), bad);
    }
  }

  @Test
  void theDescriptionTellsTheResultTheCautionsAndThatDataAreInvented() {
    Forest forest = InventedForests.twoMethods();
    String words = forest.description();
    assertTrue(words.contains("90 (83 to 95); a new centre 74 to 97"), words);
    assertTrue(words.contains(FigureProvenance.INVENTED), words);
    forest.cautions().forEach(caution -> assertTrue(words.contains(caution), words));
  }
}
