package gapwise.server.page.option;

import gapwise.server.page.Site;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.FilterForm;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.ThresholdOffer;
import java.util.List;
import java.util.Optional;

/** What the page of options shows. */
public sealed interface CompareView {
  /** The frame. */
  Site site();

  /** What can be asked. */
  SituationForm form();

  /** Nothing is asked yet. */
  record Unasked(Site site, SituationForm form) implements CompareView {}

  /**
   * The table is not worked out yet.
   *
   * @param title the situation in words
   * @param fetching where the table is fetched
   */
  record Working(Site site, SituationForm form, String title, Fetching fetching)
      implements CompareView {}

  /**
   * The methods side by side.
   *
   * @param title the situation in words
   * @param labels what the address says, each to be taken off
   * @param table methods by outcomes
   * @param fits how the groups of each method match the situation
   * @param differences what stands against reading it as a comparison, and what compares
   * @param through what networks of studies and adjusting say, which comes after the table
   * @param files the table as a summary of findings
   * @param stands how the studies behind the numbers were read
   * @param thresholds differences that matter by the review; empty where it names none of these
   */
  record Asked(
      Site site,
      SituationForm form,
      String title,
      List<FilterForm.On> labels,
      TableView table,
      FitView fits,
      Differences differences,
      ThroughView through,
      List<TakeFigure.Link> files,
      ReadStands stands,
      Optional<ThresholdOffer> thresholds)
      implements CompareView {}
}
