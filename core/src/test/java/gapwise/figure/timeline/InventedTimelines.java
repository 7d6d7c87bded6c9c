package gapwise.figure.timeline;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Optional;

/** Timelines for tests. Every name and number in them is invented. */
public final class InventedTimelines {
  static final MethodMark RING =
      new MethodMark("bone-transport", "Bone transport", "ring", "#2128D2");

  private InventedTimelines() {}

  /** One case on two clocks, with one pooled time. */
  public static Timeline oneCase() {
    List<Timeline.Stretch> course =
        List.of(
            new Timeline.Stretch(1, "in the frame", Timeline.Load.FRAME, 0, 9),
            new Timeline.Stretch(2, "partial weight", Timeline.Load.PARTIAL, 9, 11),
            new Timeline.Stretch(3, "unsupported", Timeline.Load.FREE, 11, 15));
    List<Timeline.Reached> reached =
        List.of(
            new Timeline.Reached("external frame taken off", 9),
            new Timeline.Reached("partial weight bearing", 9.2),
            new Timeline.Reached("full weight without any support", 11));
    List<Timeline.Pooled> pooled =
        List.of(
            new Timeline.Pooled(
                "external frame taken off",
                RING,
                6,
                Estimate.of(12, 10, 14),
                Optional.of(new Limits(7, 60))));
    List<Timeline.Stretch> later =
        List.of(new Timeline.Stretch(3, "unsupported", Timeline.Load.FREE, 2, 6));
    return new Timeline(
        "The course of one case",
        List.of("Each track counts from another moment."),
        List.of(
            new Timeline.Track("frame put on", course, reached, pooled),
            new Timeline.Track("frame taken off", later, List.of(), List.of())),
        List.of("Invented, proves nothing."),
        new FigureProvenance(
            SeriesCount.of(6), "", "random effects", "test", Optional.empty(), true));
  }

  /** Four clocks, so that a page of fixed height does not hold them all. */
  public static Timeline fourClocks() {
    Timeline one = oneCase();
    Timeline.Track track = one.tracks().get(0);
    return new Timeline(
        one.title(),
        one.sentences(),
        List.of(track, one.tracks().get(1), track, track),
        one.cautions(),
        one.provenance());
  }
}
