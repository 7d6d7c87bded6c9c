package gapwise.figure.bubble;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.drawing.Ink;
import gapwise.figure.drawing.Legend;
import gapwise.figure.drawing.Svg;
import java.util.HashMap;
import java.util.Map;

/**
 * Single patients in the field of a bubble plot. Where the outcome is an event they stand as ticks
 * at the top of the field, with it, and at its foot, without it; else as small crosses at their
 * values. Patients at one place stand in rows, always the same way.
 *
 * @param bubble the figure
 * @param field where things lie
 */
record BubblePatients(Bubble bubble, BubbleField field) {
  private static final double TICK = 5;
  private static final double ARM = 2.4;
  private static final double STROKE = 1;

  /** Rows of ticks before they begin anew, so that they leave the field to the series. */
  private static final int ROWS = 4;

  void draw(Svg svg) {
    if (bubble.patients().isEmpty()) {
      return;
    }
    StringBuilder path = new StringBuilder();
    Map<String, Integer> standing = new HashMap<>();
    for (BubblePatient patient : bubble.patients()) {
      double x = field.x(patient.lengthCentimetres());
      if (bubble.isOf100()) {
        String place = Svg.n(x) + (patient.value() > 0);
        int row = standing.merge(place, 1, Integer::sum) - 1;
        path.append('M').append(Svg.at(x, tickTop(patient.value() > 0, row % ROWS)));
        path.append('v').append(Svg.n(TICK));
      } else {
        cross(path, x, field.y(patient.value()));
      }
    }
    svg.open("g", "data-part", "patients");
    svg.stroke(path.toString(), Ink.SOFT, STROKE);
    svg.close("g");
  }

  private double tickTop(boolean with, int row) {
    double inward = row * (TICK + 1);
    return with ? field.top() + inward : field.bottom() - TICK - 1 - inward;
  }

  /** A small cross around a place. */
  static void cross(StringBuilder path, double x, double y) {
    path.append('M').append(Svg.at(x - ARM, y)).append('h').append(Svg.n(2 * ARM));
    path.append('M').append(Svg.at(x, y - ARM)).append('v').append(Svg.n(2 * ARM));
  }

  /** The mark in the key, and what it says. */
  static Legend.Entry key(boolean of100) {
    return of100
        ? new Legend.Entry(
            (svg, x, middle) ->
                svg.stroke("M" + Svg.at(x + 10, middle - TICK / 2) + "v5m8 -5v5", Ink.SOFT, STROKE),
            say("figure.key-patient-with-or-without"))
        : new Legend.Entry(
            (svg, x, middle) -> {
              StringBuilder path = new StringBuilder();
              cross(path, x + 14, middle);
              svg.stroke(path.toString(), Ink.SOFT, STROKE);
            },
            say("figure.key-patient"));
  }
}
