package gapwise.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.analysis.rows.EnteringEffect;
import gapwise.evidence.ReportedValue;
import gapwise.figure.value.Shown;
import gapwise.selection.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What becomes of an effect that a paper prints without the numbers of its groups: no pooled page
 * takes it; a plan of reported effects would, with the standard error told here.
 */
final class UsedEffect {
  /** Kinds whose logarithm is analysed; anything else is taken as a difference. */
  private static final Pattern RATIO = Pattern.compile("\\bratio\\b|\\b(?:or|rr|hr|irr)\\b");

  private UsedEffect() {}

  static Noted of(DraftRow row, ReportedValue.Effect effect) {
    List<String> all = new ArrayList<>();
    all.add(Reason.Plain.DIFFERENCE.sentence());
    all.add(say("desk.used-effect-not-pooled"));
    boolean ratio = RATIO.matcher(effect.kind().toLowerCase(Locale.ROOT)).find();
    all.add(plan(ratio, EnteringEffect.of(effect, ratio)));
    return UsedBySynthesis.noted(
        row, Stream.of("effect_estimate", "effect_lower", "effect_upper", "effect_p"), all);
  }

  private static String plan(boolean ratio, EnteringEffect entering) {
    if (entering.standardError().isEmpty()) {
      return say("desk.used-effect-without-error");
    }
    Map<String, String> numbers =
        Map.of(
            "effect", Shown.number(entering.estimate().orElseThrow()),
            "error", Shown.number(entering.standardError().getAsDouble()));
    String source =
        entering.fromPValue()
            ? say("desk.used-effect-from-p")
            : say("desk.used-effect-from-limits");
    return say(ratio ? "desk.used-effect-ratio" : "desk.used-effect-difference", numbers)
        + " "
        + source
        + (entering.offCentre() ? " " + say("desk.used-effect-off-centre") : "");
  }
}
