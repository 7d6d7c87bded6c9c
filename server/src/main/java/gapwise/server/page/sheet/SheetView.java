package gapwise.server.page.sheet;

import gapwise.evidence.vocabulary.Method;
import gapwise.server.page.Site;
import gapwise.server.page.part.Fetching;
import gapwise.server.report.SheetDocument;
import java.util.List;

/** What the page of the sheet shows. */
public sealed interface SheetView {
  /** The frame. */
  Site site();

  /**
   * Methods must be chosen first, as no more than so many stand on one page.
   *
   * @param choices the methods that keep the limb, and other kinds of amputation
   * @param most how many may be chosen beside the amputation that is always there
   * @param kept what else the address has, which goes along
   * @param here the table of all methods
   */
  record Choose(Site site, List<Choice> choices, int most, List<SheetWays.Kept> kept, String here)
      implements SheetView {}

  /** One method to choose. */
  record Choice(Method method, boolean chosen) {}

  /**
   * The sheet is not worked out yet.
   *
   * @param fetching where it is fetched
   */
  record Working(Site site, Fetching fetching) implements SheetView {}

  /**
   * The sheet.
   *
   * @param document what it shows
   * @param ways where it is taken along, and how it is changed
   */
  record Shown(Site site, SheetDocument document, SheetWays ways) implements SheetView {}
}
