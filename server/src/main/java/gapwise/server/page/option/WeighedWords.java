package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.choice.WeighedMethods;
import gapwise.decision.choice.WeighingFigure;
import gapwise.decision.choice.WishWords;
import gapwise.decision.option.Column;
import gapwise.decision.weighing.Standing;
import gapwise.decision.weighing.Weighed;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Weighed methods in words. */
final class WeighedWords {
  /** Below this the numbers, not the wishes, leave a choice open; our choice. */
  private static final double LOW = 0.6;

  private static final double HUNDRED = 100;

  private WeighedWords() {}

  /** How many come first under some wishes, then the wishes and the ranges. */
  static List<String> told(WeighedMethods methods) {
    long some =
        methods.weighed().standings().stream().filter(one -> one.favour().isPresent()).count();
    List<String> told = new ArrayList<>();
    told.add(say("page.weighed", Map.of("methods", methods.methods().size(), "some", some)));
    told.addAll(WeighingFigure.sentences(methods));
    return told;
  }

  static List<WeighingView.Line> lines(WeighedMethods methods) {
    List<WeighingView.Line> lines = new ArrayList<>();
    for (int m = 0; m < methods.methods().size(); m++) {
      lines.add(line(methods, m));
    }
    return lines;
  }

  private static WeighingView.Line line(WeighedMethods methods, int m) {
    Weighed weighed = methods.weighed();
    Standing standing = weighed.standings().get(m);
    double first = Math.min(1, standing.first());
    return new WeighingView.Line(
        methods.methods().get(m),
        say(
            "page.comes-first",
            Map.of(
                "share", Shown.of100(first),
                "error", Shown.number(HUNDRED * weighed.error(first)))),
        standing
            .favour()
            .map(favour -> WishWords.weights(weighed, favour.weights()))
            .orElseGet(() -> say("page.under-no-wishes")),
        standing.favour().map(WeighedWords::sure).orElse(""),
        methods.behind(m).map(behind -> behind(methods, m, behind)).orElse(""),
        standing.ranks().stream().map(share -> Shown.of100(Math.min(1, share))).toList());
  }

  private static String sure(Standing.Favour favour) {
    String share = Shown.of100(Math.min(1, favour.confidence()));
    return favour.confidence() < LOW
        ? say("page.sure-low", Map.of("share", share))
        : say("page.sure", Map.of("share", share));
  }

  private static String behind(WeighedMethods methods, int m, WeighedMethods.Behind behind) {
    Column column = methods.columns().get(behind.outcome());
    return say(
        "page.behind",
        Map.of(
            "outcome",
            column.aspect().label(),
            "own",
            WishWords.number(column, methods.means().get(m).get(behind.outcome())),
            "other",
            methods.methods().get(behind.ahead()).shortLabel(),
            "others",
            WishWords.number(column, methods.means().get(behind.ahead()).get(behind.outcome()))));
  }

  /** What must be known of the draws. */
  static List<String> notes(WeighedMethods methods) {
    Weighed weighed = methods.weighed();
    List<String> notes = new ArrayList<>();
    notes.add(
        say(
            "page.weighing-draws",
            Map.of("draws", weighed.weighings(), "seed", Long.toString(methods.asked().seed()))));
    if (weighed.walked()) {
      notes.add(say("page.weighing-walked"));
    }
    for (Column column : methods.columns()) {
      Long cut = weighed.cuts().get(column.aspect().code());
      if (cut != null) {
        long all = (long) weighed.differentDraws() * methods.methods().size();
        notes.add(
            say(
                "page.weighing-cut",
                Map.of(
                    "outcome",
                    column.aspect().label(),
                    "share",
                    Shown.of100(Math.min(1, (double) cut / all)))));
      }
    }
    return notes;
  }
}
