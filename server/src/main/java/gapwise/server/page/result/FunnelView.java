package gapwise.server.page.result;

import gapwise.answer.AnswerForest;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.FunnelTable;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.QuestionParts;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import java.util.List;
import java.util.Optional;

/**
 * What the page of small against large series shows.
 *
 * @param site the frame of the page
 * @param question the question in words
 * @param finding what came of it
 * @param stands how the studies behind it were read
 * @param plan the plan as text; empty where there is nothing to analyse
 * @param address the question
 */
public record FunnelView(
    Site site,
    String question,
    Finding finding,
    ReadStands stands,
    Optional<String> plan,
    Address address) {

  /** What came of the question. */
  public sealed interface Finding {
    /** What stands beside it. */
    List<String> cautions();
  }

  /** The figure, its numbers and its files. */
  public record Drawn(
      Funnel funnel, TwoWidths drawing, List<FunnelTable.Line> lines, TakeFigure take)
      implements Finding {
    @Override
    public List<String> cautions() {
      return funnel.cautions();
    }
  }

  /**
   * Nothing can be drawn.
   *
   * @param problems why, where the analysis says so
   */
  public record NothingToDraw(List<String> problems) implements Finding {
    @Override
    public List<String> cautions() {
      return AnswerForest.CAUTIONS;
    }
  }

  /** What narrows the result, each with the address without it. */
  public List<FilterForm.On> on() {
    return QuestionParts.all(PagePaths.FUNNEL, address);
  }

  /** Address of a download. */
  public String download(String name) {
    return address.at("/api/v1/" + name);
  }
}
