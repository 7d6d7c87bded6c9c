package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.answer.AnswerForest;
import gapwise.answer.ComparisonAlert;
import gapwise.answer.Told;
import gapwise.claim.Claim;
import gapwise.claim.Compared;
import gapwise.claim.Part;
import gapwise.claim.Settling;
import gapwise.claim.Verdict.Examined;
import gapwise.claim.Verdict.Offer;
import gapwise.claim.Ways;
import gapwise.evidence.vocabulary.Coded;
import gapwise.selection.QuestionJson;
import java.util.ArrayList;
import java.util.List;

/**
 * What may be said of a claim as JSON: the sentence and what must stand beside it first, then each
 * kind of evidence with its sentences, its numbers and the plan that gives them again.
 */
final class ClaimJson {
  private ClaimJson() {}

  static ObjectNode of(Examined told, Settling settling, Ways ways) {
    ObjectNode json = Json.object();
    json.set("claim", claim(told));
    json.put("sentence", told.sentence());
    texts(json, "cautions", cautions(told.claim()));
    texts(json, "lowersCertainty", told.lowers());
    json.set("direct", part(told.direct()));
    json.set("indirect", part(told.indirect()));
    json.set("separate", separate(told));
    parts(json.putArray("setAgainstEachOther"), told.adjusted());
    told.alert().ifPresent(alert -> groups(json.putArray("groupsOfPatients"), alert));
    texts(json, "definitions", told.definitions());
    offers(json.putArray("couldBeAskedInstead"), told.offers());
    json.set("ways", ways(ways));
    json.set("settling", settling(settling));
    return json;
  }

  private static List<String> cautions(Claim claim) {
    List<String> cautions = new ArrayList<>(AnswerForest.CAUTIONS);
    claim.outcome().caution().ifPresent(cautions::add);
    return cautions;
  }

  private static ObjectNode claim(Examined told) {
    Claim claim = told.claim();
    ObjectNode json = Json.object().put("words", claim.words());
    json.set("a", Json.word(claim.a().method()));
    json.put("says", claim.direction().code());
    json.set("b", Json.word(claim.b().method()));
    json.set("outcome", Json.word(claim.outcome()));
    // The question that both sides share, with its clock, definition and filters.
    json.set("evidence", QuestionJson.write(told.rows().question()));
    return json;
  }

  private static ObjectNode separate(Examined told) {
    ObjectNode json = Json.object();
    json.put("caution", AnswerForest.NO_COMPARISON);
    ArrayNode methods = json.putArray("methods");
    for (Told one : told.separate()) {
      ObjectNode method = methods.addObject().put("method", one.heading());
      method.put("sentence", one.sentence());
      texts(method, "then", one.then());
    }
    told.notPooled().ifPresent(words -> json.put("notPooled", words));
    json.put("series", told.rows().selection().rows().size());
    json.put("leftOut", told.rows().selection().leftOut().size());
    told.rows().selection().clock().map(Coded::label).ifPresent(c -> json.put("countedFrom", c));
    told.rows().plan().ifPresent(plan -> json.set("plan", plan));
    return json;
  }

  private static void groups(ArrayNode array, ComparisonAlert alert) {
    for (ComparisonAlert.Line line : alert.lines()) {
      ObjectNode group = array.addObject();
      group.set("method", Json.word(line.of().method()));
      group.put("series", line.series());
      group.put("patientsOrLimbs", line.patients());
      group.put("missingBone", line.missingBone());
      group.put("infectedAtTheStart", line.infected());
      group.put("followed", line.followed());
      group.put("designs", line.designs());
    }
  }

  private static void parts(ArrayNode array, List<Part> parts) {
    parts.forEach(part -> array.add(part(part)));
  }

  private static ObjectNode part(Part part) {
    ObjectNode json = Json.object().put("heading", part.heading());
    texts(json, "sentences", part.sentences());
    part.compared().ifPresent(compared -> json.set("numbers", numbers(compared)));
    part.plan().ifPresent(plan -> json.set("plan", plan));
    return json;
  }

  private static ObjectNode numbers(Compared compared) {
    ObjectNode json = Json.object().put("kind", compared.kind());
    json.put("studies", compared.studies());
    json.put("patients", compared.patients());
    json.put("estimate", compared.estimate());
    json.put("lower", compared.lower());
    json.put("upper", compared.upper());
    compared
        .prediction()
        .ifPresent(
            limits ->
                json.put("predictionLower", limits.lower()).put("predictionUpper", limits.upper()));
    return json.put(
        "interval",
        switch (compared.lean()) {
          case OPEN -> "open";
          case FIRST_MORE -> "more-after-a";
          case FIRST_LESS -> "less-after-a";
        });
  }

  private static void offers(ArrayNode array, List<Offer> offers) {
    for (Offer offer : offers) {
      array
          .addObject()
          .put("words", offer.words())
          .put("parameter", offer.name())
          .put("value", offer.value());
    }
  }

  /** Shares are texts, since a small one reads "under 0.1". */
  private static ObjectNode ways(Ways ways) {
    ObjectNode json = Json.object().put("about", ways.about());
    ArrayNode lines = json.putArray("lines");
    for (Ways.Line line : ways.lines()) {
      ObjectNode one = lines.addObject().put("heading", line.heading());
      one.put("analyses", line.analyses());
      one.put("moreAfterAOf100", line.firstMore());
      one.put("moreAfterBOf100", line.secondMore());
      one.put("undecidedOf100", line.undecided());
      one.put("estimatesMoreAfterAOf100", line.estimatesFirstMore());
      texts(one, "moves", line.moves());
      one.set("plan", line.plan());
    }
    texts(json, "notes", ways.notes());
    return json;
  }

  private static ObjectNode settling(Settling settling) {
    ObjectNode json = Json.object().put("sentence", settling.sentence());
    json.put("difference", settling.difference());
    json.put("differenceIn", settling.ofHundred() ? "of-100" : "percent-of-the-mean");
    json.put("differenceIsUsual", settling.usual());
    settling.plan().ifPresent(plan -> json.set("plan", plan));
    return json;
  }

  private static void texts(ObjectNode json, String field, List<String> texts) {
    ArrayNode array = json.putArray(field);
    texts.forEach(array::add);
  }
}
