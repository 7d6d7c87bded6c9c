package gapwise.figure;

import gapwise.analysis.Result;
import gapwise.evidence.CountedUnit;
import gapwise.evidence.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A result in sentences. Page and figure take them from here, and numbers from {@link Shown}, so
 * they never say two things.
 */
public final class ResultWords {
  /** Stands wherever results stand. */
  public static final String CAUTION =
      "Supports a discussion, not advice; licensed surgeons and local protocols decide.";

  /** Stands wherever groups of patients of different methods stand side by side. */
  public static final String NO_COMPARISON =
      "These are separate groups of patients, not a comparison: missing bone, infection, follow-up"
          + " and choice of patients differ between them.";

  private final Optional<Outcome> outcome;
  private final Result result;
  private final List<SeriesFacts> facts;
  private final Measure measure;

  private ResultWords(Optional<Outcome> outcome, Result result, List<SeriesFacts> facts) {
    this.outcome = outcome;
    this.result = result;
    this.facts = facts;
    String unit = outcome.flatMap(Outcome::unit).map(u -> u.symbol()).orElse("");
    this.measure = ModelWords.measure(result.plan(), unit);
  }

  static ResultWords of(Outcome outcome, Result result, List<SeriesFacts> facts) {
    return new ResultWords(Optional.of(outcome), result, facts);
  }

  static ResultWords of(Result result, List<SeriesFacts> facts) {
    return new ResultWords(Optional.empty(), result, facts);
  }

  Heading heading() {
    String title = outcome.map(this::title).orElse(result.plan().path("title").asText("Result"));
    boolean events = outcome.map(Outcome::isEvent).orElse(false);
    return new Heading(
        title.isBlank() ? "Result" : title,
        sentences(),
        events ? "Events" : "Patients",
        "Estimate (" + ModelWords.percent(result.plan()) + ")");
  }

  private String title(Outcome of) {
    String unit = of.unit().map(u -> ", " + u.symbol()).orElse("");
    return of.label() + (of.isEvent() ? ", of 100" : unit);
  }

  /** The result first, then how far studies differ, then what it is not. */
  List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    List<String> blocks = facts.stream().map(SeriesFacts::block).distinct().toList();
    if (result.subgroups().isPresent()) {
      for (Result.Subgroup group : result.subgroups().get()) {
        group
            .summary()
            .filter(summary -> group.studies() > 1)
            .ifPresent(summary -> sentences.add(pooled(group.level() + ": about ", summary)));
      }
    } else {
      result.summary().ifPresent(summary -> sentences.add(pooled("About ", summary)));
    }
    if (sentences.isEmpty()) {
      sentences.add("There are too few series to pool; each stands for itself.");
    }
    if (blocks.size() == 1) {
      heterogeneity().ifPresent(sentences::add);
    } else {
      sentences.add(NO_COMPARISON);
    }
    return sentences;
  }

  private String pooled(String opening, Result.Summary summary) {
    Result.Shown shown = summary.shown();
    StringBuilder words = new StringBuilder(opening);
    words.append(
        Shown.estimate(measure, Estimate.of(shown.estimate(), shown.lower(), shown.upper())));
    words.append(unitWords()).append('.');
    if (shown.predictionLower().isPresent() && shown.predictionUpper().isPresent()) {
      Limits limits =
          new Limits(shown.predictionLower().getAsDouble(), shown.predictionUpper().getAsDouble());
      words.append(" A new centre could see ").append(Shown.limits(measure, limits)).append('.');
    } else {
      words.append(" Too few series to say what a new centre could see.");
    }
    return words.toString();
  }

  private String unitWords() {
    if (measure.kind() == Measure.Kind.OF_100) {
      return " of 100" + outcome.flatMap(Outcome::happened).map(words -> " " + words).orElse("");
    }
    return measure.unit().isBlank() ? "" : " " + measure.unit();
  }

  private Optional<String> heterogeneity() {
    return result
        .heterogeneity()
        .filter(h -> h.pValue().isPresent() && h.degreesOfFreedom().isPresent())
        .map(
            h ->
                h.pValue().getAsDouble() < 0.1
                    ? "Results of studies differ more than chance explains."
                    : "Results of studies differ no more than chance could explain, which with few"
                        + " studies is weak reassurance.");
  }

  String towardsMore() {
    return outcome.flatMap(Outcome::happened).map(words -> "more " + words).orElse("");
  }

  String towardsLess() {
    return outcome.flatMap(Outcome::happened).map(words -> "fewer " + words).orElse("");
  }

  /** "212 limbs", or "212 patients or limbs" where series count both ways. */
  String participants(List<SeriesFacts> series) {
    int sum = series.stream().mapToInt(one -> one.participants().orElse(0)).sum();
    Set<CountedUnit> counted =
        series.stream().flatMap(one -> one.counted().stream()).collect(Collectors.toSet());
    if (sum == 0) {
      return "";
    }
    String unit = counted.size() == 1 ? counted.iterator().next().label() : "patients or limbs";
    return sum + " " + unit;
  }
}
