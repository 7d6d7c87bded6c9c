package gapwise.server.address;

import gapwise.decision.choice.CostAsked;
import gapwise.decision.choice.WeighingAsked;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.sheet.Sheet;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What an address asks of a sheet beside its situation: {@code made} is the change that an earlier
 * print was made from, {@code searched} the day of the last search of the literature, {@code
 * with=weighing} and {@code with=cost} put those onto the page for the team, under the parameters
 * of their own pages, and {@code paper=letter} chooses the paper.
 */
public final class SheetAddress {
  public static final String MADE = "made";
  public static final String SEARCHED = "searched";
  public static final String WITH = "with";
  public static final String WEIGHING = "weighing";
  public static final String COST = "cost";
  public static final String PAPER = "paper";
  public static final String LETTER = "letter";

  private static final List<String> OWN = List.of(MADE, SEARCHED, WITH, PAPER);

  private final Address address;

  public SheetAddress(Address address) {
    this.address = Objects.requireNonNull(address, "address");
  }

  /** Everything that it holds. */
  public Address whole() {
    return address;
  }

  /** The same sheet without a print or a paper of it. */
  public Address sheet() {
    return address.without(List.of(MADE, PAPER));
  }

  /** The situation alone. */
  public Address situation() {
    return CostAddress.situation(WeighingAddress.situation(address.without(OWN)));
  }

  /** What is asked of the options, with all that the page for the patient shows. */
  public OptionQuestion question() {
    return Sheet.asking(OptionAddress.question(situation()));
  }

  /** Whether the paper is the American one. */
  public boolean isOnLetter() {
    return address.has(PAPER, LETTER);
  }

  /**
   * The change that an earlier print was made from; empty for a new sheet.
   *
   * @throws WrongInputException for what is no number
   */
  public OptionalLong made() {
    String text = address.first(MADE);
    if (text.isEmpty()) {
      return OptionalLong.empty();
    }
    if (!text.matches("\\d{1,18}")) {
      throw wrong(
          MADE, "not-a-change", "'" + text + "' is no number of a change; expected one such as 12");
    }
    return OptionalLong.of(Long.parseLong(text));
  }

  /**
   * The day of the last search; empty where it is written in by hand.
   *
   * @param today no search lies after it
   * @throws WrongInputException for what is no such day
   */
  public Optional<LocalDate> searched(LocalDate today) {
    String text = address.first(SEARCHED);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<LocalDate> day = day(text);
    if (day.isEmpty()) {
      throw wrong(
          SEARCHED,
          "not-a-date",
          "'" + text + "' is not a date; expected year, month and day, such as 2025-11-03");
    }
    if (day.get().isAfter(today)) {
      throw wrong(
          SEARCHED,
          "date-to-come",
          "'" + text + "' is still to come; expected the day of the last search, at most " + today);
    }
    return day;
  }

  private static Optional<LocalDate> day(String text) {
    try {
      return text.matches("\\d{4}-\\d{2}-\\d{2}")
          ? Optional.of(LocalDate.parse(text))
          : Optional.empty();
    } catch (DateTimeException notInTheCalendar) {
      return Optional.empty();
    }
  }

  /** How the table is to be weighed; empty where it is not. */
  public Optional<WeighingAsked> weighing() {
    return asks(WEIGHING) ? Optional.of(WeighingAddress.read(address)) : Optional.empty();
  }

  /** How the table is to be reckoned in costs; empty where it is not. */
  public Optional<CostAsked> cost() {
    return asks(COST) ? Optional.of(CostAddress.read(address)) : Optional.empty();
  }

  private boolean asks(String what) {
    for (String one : address.all(WITH)) {
      if (!Set.of(WEIGHING, COST).contains(one)) {
        throw wrong(
            WITH, "unknown-code", "'" + one + "'; expected '" + WEIGHING + "' or '" + COST + "'");
      }
    }
    return address.has(WITH, what);
  }

  private static WrongInputException wrong(String name, String code, String message) {
    Problems problems = new Problems();
    problems.add(name, code, message);
    return new WrongInputException(problems.list());
  }
}
