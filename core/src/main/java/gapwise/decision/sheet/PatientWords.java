package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.certainty.CertaintyWords;
import gapwise.decision.certainty.Level;
import gapwise.decision.option.Cell;
import gapwise.decision.situation.Wish;
import gapwise.figure.array.HundredArray;
import gapwise.figure.value.Estimate;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Cells of a table in words for patients; each a whole sentence. */
final class PatientWords {
  private PatientWords() {}

  /** A share. */
  static ShareCell share(PlainOutcome outcome, Cell cell) {
    if (!(cell instanceof Cell.Known known)) {
      return ShareCell.without(why(cell));
    }
    Optional<Counted> counted = Counted.of(known.line());
    Optional<Estimate> value = Values.of(known).filter(Estimate::intervalKnown);
    Level level = known.certainty().rating().level();
    if (counted.isPresent() && counted.get().events() == 0) {
      return none(counted.get(), value, level);
    }
    if (value.isEmpty()) {
      return new ShareCell(
          sentence(say("sheet.reported", Map.of("counted", known.line().counted()))),
          "",
          Optional.empty(),
          Optional.of(level),
          "");
    }
    return known(outcome, value.get(), counted, level);
  }

  private static ShareCell known(
      PlainOutcome outcome, Estimate value, Optional<Counted> counted, Level level) {
    HundredArray array = HundredArray.of(value);
    String number = say("sheet.of-hundred", Map.of("number", Whole.of100(value.value())));
    String told =
        counted.filter(one -> level == Level.VERY_LOW).map(PatientWords::of).orElse(number);
    return new ShareCell(
        sentence(CertaintyWords.rate(level, told, outcome.such())),
        say(
            "sheet.range",
            Map.of(
                "rest",
                Whole.of100(1 - value.value()),
                "other",
                outcome.other(),
                "lower",
                Whole.of100(value.lower()),
                "upper",
                Whole.of100(value.upper()))),
        Optional.of(array),
        Optional.of(level),
        alternative(outcome.head(), number, array));
  }

  private static String of(Counted counted) {
    return say(
        "sheet.counted",
        Map.of("events", counted.events(), "total", Integer.toString(counted.total())));
  }

  /** Nobody had it: what still fits with that. */
  private static ShareCell none(Counted counted, Optional<Estimate> value, Level level) {
    double upper =
        value.map(Estimate::upper).orElseGet(() -> Counted.upperLimitOfNone(counted.total()));
    HundredArray array = new HundredArray(0, (int) Math.round(upper * 100), 0);
    String none =
        say(
            "sheet.none",
            Map.of("total", Integer.toString(counted.total()), "upper", Whole.of100(upper)));
    return new ShareCell(
        sentence(none),
        "",
        Optional.of(array),
        Optional.of(level),
        alternative(none, say("sheet.of-hundred", Map.of("number", "0")), array));
  }

  private static String alternative(String head, String number, HundredArray array) {
    return say(
        "sheet.array",
        Map.of(
            "head", head,
            "number", number,
            "filled", Integer.toString(array.filled()),
            "hatched", Integer.toString(array.hatched()),
            "empty", Integer.toString(array.empty())));
  }

  /** Why a cell has no number, in a sentence. */
  static String why(Cell cell) {
    if (cell instanceof Cell.NotCounted not) {
      return sentence(say("decision.not-counted", Map.of("studies", not.studies())));
    }
    if (cell instanceof Cell.NoStudy) {
      return sentence(say("sheet.no-study"));
    }
    return cell instanceof Cell.DoesNotApply
        ? sentence(say("decision.does-not-apply"))
        : sentence(say("sheet.not-usable"));
  }

  /** Months in a frame. */
  static String frame(Cell cell) {
    if (cell instanceof Cell.DoesNotApply) {
      return say("sheet.no-frame");
    }
    return months(cell, say("sheet.in-frame"))
        .orElseGet(() -> say("sheet.frame", Map.of("why", noMonths(cell))));
  }

  /** Months until the leg bears full weight. */
  static String walking(Cell cell) {
    return months(cell, say("sheet.until-walking"))
        .orElseGet(() -> say("sheet.walking", Map.of("why", noMonths(cell))));
  }

  private static Optional<String> months(Cell cell, String such) {
    if (!(cell instanceof Cell.Known known)) {
      return Optional.empty();
    }
    Level level = known.certainty().rating().level();
    return Values.of(known)
        .map(value -> sentence(CertaintyWords.rate(level, Whole.months(value.value()), such)));
  }

  private static String noMonths(Cell cell) {
    return cell instanceof Cell.Known ? sentence(say("sheet.no-months")) : why(cell);
  }

  static String wish(Wish wish) {
    return switch (wish) {
      case KEEPING_THE_LIMB -> say("sheet.wish-limb");
      case WALKING_SOON -> say("sheet.wish-walking");
      case FEWER_OPERATIONS -> say("sheet.wish-operations");
      case LEAST_INFECTION -> say("sheet.wish-infection");
      case SHORT_FRAME -> say("sheet.wish-frame");
      case BACK_TO_WORK -> say("sheet.wish-job");
      case LOW_COST -> say("sheet.wish-cost");
    };
  }

  /** With a capital and a full stop. */
  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }
}
