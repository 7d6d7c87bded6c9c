package gapwise.server.page.option;

import gapwise.curation.ReviewBase;
import gapwise.decision.option.Column;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedOptions;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.ThresholdOffer;
import gapwise.server.report.SituationWords;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Methods side by side for one situation. A table that is not worked out yet takes seconds, so the
 * page comes at once and fetches it.
 */
public final class ComparePage {
  private final Templates templates;
  private final Sites sites;
  private final RememberedOptions options;
  private final ReviewBase review;

  public ComparePage(
      Templates templates, Sites sites, RememberedOptions options, ReviewBase review) {
    this.templates = templates;
    this.sites = sites;
    this.options = options;
    this.review = review;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.COMPARE, Right.SEE, this::show);
    routes.get(PagePaths.COMPARE_TABLE, Right.SEE, this::table);
    routes.get(PagePaths.COMPARE_THROUGH, Right.SEE, this::through);
  }

  private void table(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "option/CompareShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private void through(Context context) {
    Address address = Fetching.plain(new Address(context.queryParamMap()));
    templates.show(
        context,
        "option/CompareThrough",
        ThroughView.of(options, OptionAddress.question(address), address, Fetching.Way.PART));
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "option/ComparePage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private CompareView view(Address address, Fetching.Way way) {
    SituationForm form = SituationForm.of(address);
    if (!OptionAddress.asks(address)) {
      return new CompareView.Unasked(sites.of("Compare methods", Place.COMPARE, address), form);
    }
    OptionQuestion question = OptionAddress.question(address);
    String title = SituationWords.title(question.situation());
    Site site = sites.of(title, Place.COMPARE, address).keeping(PagePaths.COMPARE, address);
    return way.shows(Pieces.ofCompared(options, question))
        ? asked(site, form, title, address, question)
        : new CompareView.Working(
            site, form, title, Fetching.of(address, PagePaths.COMPARE_TABLE, PagePaths.COMPARE));
  }

  private CompareView.Asked asked(
      Site site, SituationForm form, String title, Address address, OptionQuestion question) {
    OptionTable table = options.table(question);
    return new CompareView.Asked(
        site,
        form,
        title,
        Labels.of(address),
        TableView.of(table, address),
        FitView.of(table),
        Differences.of(table, options.compared(question)),
        ThroughView.of(
            options,
            question,
            address,
            address.has(ThroughView.THROUGH, "yes") ? Fetching.Way.WHOLE : Fetching.Way.PAGE),
        FindingsFiles.ways(address),
        ReadStands.of(PagePaths.COMPARE, address, table.howRead(table.options())),
        thresholds(table, address));
  }

  private Optional<ThresholdOffer> thresholds(OptionTable table, Address address) {
    Map<String, String> names = new HashMap<>();
    for (Column column : table.columns()) {
      // A grade of function is no difference that this page asks for in a unit.
      if (column.outcome().isEvent() || column.outcome().unit().isPresent()) {
        names.put(column.outcome().code(), OptionAddress.matters(column.aspect()));
      }
    }
    return ThresholdOffer.of(review, names, address, PagePaths.COMPARE);
  }
}
