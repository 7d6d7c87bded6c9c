package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.certainty.Lowering;
import gapwise.decision.certainty.Rating;
import gapwise.decision.option.Cell;
import gapwise.decision.option.Chances;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionTable;
import gapwise.decision.option.PairApart;
import gapwise.decision.option.PairWithin;
import gapwise.decision.situation.Fit;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.selection.QuestionJson;
import gapwise.server.home.RememberedOptions.Compared;
import java.util.List;

/**
 * Methods by outcomes as JSON: shares from 0 to 1, what has a unit in it. Each number stands with
 * the question that gives it again.
 */
final class OptionsJson {
  private static final List<String> CAUTIONS =
      List.of(
          "Separate groups of patients, no comparison: methods were used on other patients, in other"
              + " hospitals.",
          "Information to support a discussion, not medical advice. Licensed surgeons and local"
              + " protocols decide.");

  private OptionsJson() {}

  static ObjectNode of(OptionTable table, Compared compared) {
    ObjectNode json = Json.object();
    ArrayNode cautions = json.putArray("cautions");
    CAUTIONS.forEach(cautions::add);
    ArrayNode outcomes = json.putArray("outcomes");
    table.columns().forEach(column -> outcomes.add(outcome(column)));
    ArrayNode methods = json.putArray("methods");
    table.options().forEach(option -> methods.add(method(table, option)));
    ArrayNode within = json.putArray("comparedWithinStudies");
    compared.within().forEach(pair -> within.add(within(pair)));
    ArrayNode apart = json.putArray("separateGroups");
    compared.apart().forEach(pair -> apart.add(apart(pair)));
    return json;
  }

  private static ObjectNode outcome(Column column) {
    ObjectNode json = Json.object().put("aspect", column.aspect().code());
    json.set("outcome", Json.word(column.outcome()));
    json.put(
        "unit",
        column.measure().kind() == Quantity.Kind.OF_100 ? "share" : column.measure().unit());
    column.matters().ifPresent(matters -> json.put("matters", matters));
    return json;
  }

  private static ObjectNode method(OptionTable table, Option option) {
    ObjectNode json = Json.object();
    json.set("method", Json.word(option.method()));
    json.put("studies", option.studies());
    ArrayNode cells = json.putArray("outcomes");
    for (Column column : table.columns()) {
      cells.add(cell(column, option, table.cell(option, column)));
    }
    return json;
  }

  private static ObjectNode cell(Column column, Option option, Cell cell) {
    ObjectNode json = Json.object().put("aspect", column.aspect().code());
    if (cell instanceof Cell.Known known) {
      return known(json, column, option, known);
    }
    if (cell instanceof Cell.NotCounted not) {
      return json.put("known", "not-counted").put("studies", not.studies());
    }
    String why =
        cell instanceof Cell.NoStudy
            ? "no-study"
            : cell instanceof Cell.NothingUsable ? "nothing-usable" : "does-not-apply";
    return json.put("known", why);
  }

  private static ObjectNode known(ObjectNode json, Column column, Option option, Cell.Known known) {
    MethodLine line = known.line();
    json.put("counted", line.counted()).put("series", line.series());
    if (line.finding() instanceof MethodLine.Average average) {
      json.put("known", "average");
      json.set("value", estimate(average.value()));
      average.newCentre().ifPresent(limits -> json.set("newCentre", limits(limits)));
    } else if (line.finding() instanceof MethodLine.OneSeries one) {
      json.put("known", "one-series");
      json.set("value", estimate(one.value()));
    } else {
      json.put("known", "no-average");
    }
    json.set("fit", fit(known.fit()));
    json.set("certainty", certainty(known.certainty()));
    json.set("evidence", QuestionJson.write(column.question(option.method())));
    return json;
  }

  private static ObjectNode estimate(Estimate value) {
    ObjectNode json = limits(value.limits());
    return json.put("estimate", value.value());
  }

  private static ObjectNode limits(Limits limits) {
    return Json.object().put("lower", limits.lower()).put("upper", limits.upper());
  }

  private static ObjectNode fit(Fit fit) {
    return Json.object()
        .put("inside", fit.inside())
        .put("edge", fit.edge())
        .put("outside", fit.outside())
        .put("unknown", fit.unknown());
  }

  private static ObjectNode certainty(Certainty certainty) {
    ObjectNode json = rating(certainty.rating());
    json.put("proposed", certainty.proposed().level().code());
    certainty
        .settled()
        .ifPresent(
            settled ->
                json.putObject("settled")
                    .put("who", settled.who())
                    .put("when", settled.when().toString())
                    .put("reason", settled.judgement().reason())
                    .put("outdated", certainty.isOutdated()));
    return json;
  }

  private static ObjectNode rating(Rating rating) {
    ObjectNode json = Json.object().put("level", rating.level().code());
    ArrayNode reasons = json.putArray("reasons");
    for (Lowering one : rating.lowerings()) {
      reasons
          .addObject()
          .put("domain", one.domain().code())
          .put("levels", one.levels())
          .put("reason", one.reason());
    }
    return json;
  }

  private static ObjectNode within(PairWithin pair) {
    ObjectNode json = Json.object().put("aspect", pair.column().aspect().code());
    json.set("first", Json.word(pair.first()));
    json.set("second", Json.word(pair.second()));
    json.put("studies", pair.studies());
    ArrayNode sentences = json.putArray("sentences");
    pair.part().sentences().forEach(sentences::add);
    pair.difference().ifPresent(difference -> json.set("difference", estimate(difference)));
    pair.rating().ifPresent(rating -> json.set("certainty", rating(rating)));
    pair.chances().ifPresent(chances -> json.set("chances", chances(chances)));
    pair.part().plan().ifPresent(plan -> json.set("plan", plan));
    return json;
  }

  private static ObjectNode apart(PairApart pair) {
    ObjectNode json = Json.object().put("aspect", pair.column().aspect().code());
    json.set("first", Json.word(pair.first()));
    json.set("second", Json.word(pair.second()));
    json.set("chances", chances(pair.chances()));
    return json;
  }

  private static ObjectNode chances(Chances chances) {
    return Json.object()
        .put("matters", chances.matters())
        .put("firstHigher", chances.firstMore())
        .put("secondHigher", chances.secondMore())
        .put("neither", chances.within());
  }
}
