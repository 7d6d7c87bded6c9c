package gapwise.selection;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problems;
import gapwise.search.HowMade;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.search.YearRange;
import gapwise.selection.Question.SuspectedOverlap;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A question as the {@code evidence} part of a plan's {@code source}, and back. What is left out of
 * the text does not narrow; {@code infected} is one word or a list of words.
 */
public final class QuestionJson {
  /** Where the part stands in a plan; problems name the field under it. */
  private static final String WHERE = "source.evidence";

  private static final String OUTCOME = "outcome";
  private static final String METHODS = "methods";
  private static final String FROM = "defectLengthFromCentimetres";
  private static final String TO = "defectLengthToCentimetres";
  private static final String MATCH = "defectMatch";
  private static final String BONES = "bones";
  private static final String SEGMENTS = "segments";
  private static final String INFECTED = "infected";
  private static final String DESIGNS = "designs";
  private static final String RISKS = "risks";
  private static final String DETAILS = "details";
  private static final String YEAR_FROM = "yearFrom";
  private static final String YEAR_TO = "yearTo";
  private static final String FOLLOW_UP_FROM = "followUpFromMonths";
  private static final String STATUS = "status";
  private static final String TEXT = "text";
  private static final String CLOCK = "clock";
  private static final String UNSTATED_CLOCK = "unstatedClock";
  private static final String DEFINITION = "definition";
  private static final String CONVERSIONS = "conversions";
  private static final String COUNTED_AS = "countedAs";
  private static final String SUSPECTED_OVERLAP = "suspectedOverlap";
  private static final String MINIMUM_PATIENTS = "minimumPatients";
  private static final List<String> FIELDS =
      List.of(
          OUTCOME,
          METHODS,
          FROM,
          TO,
          MATCH,
          BONES,
          SEGMENTS,
          INFECTED,
          DESIGNS,
          RISKS,
          DETAILS,
          YEAR_FROM,
          YEAR_TO,
          FOLLOW_UP_FROM,
          STATUS,
          TEXT,
          CLOCK,
          UNSTATED_CLOCK,
          DEFINITION,
          CONVERSIONS,
          COUNTED_AS,
          SUSPECTED_OVERLAP,
          MINIMUM_PATIENTS);

  private QuestionJson() {}

  /** The question as JSON with every default filled in; what does not narrow is left out. */
  public static ObjectNode write(Question question) {
    SearchRequest among = question.among();
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put(OUTCOME, question.outcome().code());
    putAll(node, METHODS, among.methods());
    among.defect().ifPresent(range -> putRange(node, range));
    node.put(MATCH, word(among.defectMatch()));
    putAll(node, BONES, codes(among.bones()));
    putAll(node, SEGMENTS, among.segments());
    putAll(node, INFECTED, codes(among.infected()));
    putAll(node, DESIGNS, codes(among.designs()));
    putAll(node, RISKS, codes(among.risks()));
    putAll(node, DETAILS, codes(among.details()));
    among.years().from().ifPresent(year -> node.put(YEAR_FROM, year));
    among.years().to().ifPresent(year -> node.put(YEAR_TO, year));
    among.followUpFrom().ifPresent(months -> node.put(FOLLOW_UP_FROM, months));
    question.leastStatus().ifPresent(status -> node.put(STATUS, status.code()));
    if (!among.text().isBlank()) {
      node.put(TEXT, among.text());
    }
    question.clock().ifPresent(clock -> node.put(CLOCK, clock.code()));
    question.unstatedClock().ifPresent(rule -> node.put(UNSTATED_CLOCK, rule.code()));
    question.definition().ifPresent(asked -> node.put(DEFINITION, asked.code()));
    if (question.outcome().isMeasured() || question.conversions() != Conversions.ALL) {
      node.put(CONVERSIONS, question.conversions().code());
    }
    question.countedAs().ifPresent(form -> node.put(COUNTED_AS, form.code()));
    if (question.suspectedOverlap() != SuspectedOverlap.KEEP) {
      node.put(SUSPECTED_OVERLAP, question.suspectedOverlap().code());
    }
    return node.put(MINIMUM_PATIENTS, question.minimumPatients());
  }

  private static void putRange(ObjectNode node, LengthRange range) {
    node.put(FROM, range.fromCentimetres());
    if (Double.isFinite(range.toCentimetres())) {
      node.put(TO, range.toCentimetres());
    }
  }

