package gapwise.figure.forest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** How a forest plot fills sheets of fixed height: slides of a talk, pages. */
class ForestSlidesTest {
  private static final List<Forest> SEVERAL =
      List.of(
          InventedForests.twoMethods(),
          InventedForests.allUnited(12),
          InventedForests.many(9, 4),
          InventedForests.many(40, 1),
          InventedForests.many(40, 3));

  private static List<DrawnSvg> drawn(Forest forest, Medium medium) {
    List<Picture> pictures = forest.draw(medium);
    return pictures.stream().map(DrawnSvg::of).toList();
  }

  private static int parts(DrawnSvg page, String part) {
    return page.parts(part).size();
  }

  @ParameterizedTest
  @EnumSource(
      value = Medium.class,
      names = {"SLIDE", "A4", "COLUMN", "TWO_COLUMNS"})
  void noSheetHoldsNotesAlone(Medium medium) {
    for (Forest forest : SEVERAL) {
      for (DrawnSvg page : drawn(forest, medium)) {
        int rows = parts(page, "series") + parts(page, "pooled") + parts(page, "not-pooled");
        assertTrue(rows > 0, () -> medium + ": " + page.root().getTextContent());
      }
    }
  }

  @Test
  void whereSeriesDoNotFitThePooledValuesOfAllMethodsShareTheFirstSlide() {
    for (Forest forest : List.of(InventedForests.many(9, 4), InventedForests.many(40, 3))) {
      List<DrawnSvg> pages = drawn(forest, Medium.SLIDE);
      assertEquals(forest.pooled().size(), parts(pages.get(0), "pooled"));
      assertEquals(0, parts(pages.get(0), "series"));
      for (DrawnSvg page : pages.subList(1, pages.size())) {
        assertEquals(0, parts(page, "pooled"));
        assertTrue(parts(page, "series") > 0);
      }
    }
  }

  /** One series each is pooled with none, so that no mark of a pooled value is to be explained. */
  @Test
  void methodsOfWhichNoneIsPooledAreDrawnInEveryMedium() {
    Forest several = InventedForests.many(9, 4);
    List<Block> none =
        several.blocks().stream()
            .map(
                block ->
                    new Block(
                        block.name(),
                        block.rows(),
                        new ForestSummary.NotPooled("Not pooled", "Only one series.")))
            .toList();
    Forest forest =
        new Forest(
            several.heading(),
            several.measure(),
            several.axis(),
            none,
            Optional.empty(),
            List.of(),
            List.of(),
            several.cautions(),
            several.provenance());
    for (Medium medium : Medium.values()) {
      List<DrawnSvg> pages = drawn(forest, medium);
      assertTrue(pages.stream().mapToInt(page -> parts(page, "not-pooled")).sum() > 0);
    }
  }

  @Test
  void fourSeriesOfTwoMethodsShareOneSlideWithTheirPooledValues() {
    Forest forest = InventedForests.twoMethods();
    List<Block> two =
        forest.blocks().stream()
            .map(block -> new Block(block.name(), block.rows().subList(0, 2), block.summary()))
            .toList();
    Forest four =
        new Forest(
            forest.heading(),
            forest.measure(),
            forest.axis(),
            two,
            Optional.empty(),
            List.of(),
            List.of(),
            forest.cautions(),
            forest.provenance());
    List<DrawnSvg> pages = drawn(four, Medium.SLIDE);
    assertEquals(1, pages.size());
    assertEquals(4, parts(pages.get(0), "series"));
    assertEquals(2, parts(pages.get(0), "pooled"));
  }

  @Test
  void thePlotHasHalfOfTheWidthOfASlide() {
    for (Forest forest : SEVERAL) {
      for (int rows : new int[] {0, Integer.MAX_VALUE}) {
        double width = Medium.SLIDE.style(rows).sheet().width();
        ForestColumns columns = ForestColumns.of(forest, Medium.SLIDE.style(rows));
        assertTrue(columns.plotWidth() >= 0.5 * width - 1e-9, "series: " + columns);
        ForestColumns compared = ForestColumns.compared(forest, Medium.SLIDE.style(rows));
        assertTrue(compared.plotWidth() >= 0.5 * width - 1e-9, "compared: " + compared);
      }
    }
  }

  @Test
  void inOneColumnThePlotHasMoreThanHalfOfTheWidth() {
    for (Forest forest : SEVERAL) {
      ForestColumns columns = ForestColumns.of(forest, Medium.COLUMN.style(0));
      assertTrue(columns.plotWidth() > 0.5 * Medium.COLUMN.style(0).sheet().width());
      assertFalse(columns.bonesDrawn());
    }
  }
}
