package gapwise.server.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.MethodPart;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.List;
import java.util.Locale;

/** The words that filters, plans and templates know. */
final class Vocabularies {
  private Vocabularies() {}

  static ObjectNode json() {
    ObjectNode json = Json.object();
    ArrayNode methods = json.putArray("methods");
    Method.vocabulary()
        .all()
        .forEach(method -> methods.add(Json.word(method).put("meaning", method.meaning())));
    ArrayNode outcomes = json.putArray("outcomes");
    Outcome.vocabulary().all().forEach(outcome -> outcomes.add(outcome(outcome)));
    words(json, "methodParts", MethodPart.vocabulary().all());
    words(json, "methodDetails", MethodDetail.all());
    words(json, "bones", List.of(Bone.values()));
    words(json, "designs", List.of(Design.values()));
    words(json, "risks", List.of(Risk.values()));
    words(json, "instruments", Instrument.vocabulary().all());
    words(json, "clocks", List.of(Clock.values()));
    words(json, "infected", List.of(YesOrNo.values()));
    return json;
  }

  private static ObjectNode outcome(Outcome outcome) {
    ObjectNode word = Json.word(outcome);
    word.put("family", outcome.family());
    word.put("kind", outcome.kind().name().toLowerCase(Locale.ROOT));
    word.put("better", outcome.better().name().toLowerCase(Locale.ROOT));
    outcome.unit().map(Unit::symbol).ifPresent(unit -> word.put("unit", unit));
    word.put("meaning", outcome.meaning());
    word.put("differs", outcome.differs());
    outcome.caution().ifPresent(caution -> word.put("caution", caution));
    return word;
  }

  private static void words(ObjectNode json, String name, List<? extends Coded> words) {
    ArrayNode list = json.putArray(name);
    words.forEach(word -> list.add(Json.word(word)));
  }
}
