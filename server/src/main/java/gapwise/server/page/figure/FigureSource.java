package gapwise.server.page.figure;

import gapwise.desk.FigureMarks;
import gapwise.paper.Box;
import gapwise.paper.trace.FigureProposal;
import java.util.List;
import java.util.Objects;

/**
 * The picture that a figure is read off, open.
 *
 * @param source which it is
 * @param picture the whole of it, points
 * @param href address of the picture
 * @param proposals what the figures on it seem to show
 */
public record FigureSource(
    FigureMarks.Source source, Box picture, String href, List<FigureProposal> proposals) {
  public FigureSource {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(picture, "picture");
    Objects.requireNonNull(href, "href");
    proposals = List.copyOf(proposals);
  }
}
