package gapwise.printed;

import gapwise.evidence.vocabulary.Missing;
import gapwise.evidence.vocabulary.YesOrNo;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Proposes what a text gives to a column of the template and those that belong to it. Where two
 * readings are possible, the value is asked; where the template has a column for what a paper
 * leaves open, the open reading is taken.
 */
public final class Proposer {
  private Proposer() {}

  /** Reads a text for a column; at least one proposal, but for a ditto mark. */
  public static List<Proposed> propose(String text, Wanted wanted, Setting setting) {
    PrintedValue value = withPoints(Printed.read(text), text, setting);
    List<Proposed> proposals = new ArrayList<>();
    if (value instanceof PrintedValue.Nothing nothing) {
      return List.of(nothing(nothing.reason(), text, wanted));
    }
    if (value instanceof PrintedValue.Several several) {
      for (PrintedValue reading : several.readings()) {
        boolean decimals = reading instanceof PrintedValue.Amount amount && !amount.whole();
        if (decimals == setting.commaDecimals()) {
          of(text, reading, wanted, setting)
              .forEach(
                  one ->
                      proposals.add(
                          one.askedBecause(Doubt.NUMBER, several.why() + " Choose one.")));
        }
      }
      return proposals;
    }
    return of(text, value, wanted, setting);
  }

  /** Among decimal commas a point may separate thousands. */
  private static PrintedValue withPoints(PrintedValue value, String text, Setting setting) {
    boolean grouped = Printed.plain(text).matches("[1-9]\\d{0,2}\\.\\d{3}");
    if (grouped && setting.commaDecimals() && value instanceof PrintedValue.Amount amount) {
      PrintedValue thousands =
          new PrintedValue.Amount(
              Math.round(amount.value() * 1000),
              amount.unit(),
              amount.bound(),
              false,
              amount.named());
      return new PrintedValue.Several(
          List.of(thousands), "The point can separate thousands or decimals.");
    }
    return value;
  }

  private static Proposed nothing(Missing reason, String text, Wanted wanted) {
    return switch (reason) {
      case NOT_APPLICABLE ->
          Proposed.left(column(wanted), "The cell says that this does not apply ('" + text + "').");
      case UNCLEAR ->
          Proposed.asked(
              column(wanted),
              "",
              Optional.empty(),
              Doubt.NOTHING,
              "The cell itself has a question mark ('"
                  + text
                  + "'). Look it up, or leave it blank.");
      default ->
          Proposed.left(column(wanted), "The cell says that nothing is reported ('" + text + "').");
    };
  }

  private static List<Proposed> of(
      String text, PrintedValue value, Wanted wanted, Setting setting) {
    if (value instanceof PrintedValue.Ditto) {
      return List.of();
    }
    return switch (wanted.kind()) {
      case SHARE -> new Shares(text, wanted, setting).of(value);
      case SUMMARY -> new Summaries(text, wanted, setting).of(value);
      case MEASURE, WHOLE, NUMBER, YEAR -> new Singles(text, wanted, setting).of(value);
      case ANSWER -> answer(text, value, wanted);
      case CODE -> Codes.of(text, wanted);
      case STUDY -> StudyNames.of(text);
      case TEXT -> text(text, wanted);
    };
  }

  private static List<Proposed> text(String text, Wanted wanted) {
    if (wanted.into().equals("patients") && wanted.base().equals("segment")) {
      return Codes.segment(text);
    }
    String column = wanted.base().isEmpty() ? "categories" : wanted.base();
    return List.of(Proposed.taken(column, Printed.plain(text), Optional.empty()));
  }

  private static List<Proposed> answer(String text, PrintedValue value, Wanted wanted) {
    String column = wanted.base();
    if (value instanceof PrintedValue.Answer answer) {
      return List.of(
          Proposed.taken(column, answer.answer() == YesOrNo.YES ? "yes" : "no", Optional.empty()));
    }
    if (value instanceof PrintedValue.Amount amount
        && (amount.value() == 0 || amount.value() == 1)
        && amount.unit().isEmpty()) {
      return List.of(
          Proposed.asked(
              column,
              amount.value() == 1 ? "yes" : "no",
              Optional.empty(),
              Doubt.WORD,
              "Found '" + text + "' where yes or no is wanted. Say whether 1 means yes here."));
    }
    return List.of(
        Proposed.asked(
            column,
            "",
            Optional.empty(),
            Doubt.WORD,
            "Found '" + text + "' where yes or no is wanted. Say which it means."));
  }

  /** The column that stands for a wanted value in a message or a question. */
  static String column(Wanted wanted) {
    return switch (wanted.kind()) {
      case SHARE -> wanted.count();
      case SUMMARY -> wanted.part("mean");
      case STUDY -> "first_author";
      case TEXT -> wanted.base().isEmpty() ? "categories" : wanted.base();
      default -> wanted.base();
    };
  }

  /** The shortest decimal text of a number. */
  static String plain(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }
}
