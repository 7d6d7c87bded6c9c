package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.answer.Edition;
import gapwise.decision.choice.WeighedMethods;
import gapwise.decision.choice.WeighedTable;
import gapwise.decision.choice.WeighingAsked;
import gapwise.decision.choice.WeighingFigure;
import gapwise.decision.option.OptionQuestion;
import gapwise.figure.ranks.RankShares;
import gapwise.problem.WrongInputException;
import gapwise.server.account.Right;
import gapwise.server.address.Address;
import gapwise.server.address.ChoiceAddress;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.address.WeighingAddress;
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

/** A table of options weighed by what matters to a patient; off until asked for. */
public final class WeighingPage {
  private static final String FILES = "/api/v1/weighing";

  private final Templates templates;
  private final Sites sites;
  private final RememberedOptions options;
  private final RememberedAverages averages;
  private final Edition edition;

  /**
   * @param options tables of options
   * @param averages the posteriors behind them
   */
  public WeighingPage(
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
    routes.get(PagePaths.COMPARE_WEIGHING, Right.SEE, this::show);
    routes.get(PagePaths.COMPARE_WEIGHING_RESULT, Right.SEE, this::part);
  }

  private void show(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "option/WeighingPage", view(Fetching.plain(address), Fetching.Way.of(address)));
  }

  private void part(Context context) {
    Address address = new Address(context.queryParamMap());
    templates.show(
        context, "option/WeighingShown", view(Fetching.plain(address), Fetching.Way.PART));
  }

  private WeighingView view(Address address, Fetching.Way way) {
    Address situation = WeighingAddress.situation(address);
    OptionQuestion question = OptionAddress.question(situation);
    String words = SituationWords.title(question.situation());
    Site site =
        sites.of(say("page.weighing-title", Map.of("table", words)), Place.COMPARE, situation);
    WeighingForm form = WeighingForm.of(question, ChoiceForm.of(words, situation, address));
    if (!ChoiceAddress.isAsked(address)) {
      return new WeighingView.Unasked(site, form);
    }
    WeighingAsked asked;
    try {
      asked = WeighingAddress.read(address);
    } catch (WrongInputException wrong) {
      return new WeighingView.Refused(site, form, wrong.problems(), List.of());
    }
    Pieces pieces =
        Pieces.ofTable(options, question).withAverages(averages, question, asked.aspects());
    if (!way.shows(pieces)) {
      return new WeighingView.Working(
          site,
          form,
          Fetching.of(address, PagePaths.COMPARE_WEIGHING_RESULT, PagePaths.COMPARE_WEIGHING));
    }
    WeighedTable weighed = WeighedTable.of(options.table(question), asked, averages);
    return weighed instanceof WeighedMethods methods
        ? shown(site, form, methods)
        : new WeighingView.Refused(
            site, form, ((WeighedTable.NotWeighed) weighed).problems(), weighed.leftOut());
  }

  private WeighingView shown(Site site, WeighingForm form, WeighedMethods methods) {
    return new WeighingView.Weighed(
        site,
        form,
        WeighedWords.told(methods),
        WeighingFigure.cautions(),
        WeighedWords.lines(methods),
        WeighingFigure.of(methods, edition).map(figure -> drawn(figure, form.common().here())),
        methods.leftOut(),
        methods.filled(),
        WeighedWords.notes(methods));
  }

  private static WeighingView.Drawn drawn(RankShares figure, Address address) {
    return new WeighingView.Drawn(TwoWidths.of(figure), TakeFigure.of(FILES, address, figure));
  }
}
