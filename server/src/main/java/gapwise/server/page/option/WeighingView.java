package gapwise.server.page.option;

import gapwise.decision.choice.Named;
import gapwise.evidence.vocabulary.Method;
import gapwise.problem.Problem;
import gapwise.server.page.Site;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import java.util.List;
import java.util.Optional;

/** What the page shows on which a table is weighed. */
public sealed interface WeighingView {
  /** The frame. */
  Site site();

  /** What can be said. */
  WeighingForm form();

  /** Nothing is asked yet. */
  record Unasked(Site site, WeighingForm form) implements WeighingView {}

  /** Something is not worked out yet, and fetched. */
  record Working(Site site, WeighingForm form, Fetching fetching) implements WeighingView {}

  /**
   * Nothing can be weighed.
   *
   * @param problems what contradicts itself or is missing
   * @param leftOut methods of which too little is known
   */
  record Refused(Site site, WeighingForm form, List<Problem> problems, List<Named> leftOut)
      implements WeighingView {}

  /**
   * The methods weighed.
   *
   * @param told wishes and ranges in sentences
   * @param cautions what must be known beside them
   * @param lines the methods, in the order of the table
   * @param figure the figure; empty where there are too many methods for one
   * @param leftOut methods that are left out
   * @param filled methods of which an outcome is not from studies
   * @param notes on the draws
   */
  record Weighed(
      Site site,
      WeighingForm form,
      List<String> told,
      List<String> cautions,
      List<Line> lines,
      Optional<Drawn> figure,
      List<Named> leftOut,
      List<Named> filled,
      List<String> notes)
      implements WeighingView {}

  /** A figure with its files. */
  record Drawn(TwoWidths drawing, TakeFigure take) {}

  /**
   * One method.
   *
   * @param method which
   * @param first how often it comes first
   * @param wishes under which it comes first
   * @param sure how sure that is with just these wishes
   * @param behind what keeps it from coming first
   * @param ranks its share at each rank
   */
  record Line(
      Method method, String first, String wishes, String sure, String behind, List<String> ranks) {}
}
