package gapwise.report;

import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.problem.Problems;
import gapwise.search.SearchRequest;
import gapwise.selection.Conversions;
import gapwise.selection.CountedAs;
import gapwise.selection.Question;
import gapwise.selection.Question.SuspectedOverlap;
import gapwise.selection.QuestionJson;
import gapwise.selection.UnstatedClock;
import gapwise.wording.Segments;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** The question that a plan asks of the evidence base: one sentence for each thing it asks. */
final class SelectionWords {
  private final Telling telling;
  private final Question question;

  SelectionWords(Telling telling, Settings settings) {
    this.telling = telling;
    this.question =
        QuestionJson.read(settings.part("source").path("evidence"), new Problems()).orElseThrow();
  }

  /** Whom the rows of a plan count: "limbs" where an outcome of the evidence base says so. */
  static String counted(Settings settings) {
    String outcome = settings.part("source").path("evidence").path("outcome").asText();
    return Outcome.vocabulary()
        .find(outcome)
        .flatMap(Outcome::event)
        .map(Outcome.Event::counted)
        .orElse("patients");
  }

  void tell() {
    SearchRequest among = question.among();
    telling.say("select.outcome", Map.of("outcome", question.outcome().label()));
    question
        .definition()
        .ifPresent(asked -> telling.say("select.definition", Map.of("definition", asked.phrase())));
    methods(among);
    length(among);
    list("select.bones", labels(among.bones().stream().sorted()));
    list("select.segments", among.segments().stream().sorted().map(Segments::name).toList());
    list("select.details", labels(among.details().stream()).stream().sorted().toList());
    list(
        "select.infected",
        among.infected().stream()
            .sorted()
            .map(one -> telling.phrase("infected." + one.name().toLowerCase(Locale.ROOT)))
            .toList());
    list("select.designs", labels(among.designs().stream().sorted()));
    list("select.risks", among.risks().stream().sorted().map(Risk::shortLabel).toList());
    among
        .years()
        .from()
        .ifPresent(year -> telling.say("select.years-from", Map.of("year", "" + year)));
    among.years().to().ifPresent(year -> telling.say("select.years-to", Map.of("year", "" + year)));
    among
        .followUpFrom()
        .ifPresent(
            months -> telling.say("select.follow-up", Map.of("months", Settings.number(months))));
    question
        .leastStatus()
        .ifPresent(status -> telling.say("select.status", Map.of("status", status.label())));
    if (!among.text().isEmpty()) {
      telling.say("select.text", Map.of("text", among.text()));
    }
    clock();
    numbers();
    if (question.suspectedOverlap() == SuspectedOverlap.LEAVE_OUT) {
      telling.say("select.without-suspected-overlap");
    }
    telling.say("select.minimum", Map.of("patients", question.minimumPatients()));
  }

  private void methods(SearchRequest among) {
    List<Method> all = Method.vocabulary().all();
    if (among.methods().isEmpty()) {
      telling.say("select.no-methods");
    } else {
      telling.say(
          "select.methods",
          Map.of(
              "methods",
              String.join(
                  " or ",
                  all.stream()
                      .filter(method -> among.methods().contains(method.code()))
                      .map(method -> method.shortLabel().toLowerCase(Locale.ROOT))
                      .toList())));
    }
  }

  private void length(SearchRequest among) {
    String match = among.defectMatch().name().toLowerCase(Locale.ROOT).replace('_', '-');
    switch (among.defectMatch()) {
      case OVERLAP, CENTRE -> {
        if (among.defect().isPresent()) {
          telling.say("select." + match, Map.of("length", range(among)));
        }
      }
      case ONE_SIDED -> {
        if (among.defect().isPresent()) {
          telling.say("select.one-sided-within", Map.of("length", range(among)));
        } else {
          telling.say("select.one-sided");
        }
      }
      case NO_CENTRE, UNKNOWN -> telling.say("select." + match);
    }
  }

  private static String range(SearchRequest among) {
    double from = among.defect().orElseThrow().fromCentimetres();
    double to = among.defect().orElseThrow().toCentimetres();
    return Double.isInfinite(to)
        ? Settings.number(from) + " cm and more"
        : Settings.number(from) + " to " + Settings.number(to) + " cm";
  }

  /** Clocks have a bearing on outcomes that are times alone. */
  private void clock() {
    if (!question.outcome().needsClock()) {
      return;
    }
    question
        .clock()
        .ifPresentOrElse(
            clock -> telling.say("select.clock", Map.of("clock", clock.label())),
            () -> telling.say("select.clock-usual"));
    telling.say(
        question
            .unstatedClock()
            .map(
                rule ->
                    rule == UnstatedClock.KEEP
                        ? "select.unstated-keep"
                        : "select.unstated-leave-out")
            .orElse("select.unstated-usual"));
  }

  private void numbers() {
    question
        .countedAs()
        .ifPresent(
            form ->
                telling.say(
                    form == CountedAs.MEANS ? "select.counted-means" : "select.counted-events"));
    if (question.outcome().isMeasured()) {
      telling.say(
          question.conversions() == Conversions.NONE
              ? "select.conversions-none"
              : "select.conversions-all");
    }
  }

  private void list(String sentence, List<String> words) {
    if (!words.isEmpty()) {
      telling.say(sentence, Map.of("list", String.join(", ", words)));
    }
  }

  private static List<String> labels(Stream<? extends Coded> coded) {
    return coded.map(Coded::label).toList();
  }
}
