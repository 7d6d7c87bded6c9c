package gapwise.server.api;

import gapwise.answer.Edition;
import gapwise.decision.choice.CostAsked;
import gapwise.decision.choice.CostFigures;
import gapwise.decision.choice.CostedMethods;
import gapwise.decision.choice.CostedTable;
import gapwise.decision.choice.WeighedMethods;
import gapwise.decision.choice.WeighedTable;
import gapwise.decision.choice.WeighingAsked;
import gapwise.decision.choice.WeighingFigure;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.figure.Figure;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.server.address.Address;
import gapwise.server.address.CostAddress;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.WeighingAddress;
import gapwise.server.download.FigureDownloads;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedAverages;
import gapwise.server.home.RememberedOptions;
import gapwise.server.route.Routes;
import io.javalin.http.Context;
import java.util.List;

/** Options weighed, and their costs, as files, under the parameters of their pages. */
final class ChoiceApi {
  private final RememberedOptions options;
  private final RememberedAverages averages;
  private final Edition edition;

  ChoiceApi(RememberedOptions options, RememberedAverages averages, Edition edition) {
    this.options = options;
    this.averages = averages;
    this.edition = edition;
  }

  void addTo(Routes routes) {
    FigureDownloads.add(routes, Api.ROOT + "/weighing", this::ranks);
    FigureDownloads.add(routes, Api.ROOT + "/cost-plane", this::plane);
    FigureDownloads.add(routes, Api.ROOT + "/cost-acceptability", this::acceptability);
  }

  private Figure ranks(Context context) {
    Address address = new Address(context.queryParamMap());
    WeighingAsked asked = WeighingAddress.read(address);
    OptionQuestion question = OptionAddress.question(WeighingAddress.situation(address));
    workOut(question, asked.aspects());
    WeighedTable weighed = WeighedTable.of(options.table(question), asked, averages);
    if (weighed instanceof WeighedTable.NotWeighed not) {
      throw new WrongInputException(not.problems());
    }
    return WeighingFigure.of((WeighedMethods) weighed, edition).orElseThrow(ChoiceApi::tooMany);
  }

  private void workOut(OptionQuestion question, List<Aspect> aspects) {
    Pieces.ofTable(options, question).withAverages(averages, question, aspects).all();
  }

  private Figure plane(Context context) {
    return CostFigures.plane(costed(context), edition).orElseThrow(ChoiceApi::tooMany);
  }

  private Figure acceptability(Context context) {
    return CostFigures.acceptability(costed(context), edition).orElseThrow(ChoiceApi::tooMany);
  }

  private CostedMethods costed(Context context) {
    Address address = new Address(context.queryParamMap());
    CostAsked asked = CostAddress.read(address);
    List<Problem> missing = CostedTable.missing(asked);
    if (!missing.isEmpty()) {
      throw new WrongInputException(missing);
    }
    OptionQuestion question = OptionAddress.question(CostAddress.situation(address));
    workOut(question, CostedTable.needed());
    CostedTable costed = CostedTable.of(options.table(question), asked, averages);
    if (costed instanceof CostedTable.NotReckoned not) {
      throw new WrongInputException(not.problems());
    }
    return (CostedMethods) costed;
  }

  private static WrongInputException tooMany() {
    return new WrongInputException(
        List.of(
            new Problem(
                "method",
                "too-many-methods",
                "More methods are left than one drawing can tell apart; name those to compare.")));
  }
}
