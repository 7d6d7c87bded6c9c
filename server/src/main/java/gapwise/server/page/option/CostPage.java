package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.decision.choice.CostAsked;
import gapwise.decision.choice.CostFigures;
import gapwise.decision.choice.CostedMethods;
import gapwise.decision.choice.CostedTable;
import gapwise.decision.option.OptionQuestion;
import gapwise.figure.plane.Acceptability;
import gapwise.figure.plane.Plane;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.ChoiceAddress;
import gapwise.server.address.CostAddress;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedAverages;
import gapwise.server.home.RememberedOptions;
import gapwise.server.page.Place;
import gapwise.server.page.Site;
import gapwise.server.page.Sites;
import gapwise.server.page.Templates;
import gapwise.server.page.part.Fetching;
import gapwise.server.page.part.TakeFigure;
import gapwise.server.page.part.TwoWidths;
import gapwise.server.report.SituationWords;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A table of options reckoned in costs, with the prices of whoever asks; off until asked for. */
public final class CostPage {
  private static final String PLANE = "/api/v1/cost-plane";
  private static final String CURVE = "/api/v1/cost-acceptability";

  private final Templates templates;
  private final Sites sites;
  private final RememberedOptions options;
  private final RememberedAverages averages;
  private final Edition edition;

  /**
   * @param options tables of options
   * @param averages the posteriors behind them
   */
  public CostPage(
      Templates templates,
      Sites sites,
      RememberedOptions options,
      RememberedAverages averages,
      Edition edition) {
    this.templates = templates;
    this.sites = sites;
    this.options = options;
    this.averages = averages;
    this.edition = edition;
  }

  /** Adds its routes. */
  public void addTo(Routes routes) {
    routes.get(PagePaths.COMPARE_COST, Right.SEE, this::show);
    routes.get(PagePaths.COMPARE_COST_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "option/CostPage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(context, "option/CostShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private CostView view(Address address, Fetching.Way way) {
    Address situation = CostAddress.situation(address);
    OptionQuestion question = OptionAddress.question(situation);
    String words = SituationWords.title(question.situation());
    Site site = sites.of(say("page.cost-title", Map.of("table", words)), Place.COMPARE, situation);
    CostForm form = CostForm.of(question, ChoiceForm.of(words, situation, address));
    if (!ChoiceAddress.isAsked(address)) {
      return new CostView.Unasked(site, form);
    }
    CostAsked asked;
    try {
      asked = CostAddress.read(address);
    } catch (WrongInputException wrong) {
      return new CostView.Refused(site, form, wrong.problems(), List.of());
    }
    List<Problem> missing = CostedTable.missing(asked);
    if (!missing.isEmpty()) {
      return new CostView.Refused(site, form, missing, List.of());
    }
    Pieces pieces =
        Pieces.ofTable(options, question).withAverages(averages, question, CostedTable.needed());
    if (!way.shows(pieces)) {
      return new CostView.Working(
          site, form, Fetching.of(address, PagePaths.COMPARE_COST_RESULT, PagePaths.COMPARE_COST));
    }
    CostedTable costed = CostedTable.of(options.table(question), asked, averages);
    return costed instanceof CostedMethods methods
        ? new CostView.Reckoned(site, form, CostWords.shown(methods, drawn(methods, address)))
        : new CostView.Refused(
            site, form, ((CostedTable.NotReckoned) costed).problems(), costed.leftOut());
  }

  private Optional<CostView.Drawn> drawn(CostedMethods methods, Address address) {
    Optional<Plane> plane = CostFigures.plane(methods, edition);
    Optional<Acceptability> curve = CostFigures.acceptability(methods, edition);
    return plane.flatMap(
        one ->
            curve.map(
                other ->
                    new CostView.Drawn(
                        TwoWidths.of(one),
                        TakeFigure.of(PLANE, address, one),
                        TwoWidths.of(other),
                        TakeFigure.of(CURVE, address, other))));
  }
}
