package gapwise.server.page.result;

import gapwise.answer.AnswerForest;
import gapwise.figure.funnel.Funnel;
import gapwise.figure.funnel.FunnelTable;
import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.page.Site;
import gapwise.server.page.part.Awaited;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.QuestionParts;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import java.util.List;
import java.util.Optional;

/** What the page of small against large series shows. */
public sealed interface FunnelView {
  /** The frame of the page. */
  Site site();

  /** The question in words. */
  String question();

  /** The question. */
  Address address();

  /** What narrows the result, each with the address without it. */
  default List<FilterForm.On> on() {
    return QuestionParts.all(PagePaths.FUNNEL, address());
  }

  /**
   * The answer is not there yet.
   *
   * @param awaited what is worked out
   */
  record Working(Site site, String question, Address address, Awaited awaited)
      implements FunnelView {}

  /**
   * The answer.
   *
   * @param finding what came of the question
   * @param stands how the studies behind it were read
   * @param plan the plan as text; empty where there is nothing to analyse
   */
  record Shown(
      Site site,
      String question,
      Finding finding,
      ReadStands stands,
      Optional<String> plan,
      Address address)
      implements FunnelView {
    /** Address of a download. */
    public String download(String name) {
      return address.at("/api/v1/" + name);
    }
  }

  /** What came of the question. */
  sealed interface Finding {
    /** What stands beside it. */
    List<String> cautions();
  }

  /** The figure, its numbers and its files. */
  record Drawn(Funnel funnel, TwoWidths drawing, List<FunnelTable.Line> lines, TakeFigure take)
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
  record NothingToDraw(List<String> problems) implements Finding {
    @Override
    public List<String> cautions() {
      return AnswerForest.CAUTIONS;
    }
  }
}
