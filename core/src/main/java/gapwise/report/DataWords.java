package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import gapwise.analysis.network.NetworkAnswer;
import gapwise.analysis.network.NetworkResult;
import gapwise.analysis.result.Origin;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisResult;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Where the rows came from, how many there were, and which could not be used or were converted. */
final class DataWords {
  private static final JsonNode RAW = JsonNodeFactory.instance.textNode("raw");
  private static final String MISSING = "missing-value";

  /** Codes of warnings about a row that could not enter. */
  private static final List<String> LEFT_OUT =
      List.of(
          MISSING,
          "missing-standard-deviation",
          "mean-not-positive",
          "zero-variance",
          "too-few-patients",
          "study-left-out");

  /** Codes of warnings about a row that was listed and for which nothing could be worked out. */
  private static final List<String> NOT_POOLED = List.of("median-alone", "median-not-converted");

  private static final List<String> CONVERTED =
      List.of(
          "converted-from-median",
          "converted-from-standard-error",
          "converted-from-limits",
          "converted-from-quartiles",
          "converted-from-range",
          "converted-from-t-statistic",
          "converted-from-p-value",
          "converted-from-p-value-of-effect",
          "patients-of-the-arm-taken");

  private final Telling telling;
  private final Settings settings;
  private final Result result;
  private final List<Result.Study> rows;

  DataWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.result = result;
    this.rows =
        result
            .part(NetworkAnswer.class)
            .map(NetworkAnswer::studies)
            .orElseGet(() -> SynthesisResult.of(result).studies());
  }

  /** The source of the rows. */
  void source() {
    if (Origin.selects(settings.plan())) {
      new SelectionWords(telling, settings).tell();
    } else if (settings.has("source")) {
      telling.say(settings.part("source").has("table") ? "data.table" : "data.rows");
    }
  }

  /** Rows of a synthesis: how many, of how many, and what became of them. */
  void rowsOfStudies() {
    source();
    boolean selected = Origin.selects(settings.plan());
    // Reported effects have no arms: each row is one of a study.
    int all =
        rows.isEmpty() ? Math.max(result.data().arms(), result.data().studies()) : rows.size();
    telling.say(
        selected ? "data.groups" : "data.studies",
        Map.of("rows", all, "studies", result.data().studies()));
    people();
    unused();
    converted();
    if (!rows.isEmpty()) {
      leftOut();
    } else if (rowsWith(MISSING) > 0) {
      // Which other rows enter is another thing in each analysis.
      telling.say("left." + MISSING, Map.of("rows", rowsWith(MISSING)));
    }
  }

  /** How many rows of how many studies, where no row is pooled. */
  void counted() {
    telling.say(
        "data.studies", Map.of("rows", result.data().arms(), "studies", result.data().studies()));
    people();
  }

  /** The patients and events of all rows, where rows tell them. */
  void people() {
    OptionalDouble patients = result.data().participants();
    OptionalDouble events = result.data().events();
    String who = SelectionWords.counted(settings);
    if (patients.isPresent() && events.isPresent()) {
      telling.say(
          "data.participants-events",
          Map.of("patients", told(patients), "who", who, "events", told(events)));
    } else if (patients.isPresent()) {
      telling.say("data.participants", Map.of("patients", told(patients), "who", who));
    } else if (events.isPresent()) {
      telling.say("data.events", Map.of("events", told(events)));
    }
  }

  private static String told(OptionalDouble number) {
    return Settings.number(number.getAsDouble());
  }

  /** Reports that the selection found and did not use; they never became rows. */
  private void unused() {
    Set<String> labels = rows.stream().map(Result.Study::label).collect(Collectors.toSet());
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (Result.Warning warning : result.warnings()) {
      boolean ofReport =
          warning.studyId().isPresent() && !labels.contains(warning.study().orElse(""));
      if (ofReport && MethodSentences.has("unused." + warning.code())) {
        counts.merge(warning.code(), 1, Integer::sum);
      }
    }
    if (!counts.isEmpty()) {
      telling.say(
          "data.reports-unused",
          Map.of(
              "reports",
              counts.values().stream().mapToInt(Integer::intValue).sum(),
              "list",
              Settings.joinLong(
                  counts.entrySet().stream()
                      .map(e -> e.getValue() + " " + telling.phrase("unused." + e.getKey())))));
    }
  }

  private long rowsWith(String code) {
    Set<String> labels = rows.stream().map(Result.Study::label).collect(Collectors.toSet());
    return result.warnings().stream()
        .filter(warning -> warning.code().equals(code))
        .filter(warning -> rows.isEmpty() || warning.study().filter(labels::contains).isPresent())
        .count();
  }

  private void converted() {
    for (String code : CONVERTED) {
      long count = rowsWith(code);
      if (count > 0) {
        telling.say("converted." + code, Map.of("rows", count));
      }
    }
    if (settings.has("correlation") && takesChanges()) {
      telling.say("converted.correlation", Map.of("correlation", settings.number("correlation")));
    }
  }

  /** Whether a row may be a change in the same patients. */
  private boolean takesChanges() {
    boolean raw =
        settings.is("scale", "raw")
            || settings.part("vary").path("scale").valueStream().anyMatch(RAW::equals);
    return settings.is("measure", "mean-difference") || (settings.is("measure", "mean") && raw);
  }

  private void leftOut() {
    for (String code : NOT_POOLED) {
      long count = rowsWith(code);
      if (count > 0) {
        telling.say("left." + code, Map.of("rows", count));
      }
    }
    for (String code : LEFT_OUT) {
      long count = rowsWith(code);
      if (count > 0) {
        telling.say("left." + code, Map.of("rows", count));
      }
    }
    int analysed = analysed();
    if (analysed == 0) {
      telling.say("data.analysed-none");
    } else if (analysed == rows.size()) {
      telling.say("data.analysed-all", Map.of("rows", analysed));
    } else {
      telling.say("data.analysed", Map.of("rows", analysed));
    }
  }

  /** How many rows entered: those with a weight, or those that no warning leaves out. */
  int analysed() {
    Optional<NetworkAnswer> network = result.part(NetworkAnswer.class);
    if (network.isPresent()) {
      return network.get().network().map(this::analysed).orElse(0);
    }
    long weighed = rows.stream().filter(row -> row.weightPercent().isPresent()).count();
    return weighed > 0
        ? (int) weighed
        : rows.size() - (int) LEFT_OUT.stream().mapToLong(this::rowsWith).sum();
  }

  /** The rows of a network are arms, or else contrasts. */
  private int analysed(NetworkResult network) {
    return settings.is("measure", "reported-effect")
        ? network.comparisons().stream().mapToInt(NetworkResult.Edge::studies).sum()
        : network.nodes().stream().mapToInt(NetworkResult.Node::studies).sum();
  }
}