  private static void putAll(ObjectNode node, String field, Collection<String> codes) {
    if (!codes.isEmpty()) {
      ArrayNode list = node.putArray(field);
      codes.stream().sorted().forEach(list::add);
    }
  }

  private static List<String> codes(Collection<? extends Coded> coded) {
    return coded.stream().map(Coded::code).toList();
  }

  private static String word(DefectMatch match) {
    return match.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Reads a question.
   *
   * @param problems takes everything that is wrong, each with its field, such as {@code
   *     source.evidence.methods[1]}
   * @return empty when something is wrong
   */
  public static Optional<Question> read(JsonNode node, Problems problems) {
    Problems found = new Problems();
    PlanFields fields = new PlanFields(node, WHERE, found);
    fields.requireOnly(FIELDS);
    Optional<Outcome> outcome = fields.vocabularyWord(OUTCOME, Outcome.vocabulary(), true);
    SearchRequest among =
        new SearchRequest(
            fields.text(TEXT),
            fields.vocabularyWords(METHODS, Method.vocabulary()),
            fields.words(BONES, Bone.class),
            fields.texts(SEGMENTS),
            fields.words(INFECTED, YesOrNo.class),
            new HowMade(fields.words(DESIGNS, Design.class), fields.words(RISKS, Risk.class)),
            Set.of(),
            fields.found(DETAILS, MethodDetail::find, MethodDetail.codes()),
            new YearRange(fields.integer(YEAR_FROM, 0), fields.integer(YEAR_TO, 0)),
            range(fields, found),
            match(fields),
            fields.notNegative(FOLLOW_UP_FROM, "a number of months"));
    checkYears(among, found);
    Optional<Clock> clock = fields.word(CLOCK, Clock.class);
    Optional<UnstatedClock> unstated = fields.word(UNSTATED_CLOCK, UnstatedClock.class);
    Optional<DefinitionAsked> definition =
        fields
            .oneOf(DEFINITION, DefinitionAsked.all().stream().map(Coded::code).toList())
            .flatMap(DefinitionAsked::find);
    Optional<ExtractionStatus> status = fields.word(STATUS, ExtractionStatus.class);
    Optional<Conversions> conversions = fields.word(CONVERSIONS, Conversions.class);
    Optional<CountedAs> countedAs = fields.word(COUNTED_AS, CountedAs.class);
    Optional<SuspectedOverlap> overlap = fields.word(SUSPECTED_OVERLAP, SuspectedOverlap.class);
    OptionalInt minimum = fields.integer(MINIMUM_PATIENTS, 1);
    problems.addAll(found.list());
    if (!found.isEmpty() || outcome.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Question(
            outcome.get(),
            among,
            clock,
            unstated,
            minimum.orElse(Question.USUAL_MINIMUM_PATIENTS),
            status,
            definition,
            conversions.orElse(Conversions.ALL),
            countedAs,
            overlap.orElse(SuspectedOverlap.KEEP)));
  }

  private static DefectMatch match(PlanFields fields) {
    List<String> words = Stream.of(DefectMatch.values()).map(QuestionJson::word).toList();
    return fields
        .oneOf(MATCH, words)
        .map(word -> DefectMatch.values()[words.indexOf(word)])
        .orElse(DefectMatch.OVERLAP);
  }

  private static Optional<LengthRange> range(PlanFields fields, Problems found) {
    OptionalDouble from = fields.length(FROM);
    OptionalDouble to = fields.length(TO);
    if (from.isEmpty() && to.isEmpty()) {
      return Optional.empty();
    }
    double low = from.orElse(0);
    double high = to.orElse(Double.POSITIVE_INFINITY);
    if (low > high) {
      found.add(
          WHERE + "." + TO,
          "range-ends-before-it-starts",
          "the range of missing length runs from "
              + low
              + " to "
              + high
              + " cm; give the shorter"
              + " length first");
      return Optional.empty();
    }
    return Optional.of(new LengthRange(low, high));
  }

  private static void checkYears(SearchRequest among, Problems found) {
    if (among.years().isBackwards()) {
      found.add(
          WHERE + "." + YEAR_TO,
          "range-ends-before-it-starts",
          "the years run from "
              + among.years().from().getAsInt()
              + " to "
              + among.years().to().getAsInt()
              + "; give the earlier year first");
    }
  }
}
