package gapwise.answer;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.DetailKind;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.figure.value.Shown;
import gapwise.search.SearchRequest;
import gapwise.selection.Conversions;
import gapwise.selection.Question;
import gapwise.selection.Question.SuspectedOverlap;
import gapwise.selection.UnstatedClock;
import gapwise.wording.Defects;
import gapwise.wording.FollowUps;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A question in words: outcome, then among whom. */
public final class QuestionWords {
  private QuestionWords() {}

  /** Such as "Final union after bone transport, missing bone 5 to 8 cm, infected at the start". */
  public static String of(Question question) {
    String after = methods(question.among());
    String outcome = question.outcome().label();
    String start =
        after.isEmpty()
            ? outcome
            : say(
                outcome.contains(", ") ? "answer.outcome-of-parts-after" : "answer.outcome-after",
                Map.of("outcome", outcome, "methods", after));
    return among(question)
        .map(among -> say("answer.outcome-among", Map.of("outcome", start, "among", among)))
        .orElse(start);
  }

  /** Among whom alone, without methods; empty where nothing narrows. */
  public static Optional<String> among(Question question) {
    SearchRequest among = question.among();
    List<String> parts = new ArrayList<>();
    length(among).ifPresent(parts::add);
    if (among.followUpFrom().isPresent()) {
      parts.add(FollowUps.atLeast(among.followUpFrom().getAsDouble()));
    }
    add(parts, among.bones().stream().sorted().map(Bone::label).toList());
    add(parts, among.segments().stream().sorted().map(Segments::name).toList());
    among.infected().stream().sorted().map(QuestionWords::infected).forEach(parts::add);
    add(parts, among.designs().stream().sorted().map(Design::label).toList());
    risks(among).ifPresent(parts::add);
    details(among).forEach(parts::add);
    if (!among.text().isEmpty()) {
      parts.add(say("answer.among-text", Map.of("text", among.text())));
    }
    question.definition().ifPresent(asked -> parts.add(asked.phrase()));
    if (question.unstatedClock().equals(Optional.of(UnstatedClock.LEAVE_OUT))
        && question.outcome().needsClock()) {
      parts.add(say("answer.among-clock-stated"));
    }
    if (question.conversions() == Conversions.NONE && question.outcome().isMeasured()) {
      parts.add(say("answer.among-as-printed"));
    }
    question
        .leastStatus()
        .ifPresent(
            status ->
                parts.add(
                    status == ExtractionStatus.AGREED
                        ? say("answer.among-agreed")
                        : say("answer.among-status", Map.of("status", status.label()))));
    if (question.suspectedOverlap() == SuspectedOverlap.LEAVE_OUT) {
      parts.add(say("answer.among-without-suspected"));
    }
    among
        .years()
        .from()
        .ifPresent(
            year -> parts.add(say("answer.among-year-from", Map.of("year", String.valueOf(year)))));
    among
        .years()
        .to()
        .ifPresent(
            year -> parts.add(say("answer.among-year-to", Map.of("year", String.valueOf(year)))));
    return parts.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", parts));
  }

  /**
   * The missing length asked for, with whether groups reach into it or have their middle in it, so
   * that neither is taken for the other; empty where none is asked for.
   */
  public static Optional<String> length(SearchRequest among) {
    Optional<String> range = among.defect().map(Defects::range);
    return switch (among.defectMatch()) {
      case OVERLAP -> among.defect().map(QuestionWords::reaching);
      case CENTRE -> range.map(r -> say("answer.among-middle", Map.of("length", r)));
      case NO_CENTRE -> Optional.of(say("answer.among-no-centre"));
      case ONE_SIDED ->
          Optional.of(
              range
                  .map(r -> say("answer.among-one-end-perhaps", Map.of("length", r)))
                  .orElseGet(() -> say("answer.among-one-end")));
      case UNKNOWN -> Optional.of(say("answer.among-unknown"));
    };
  }

  private static String reaching(LengthRange range) {
    boolean fromNothing = range.fromCentimetres() == 0;
    boolean withoutEnd = Double.isInfinite(range.toCentimetres());
    if (withoutEnd && !fromNothing) {
      String from = Shown.centimetres(range.fromCentimetres());
      return say("answer.among-reaching-from", Map.of("from", from));
    }
    if (fromNothing && !withoutEnd && range.toCentimetres() > 0) {
      String to = Shown.centimetres(range.toCentimetres());
      return say("answer.among-reaching-to", Map.of("to", to));
    }
    return say("answer.among-reaching", Map.of("length", Defects.range(range)));
  }

  /** Each detail once, with the words asked of it: "ring or hexapod (fixation)". */
  private static List<String> details(SearchRequest among) {
    List<String> told = new ArrayList<>();
    for (DetailKind kind : DetailKind.ofMethods().all()) {
      List<String> words =
          MethodDetail.all().stream()
              .filter(one -> one.kind().equals(kind) && among.details().contains(one))
              .map(MethodDetail::word)
              .toList();
      if (!words.isEmpty()) {
        told.add(String.join(" or ", words) + " (" + kind.shortLabel() + ")");
      }
    }
    return told;
  }

  private static Optional<String> risks(SearchRequest among) {
    if (among.risks().equals(Risk.neitherSeriousNorCritical())) {
      return Optional.of(say("answer.among-not-at-high-risk"));
    }
    String risks =
        among.risks().stream().sorted().map(Risk::shortLabel).collect(Collectors.joining(" or "));
    return risks.isEmpty()
        ? Optional.empty()
        : Optional.of(say("answer.among-risk", Map.of("risks", risks)));
  }

  private static void add(List<String> parts, List<String> alternatives) {
    if (!alternatives.isEmpty()) {
      parts.add(String.join(" or ", alternatives));
    }
  }

  private static String methods(SearchRequest among) {
    List<Method> all = Method.vocabulary().all();
    return among.methods().stream()
        .flatMap(code -> Method.vocabulary().find(code).stream())
        .sorted(Comparator.comparingInt(all::indexOf))
        .map(method -> method.shortLabel().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(" or "));
  }

  private static String infected(YesOrNo answer) {
    return switch (answer) {
      case YES -> say("answer.among-infected");
      case NO -> say("answer.among-not-infected");
      case MIXED -> say("answer.among-some-infected");
      case UNCLEAR -> say("answer.among-infection-unclear");
    };
  }
}
