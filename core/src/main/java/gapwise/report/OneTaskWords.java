package gapwise.report;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.patients.PatientsAnswer;
import gapwise.analysis.patients.PatientsResult;
import gapwise.analysis.result.Result;
import gapwise.analysis.trial.TrialResult;
import java.util.List;
import java.util.Map;

/** The tasks of which a few sentences say all: intervals, medians, agreement, patients, trials. */
final class OneTaskWords {
  private final Telling telling;
  private final Settings settings;
  private final Result result;

  OneTaskWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.result = result;
  }

  /** Intervals of single rows. */
  void interval() {
    telling.say(
        "single.interval",
        Map.of(
            "percent", settings.percent(),
            "measure", telling.phrase("single." + settings.word("measure")),
            "list", phrases("method.", settings.words("methods"))));
    telling.say("single.no-pooling");
    if (settings.flag("pooledCounts")) {
      telling.say("single.pooled");
    }
  }

  /** Means from medians. */
  void convert() {
    telling.say("convert", Map.of("list", phrases("convert.", settings.words("methods"))));
    telling.say("single.no-pooling");
  }

  private String phrases(String kind, List<String> words) {
    return Settings.joinLong(words.stream().map(word -> telling.phrase(kind + word)));
  }

  /** Agreement of raters. */
  void agreement() {
    List<String> asked = settings.words("statistics");
    if (asked.contains("kappa")) {
      telling.say("agreement.kappa");
      telling.say("agreement.categories", Map.of("list", quoted(settings.words("categories"))));
      telling.say(
          "agreement.weights",
          Map.of(
              "list", Settings.joinLong(settings.part("weights").valueStream().map(this::weight))));
      telling.say("agreement.kappa-error", Map.of("percent", settings.percent()));
    }
    if (asked.contains("intraclass-correlation") || asked.contains("limits-of-agreement")) {
      telling.say("agreement.raters", Map.of("list", quoted(settings.words("raters"))));
    }
    if (asked.contains("intraclass-correlation")) {
      telling.say("agreement.intraclass-correlation", Map.of("percent", settings.percent()));
    }
    if (asked.contains("limits-of-agreement")) {
      telling.say(
          "agreement.limits-of-agreement", Map.of("multiplier", settings.number("multiplier")));
    }
  }

  private String weight(JsonNode asked) {
    return asked.isTextual()
        ? telling.phrase("weights." + asked.asText())
        : telling.phrase("weights.table", Map.of("table", asked.get("disagreement").toString()));
  }

  private static String quoted(List<String> words) {
    return Settings.join(words.stream().map(word -> "\"" + word + "\""));
  }

  /** Patients one by one with summaries of arms. */
  void patients() {
    telling.say("patients." + settings.word("measure"));
    if (settings.is("measure", "mean")) {
      telling.say("patients.scale." + settings.word("scale"));
    }
    happened("converted-to-log-scale", "patients.converted");
    happened("spread-within-arm-ignored", "patients.no-spread");
    telling.say(
        "patients.estimator",
        Map.of("estimator", telling.phrase("estimate." + settings.word("betweenStudyVariance"))));
    if (settings.is("measure", "proportion")) {
      PoolingWords.points(telling, settings);
    }
    telling.say("patients.centre", Map.of("centre", settings.number("centre")));
    telling.say("patients.limits", Map.of("percent", settings.percent()));
    result.part(PatientsAnswer.class).map(PatientsAnswer::patients).ifPresent(this::counted);
  }

  private void counted(PatientsResult made) {
    telling.say(
        "patients.counts",
        Map.of(
            "patients", made.patients(),
            "studies", made.studiesWithPatients(),
            "others", made.studiesWithSummariesOnly()));
  }

  private void happened(String code, String sentence) {
    if (result.warnings().stream().anyMatch(one -> one.code().equals(code))) {
      telling.say(sentence);
    }
  }

  /** How many patients a trial needs. */
  void trial() {
    boolean mean = settings.is("measure", "mean");
    telling.say(
        "trial." + settings.word("measure") + (mean ? "." + settings.word("scale") : ""),
        Map.of(
            "comparator", settings.number("comparator"),
            "intervention", settings.number("intervention"),
            "power", Settings.percent(settings.part("power")),
            "significance", Settings.restPercent(settings.part("level"))));
    result.part(TrialResult.class).ifPresent(made -> found(made, mean));
  }

  private void found(TrialResult made, boolean mean) {
    if (made.basis().equals("exact-test")) {
      telling.say("trial.exact-test");
    } else {
      telling.say(mean ? "trial.formula-mean" : "trial.formula-proportion");
    }
    if (made.patientsPerArmWithContinuityCorrection().isPresent()) {
      telling.say("trial.continuity");
    }
    if (settings.has("standardDeviation")) {
      telling.say("trial.spread-given", Map.of("spread", settings.number("standardDeviation")));
    } else if (made.groupsWithSpread().isPresent()) {
      telling.say("trial.spread-found", Map.of("groups", made.groupsWithSpread().getAsInt()));
    }
  }
}
