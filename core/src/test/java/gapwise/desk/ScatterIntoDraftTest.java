package gapwise.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.desk.ScatterIntoDraft.ScatterOf;
import gapwise.desk.ScatterIntoDraft.Target;
import gapwise.exchange.Template;
import gapwise.paper.DrawnPath.Point;
import gapwise.paper.trace.Axis;
import gapwise.paper.trace.Scale;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** An invented scatter: 100 points across to 10 cm, 100 points up from 1 to 100 on a log axis. */
class ScatterIntoDraftTest {
  private static final FigureMarks MARKS =
      new FigureMarks(
          new FigureMarks.Source(true, "0123456789abcdef0123456789abcdef", 1),
          new Axis(
              Scale.LINEAR,
              new Axis.Mark(new Point(100, 400), 0),
              new Axis.Mark(new Point(200, 400), 10)),
          new Axis(
              Scale.LOG,
              new Axis.Mark(new Point(100, 400), 1),
              new Axis.Mark(new Point(100, 300), 100)),
          List.of(new Point(150, 350), new Point(162.04, 300)));

  private static Target target(String name) {
    return ScatterIntoDraft.targets().stream()
        .filter(one -> one.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static ScatterOf of() {
    return new ScatterOf(
        "A", target("defect_length|cm"), target("time_to_union|months"), Optional.of("Figure 3"));
  }

  @Test
  void eachPointIsAPatientWithItsUnitsAndNoMoreDecimalsThanThePictureTells() {
    Draft draft =
        Draft.of("invented2031")
            .withRow(Template.PATIENTS, Map.of(Template.ARM, "A", Template.PATIENT, "point 1"));
    List<Map<String, String>> rows = ScatterIntoDraft.rows(draft, MARKS, of());
    assertEquals(List.of("point 2", "point 3"), rows.stream().map(r -> r.get("patient")).toList());
    assertEquals("5", rows.get(0).get("defect_length"));
    assertEquals("cm", rows.get(0).get("defect_length_unit"));
    // Half of the way from 1 to 100 in equal ratios is 10.
    assertEquals("10", rows.get(0).get("time_to_union"));
    assertEquals("months", rows.get(0).get("time_to_union_unit"));
    // A fifth of a point is 0.02 cm, so that 6.204 is told as 6.2.
    assertEquals("6.2", rows.get(1).get("defect_length"));
  }

  @Test
  void eachNumberKnowsTheSignItWasReadOff() {
    Draft taken = ScatterIntoDraft.take(Draft.of("invented2031"), MARKS, of());
    DraftRow first = taken.rows(Template.PATIENTS).get(0);
    assertEquals(2, first.readings().size());
    var box = first.reading("defect_length").orElseThrow().boxes().get(0);
    assertTrue(box.left() < 150 && box.right() > 150 && box.right() - box.left() < 20);
    assertEquals(2, taken.rows(Template.PATIENTS).size());
  }

  @Test
  void unitsThatAnOutcomeCannotHaveAreNotOffered() {
    assertTrue(
        ScatterIntoDraft.targets().stream()
            .noneMatch(one -> one.name().equals("time_to_union|cm")));
    assertTrue(ScatterIntoDraft.targets().stream().anyMatch(one -> one.name().equals("age")));
  }

  @Test
  void bothAxesCannotStandForOneColumn() {
    Target age = target("age");
    assertThrows(
        IllegalArgumentException.class, () -> new ScatterOf("A", age, age, Optional.empty()));
  }
}
