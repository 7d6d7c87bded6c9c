package gapwise.report;

import gapwise.analysis.pooling.ExactModels;
import gapwise.analysis.result.Result;
import gapwise.analysis.synthesis.SynthesisDefaults;
import gapwise.effect.Measures;
import java.util.Map;
import java.util.Set;

/** What one row says, and what was done before it could say it. */
final class MeasureWords {
  private static final String ODDS = "odds-ratio";

  private static final Set<String> RATIOS =
      Set.of(ODDS, "risk-ratio", "ratio-of-means", "incidence-rate-ratio");

  private static final Set<String> DIFFERENCES =
      Set.of("risk-difference", "mean-difference", "standardised-mean-difference");

  private final Telling telling;
  private final Settings settings;
  private final Result result;

  MeasureWords(Telling telling, Settings settings, Result result) {
    this.telling = telling;
    this.settings = settings;
    this.result = result;
  }

  /** All of it, for a synthesis. */
  void tell() {
    String measure = settings.word("measure");
    String scale = scale();
    measured("measure." + measure + "." + scale);
    options();
    if (scale.equals("double-arcsine")) {
      backTransform();
    }
    if (ExactModels.areCounts(settings.plan())) {
      telling.say("exact.cells");
    } else if (!settings.is("pooling", "mantel-haenszel") && !settings.is("pooling", "peto")) {
      emptyCells();
    }
    uninformative();
  }

  /** What stays the same where scale and rules for empty cells are varied. */
  void varied() {
    String measure = settings.word("measure");
    boolean several = Measures.scales(measure).size() > 1;
    measured(several ? "measure-on-scales." + measure : "measure." + measure + "." + scale());
    options();
  }

  private void measured(String sentence) {
    String measure = settings.word("measure");
    if (measure.equals("proportion")) {
      telling.say(sentence, Map.of("who", SelectionWords.counted(settings)));
    } else if (RATIOS.contains(measure) || DIFFERENCES.contains(measure)) {
      String kind = settings.is("model", "network") ? "compared-network." : "compared.";
      String how = RATIOS.contains(measure) ? "ratio" : "difference";
      telling.say(sentence, Map.of("compared", telling.phrase(kind + how)));
    } else {
      telling.say(sentence);
    }
  }

  /** The scale of the plan, or the only one that its measure has. */
  String scale() {
    return settings.has("scale")
        ? settings.word("scale")
        : Measures.scales(settings.word("measure")).get(0);
  }

  /** What a measure asks beside its scale. */
  void options() {
    String measure = settings.word("measure");
    if (measure.equals("reported-effect")) {
      telling.say("reported." + settings.word("reportedAs"));
      telling.say(
          "limits.level", Map.of("percent", Settings.percent(settings.part("limitsLevel"))));
    }
    if (measure.equals("standardised-mean-difference")) {
      telling.say("small-sample." + settings.word("smallSampleCorrection"));
      telling.say("variance." + settings.word("standardisedVariance"));
    }
  }

  private void backTransform() {
    if (settings.is("backTransformN", "harmonic-mean")) {
      telling.say("back.harmonic-mean");
    } else {
      telling.say("back.number", Map.of("patients", settings.number("backTransformN")));
    }
    if (settings.part("backTransformAlsoWith").size() > 0) {
      telling.say(
          "back.also", Map.of("list", Settings.numbers(settings.part("backTransformAlsoWith"))));
    }
  }

  private void emptyCells() {
    if (!SynthesisDefaults.usesContinuityCorrection(settings.plan())) {
      return;
    }
    String tables = settings.part("continuityCorrection").path("tables").asText();
    if (tables.equals("none")) {
      telling.say("cells.none");
      return;
    }
    telling.say(
        "cells." + tables,
        Map.of("amount", Settings.number(settings.part("continuityCorrection").path("amount"))));
    boolean happened =
        result.warnings().stream().anyMatch(one -> one.code().equals("zero-cells-corrected"));
    telling.say(happened ? "cells.happened" : "cells.not-needed");
  }

  private void uninformative() {
    if (SynthesisDefaults.comparesCounts(settings.plan())) {
      boolean odds = settings.is("measure", ODDS);
      telling.say(
          "uninformative." + settings.word("uninformativeStudies") + (odds ? "." + ODDS : ""));
    }
  }
}
