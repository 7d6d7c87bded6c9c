package gapwise.server.page.option;

import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
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
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;

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

  public ComparePage(Templates templates, Sites sites, RememberedOptions options) {
    this.templates = templates;
    this.sites = sites;
    this.options = options;
  }

  /** Adds its route. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.COMPARE, this::show);
    routes.get(PagePaths.COMPARE_TABLE, this::table);
    routes.get(PagePaths.COMPARE_THROUGH, this::through);
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
          sites.of(title, Place.COMPARE, address),
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
        sites.of(title, Place.COMPARE, address),
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
            PagePaths.COMPARE, address.without(List.of(WHOLE)), table.howRead(table.options())));
  }
}
