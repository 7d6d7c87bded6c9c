package gapwise.figure.plane;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.figure.drawing.DrawnSvg;
import gapwise.figure.drawing.Medium;
import gapwise.figure.value.Limits;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PlaneTest {
  private static final Plane PLANE = InventedPlanes.plane(3, List.of());

  @Test
  void everyQuarterIsThereAndNamedAndMarksAreThinned() {
    Plane dominated = InventedPlanes.dominated();
    Limits effects = dominated.effects();
    Limits costs = dominated.costs();
    assertTrue(effects.lower() < 0 && effects.upper() > 0);
    assertTrue(costs.lower() < 0 && costs.upper() > 0);
    DrawnSvg drawn = DrawnSvg.of(PLANE.draw(Medium.PAGE).get(0));
    List<String> words = drawn.letters().stream().map(DrawnSvg.Letters::text).toList();
    for (String quarter :
        List.of(
            "Upper left: costs more, does less",
            "Upper right: costs more, does more",
            "Lower left: costs less, does less",
            "Lower right: costs less, does more",
            "cost beyond that of Amputation, EUR of 2024",
            "years healed beyond those with Amputation")) {
      assertTrue(words.contains(quarter), words::toString);
    }
    assertEquals(200, PLANE.clouds().get(0).shown().size());
    assertTrue(words.contains("Bone transport, 200 of 2,000 draws"), words::toString);
  }

  @Test
  void thinningKeepsTheFirstAndGoesEvenly() {
    List<Cloud.Spot> all = IntStream.range(0, 10).mapToObj(i -> new Cloud.Spot(i, -i)).toList();
    Cloud cloud = Cloud.thinned(PLANE.clouds().get(0).kind(), all.get(0), all, 5);
    assertEquals(
        List.of(0.0, 2.0, 4.0, 6.0, 8.0), cloud.shown().stream().map(Cloud.Spot::effect).toList());
    assertEquals(10, cloud.draws());
    assertEquals(all, Cloud.thinned(cloud.kind(), all.get(0), all, 50).shown());
  }

  @Test
  void whereAnotherMethodIsBestOnAverageIsTold() {
    Acceptability figure = InventedPlanes.acceptability(2, List.of());
    String told = figure.description();
    assertTrue(
        told.contains(
            "At the lowest amount Bone transport has the highest net benefit on average."),
        told);
    // The invented list changes at its place 18, which is 45,000.
    assertTrue(told.contains("From 45,000 on it is Induced membrane."), told);
    assertEquals(2 * 41 + 1, figure.csv().lines().count());
  }

  @Test
  void whatCannotBeDrawnIsRefused() {
    Acceptability figure = InventedPlanes.acceptability(2, List.of());
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new Acceptability(
                figure.title(),
                List.of(),
                figure.amount(),
                List.of(1.0, 1.0),
                figure.lines(),
                List.of(0, 0),
                List.of(),
                figure.provenance()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Plane("t", List.of(), "a", "e", "c", List.of(), List.of(), PLANE.provenance()));
  }
}
