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
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.ReadStands;
import gapwise.server.page.part.ThresholdOffer;
import gapwise.server.report.SituationWords;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Methods side by side for one situation. A table that is not worked out yet takes seconds, so the
 * page comes at once and fetches it.
 */
public final class ComparePage {
  /** The name that asks for the whole page at once, for browsers without script. */
  static final String WHOLE = "whole";

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

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.COMPARE, Right.SEE, this::show);
    routes.get(PagePaths.COMPARE_TABLE, Right.SEE, this::table);
    routes.get(PagePaths.COMPARE_THROUGH, Right.SEE, this::through);
  }

  private void table(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "option/CompareTable", asked(address, OptionAddress.question(address)));
  }

  private void through(Context context) {
    Address address = new Address(context.queryParamMap()).without(List.of(WHOLE));
    templates.show(
        context,
        "option/CompareThrough",
        ThroughView.of(options, OptionAddress.question(address), address, Fetching.Way.PART));
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "option/ComparePage", view(address));
  }

  private CompareView view(Address address) {
    SituationForm form = SituationForm.of(address);
    if (!OptionAddress.asks(address)) {
      return new CompareView.Unasked(sites.of("Compare methods", Place.COMPARE, address), form);
    }
    OptionQuestion question = OptionAddress.question(address);
    if (!options.has(question) && !address.has(WHOLE, "yes")) {
      String title = SituationWords.title(question.situation());
      return new CompareView.Working(
          sites.of(title, Place.COMPARE, address).keeping(PagePaths.COMPARE, address),
          form,
          title,
          address.at(PagePaths.COMPARE_TABLE),
          address.with(WHOLE, "yes").at(PagePaths.COMPARE));
    }
    return asked(address, question);
  }

  private CompareView.Asked asked(Address address, OptionQuestion question) {
    Pieces.ofCompared(options, question).all();
    OptionTable table = options.table(question);
    String title = SituationWords.title(table.situation());
    return new CompareView.Asked(
        sites.of(title, Place.COMPARE, address).keeping(PagePaths.COMPARE, address),
        SituationForm.of(address),
        title,
        Labels.of(address.without(List.of(WHOLE))),
        TableView.of(table, address.without(List.of(WHOLE))),
        FitView.of(table),
        Differences.of(table, options.compared(question)),
        ThroughView.of(
            options,
            question,
            address.without(List.of(WHOLE)),
            address.has(ThroughView.THROUGH, "yes") ? Fetching.Way.WHOLE : Fetching.Way.PAGE),
        FindingsFiles.ways(address.without(List.of(WHOLE))),
        ReadStands.of(
            PagePaths.COMPARE, address.without(List.of(WHOLE)), table.howRead(table.options())),
        thresholds(table, address.without(List.of(WHOLE))));
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
