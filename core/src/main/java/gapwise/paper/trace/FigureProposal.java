package gapwise.paper.trace;

import gapwise.paper.Box;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A figure found as lines on a page.
 *
 * @param page from 1
 * @param caption words that begin with the figure's number, empty if none are near
 * @param plot the area between the first and last numbers of its axes
 * @param axes from the printed numbers
 * @param unit of time as printed below, such as "months"
 * @param title words beside the upright axis
 * @param curves from the first drawn on
 * @param points middles of small signs of one kind, as in a scatter, one list a kind
 * @param questions what a person must settle; never empty, since a proposal is no answer
 */
public record FigureProposal(
    int page,
    String caption,
    Box plot,
    Axes axes,
    Optional<String> unit,
    String title,
    List<CurveProposal> curves,
    List<List<DataPoint>> points,
    List<String> questions) {
  public FigureProposal {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(plot, "plot");
    Objects.requireNonNull(axes, "axes");
    curves = List.copyOf(curves);
    points = points.stream().map(List::copyOf).toList();
    questions = List.copyOf(questions);
  }
}
