package gapwise.server.answer;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.Answer;
import gapwise.evidence.Bone;
import gapwise.evidence.Clock;
import gapwise.evidence.Coded;
import gapwise.evidence.Design;
import gapwise.evidence.ExtractionStatus;
import gapwise.evidence.LengthRange;
import gapwise.evidence.Method;
import gapwise.evidence.Outcome;
import gapwise.problem.WrongInputException;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.selection.Question;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * A question as the part {@code source.evidence} of a plan, and back: {@code outcome}, {@code
 * methods}, {@code bones}, {@code segments}, {@code infected}, {@code designs}, {@code text},
 * {@code defectLengthFromCentimetres}, {@code defectLengthToCentimetres}, {@code defectMatch},
 * {@code yearFrom}, {@code yearTo}, {@code clock}, {@code minimumPatients}, {@code status}.
 */
public final class EvidenceSource {
  private EvidenceSource() {}

  /** The question as JSON; what does not narrow is left out. */
  public static ObjectNode write(Question question) {
    SearchRequest among = question.among();
    ObjectNode json = JsonNodeFactory.instance.objectNode();
    json.put("outcome", question.outcome().code());
    codes(json, "methods", among.methods());
    codes(json, "bones", among.bones().stream().map(Coded::code).toList());
    codes(json, "segments", among.segments());
    codes(json, "infected", among.infected().stream().map(Coded::code).toList());
    codes(json, "designs", among.designs().stream().map(Coded::code).toList());
    if (!among.text().isEmpty()) {
      json.put("text", among.text());
    }
    among.defect().ifPresent(range -> defect(json, range, among.defectMatch()));
    among.yearFrom().ifPresent(year -> json.put("yearFrom", year));
    among.yearTo().ifPresent(year -> json.put("yearTo", year));
    question.clock().ifPresent(clock -> json.put("clock", clock.code()));
    json.put("minimumPatients", question.minimumPatients());
    question.leastStatus().ifPresent(status -> json.put("status", status.code()));
    return json;
  }

  private static void codes(ObjectNode json, String field, Collection<String> codes) {
    if (!codes.isEmpty()) {
      ArrayNode list = json.putArray(field);
      new TreeSet<>(codes).forEach(list::add);
    }
  }

  private static void defect(ObjectNode json, LengthRange range, DefectMatch match) {
    json.put("defectLengthFromCentimetres", range.fromCentimetres());
    if (Double.isFinite(range.toCentimetres())) {
      json.put("defectLengthToCentimetres", range.toCentimetres());
    }
    json.put("defectMatch", match == DefectMatch.CENTRE ? "centre" : "overlap");
  }

  /**
   * Reads a question.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static Question read(JsonNode json) {
    SelectionFields fields = new SelectionFields(json, "source.evidence");
    fields.known(
        List.of(
            "outcome",
            "methods",
            "bones",
            "segments",
            "infected",
            "designs",
            "text",
            "defectLengthFromCentimetres",
            "defectLengthToCentimetres",
            "defectMatch",
            "yearFrom",
            "yearTo",
            "clock",
            "minimumPatients",
            "status",
            "subgroup"));
    Optional<Outcome> outcome = fields.word("outcome", Outcome.vocabulary());
    if (outcome.isEmpty() && !json.hasNonNull("outcome")) {
      fields.wrong(
          "outcome",
          "missing-field",
          "an outcome is needed, one of " + Outcome.vocabulary().codes());
    }
    SearchRequest among =
        new SearchRequest(
            fields.text("text").orElse(""),
            fields.words("methods", Method.vocabulary()),
            fields.constants("bones", Bone.class),
            fields.texts("segments"),
            fields.constants("infected", Answer.class),
            fields.constants("designs", Design.class),
            Set.of(),
            fields.year("yearFrom"),
            fields.year("yearTo"),
            defect(fields),
            match(fields));
    Optional<Clock> clock = fields.constant("clock", Clock.class);
    int minimum =
        fields.whole("minimumPatients", 1, 1_000_000).orElse(Question.USUAL_MINIMUM_PATIENTS);
    Optional<ExtractionStatus> status = fields.constant("status", ExtractionStatus.class);
    fields.throwIfWrong();
    return new Question(outcome.orElseThrow(), among, clock, minimum, status);
  }

  private static Optional<LengthRange> defect(SelectionFields fields) {
    if (!fields.has("defectLengthFromCentimetres") && !fields.has("defectLengthToCentimetres")) {
      return Optional.empty();
    }
    double from = fields.length("defectLengthFromCentimetres").orElse(0);
    double to = fields.length("defectLengthToCentimetres").orElse(Double.POSITIVE_INFINITY);
    if (from > to) {
      fields.wrong(
          "defectLengthToCentimetres",
          "range-backwards",
          "found " + from + " to " + to + " cm, expected the shorter length first");
      return Optional.empty();
    }
    return Optional.of(new LengthRange(from, to));
  }

  private static DefectMatch match(SelectionFields fields) {
    Optional<String> text = fields.text("defectMatch");
    if (text.isEmpty() || text.get().equals("overlap")) {
      return DefectMatch.OVERLAP;
    }
    if (!text.get().equals("centre")) {
      fields.unknown("defectMatch", text.get(), "overlap, centre");
    }
    return DefectMatch.CENTRE;
  }
}
