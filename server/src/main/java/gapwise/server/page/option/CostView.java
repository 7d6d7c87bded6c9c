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

/** What the page shows on which a table is reckoned in costs. */
public sealed interface CostView {
  /** The frame. */
  Site site();

  /** What is asked. */
  CostForm form();

  /** Nothing is asked yet. */
  record Unasked(Site site, CostForm form) implements CostView {}

  /** Something is not worked out yet, and fetched. */
  record Working(Site site, CostForm form, Fetching fetching) implements CostView {}

  /**
   * Nothing can be reckoned.
   *
   * @param problems what is missing or cannot be
   * @param leftOut methods of which too little is known
   */
  record Refused(Site site, CostForm form, List<Problem> problems, List<Named> leftOut)
      implements CostView {}

  /** The methods reckoned. */
  record Reckoned(Site site, CostForm form, Shown shown) implements CostView {}

  /**
   * Costs and effects.
   *
   * @param told on what terms, in sentences
   * @param cautions what must be known beside them
   * @param notes what happened to draws on the way
   * @param money currency and year
   * @param effect what effects are counted in
   * @param lines the methods, in the order of the table
   * @param parts what each costs by what it is for
   * @param worth what knowing everything would be worth
   * @param figures figures; none where there are too many methods, or too few with an effect
   * @param leftOut methods that are left out
   * @param filled methods of which an outcome is not from studies
   */
  record Shown(
      List<String> told,
      List<String> cautions,
      List<String> notes,
      String money,
      String effect,
      List<Line> lines,
      List<Part> parts,
      List<Worth> worth,
      Optional<Drawn> figures,
      List<Named> leftOut,
      List<Named> filled) {}

  /**
   * One method.
   *
   * @param method which
   * @param cost mean and limits
   * @param effect mean and limits, or that it has none
   * @param against the difference from the method that all are held against
   * @param quarters the four quarters of the plane in words
   */
  record Line(Method method, String cost, String effect, String against, String quarters) {}

  /** What one kind of cost comes to, by method. */
  record Part(String label, List<String> amounts) {}

  /**
   * At one amount of money for one more year.
   *
   * @param amount the amount
   * @param best which method is best on average
   * @param share in how many of 100 draws it is best
   * @param knowing what it would be worth to know everything, for one patient
   */
  record Worth(String amount, String best, String share, String knowing) {}

  /** Both figures with their files. */
  record Drawn(TwoWidths plane, TakeFigure takePlane, TwoWidths curve, TakeFigure takeCurve) {}
}
