package gapwise.server.page.figure;

import gapwise.desk.ScatterIntoDraft;
import gapwise.desk.ScatterIntoDraft.Target;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.paper.DrawnPath.Point;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Objects;

/**
 * A figure while it is read.
 *
 * @param site the frame of the page
 * @param draft name of the draft
 * @param study name of the study
 * @param source the picture
 * @param fields what stands in the fields
 * @param offers what may be taken at once
 * @param questions what a person must confirm of what was taken
 * @param groups the draft's groups
 * @param drawn where the points lie
 * @param made what they make
 */
public record FigureView(
    Site site,
    String draft,
    String study,
    FigureSource source,
    FigureFields fields,
    List<Offer> offers,
    List<String> questions,
    List<Group> groups,
    List<Point> drawn,
    MadeView made) {
  public FigureView {
    Objects.requireNonNull(site, "site");
    offers = List.copyOf(offers);
    questions = List.copyOf(questions);
    groups = List.copyOf(groups);
    drawn = List.copyOf(drawn);
    Objects.requireNonNull(made, "made");
  }

  /**
   * Something found on the page.
   *
   * @param name how the form names it
   * @param words what it is
   */
  public record Offer(String name, String words) {}

  /**
   * A group of the draft.
   *
   * @param arm its name
   * @param label what the draft calls it, with how many patients it has; empty text for nothing
   */
  public record Group(String arm, String label) {}

  /** The four marks of the axes: name of the fields, and what they are in words. */
  public List<Mark> marks() {
    return List.of(
        new Mark("x1", "Across, first"),
        new Mark("x2", "Across, second"),
        new Mark("y1", "Upward, first"),
        new Mark("y2", "Upward, second"));
  }

  /** One mark of an axis. */
  public record Mark(String name, String title) {}

  /** What a curve may show. */
  public List<Outcome> outcomes() {
    return TypedCurve.outcomes();
  }

  /** The units of time. */
  public List<Unit> units() {
    return TypedCurve.units();
  }

  /** What an axis of a scatter may stand for. */
  public List<Target> targets() {
    return ScatterIntoDraft.targets();
  }
}
