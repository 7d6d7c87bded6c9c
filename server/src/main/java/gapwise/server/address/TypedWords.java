package gapwise.server.address;

import gapwise.evidence.unit.LengthRange;
import gapwise.problem.Problem;
import gapwise.problem.WrongInputException;
import gapwise.search.words.PlainWords;
import gapwise.search.words.Reading;
import gapwise.search.words.Understood;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Turns plain words in the box of an address into its filters, so that what was understood stands
 * there as something to take off. Words not understood stay in the box as text; joining words are
 * named under {@code aside}.
 */
public final class TypedWords {
  public static final String BOX = "q";
  public static final String ASIDE = "aside";

  private Address address;
  private final List<String> text = new ArrayList<>();
  private boolean sized;
  private boolean dated;
  private boolean followed;

  private TypedWords(Address address) {
    this.address = address;
  }

  /** What is wrong with the words of an address: only that there can be too many. */
  public static Optional<Problem> wrong(Address typed) {
    int letters = typed.first(BOX).length();
    return letters <= PlainWords.MOST_LETTERS
        ? Optional.empty()
        : Optional.of(
            new Problem(
                BOX,
                "too-many-letters",
                String.format(
                    Locale.ROOT,
                    "Found %,d letters; a search takes at most %,d. Keep the words that matter"
                        + " most.",
                    letters,
                    PlainWords.MOST_LETTERS)));
  }

  /**
   * The address with its words understood; the same if there is nothing to understand.
   *
   * @throws WrongInputException for more letters than a search takes
   */
  public static Address understood(Address typed) {
    wrong(typed)
        .ifPresent(
            tooMany -> {
              throw new WrongInputException(List.of(tooMany));
            });
    Understood words = PlainWords.read(typed.first(BOX));
    boolean nothingTaken = words.readings().isEmpty();
    if (nothingTaken && (words.aside().isEmpty() || words.rest().isEmpty())) {
      return typed;
    }
    TypedWords taken = new TypedWords(typed.without(List.of(BOX, ASIDE, "page")));
    words.readings().forEach(taken::take);
    taken.text.add(words.rest());
    Address read = taken.address.with(BOX, String.join(" ", taken.text));
    return words.aside().isEmpty() ? read : read.with(ASIDE, String.join(" ", words.aside()));
  }

  /** The same for options: what the words say of a patient is taken too. */
  public static Address understoodOfPatient(Address typed) {
    return TypedPerson.understood(understood(typed).without(List.of(ASIDE)));
  }

  private void take(Reading reading) {
    if (reading instanceof Reading.Coded coded) {
      coded.codes().forEach(code -> address = address.and(coded.kind().word(), code));
    } else if (reading instanceof Reading.Size size && !sized) {
      sized = true;
      take(size.range());
    } else if (reading instanceof Reading.Years years && !dated) {
      dated = true;
      address = address.without(List.of("year-from", "year-to"));
      take("year-from", years.from());
      take("year-to", years.to());
    } else if (reading instanceof Reading.FollowUp followUp && !followed) {
      followed = true;
      address = address.with(Filters.FOLLOW_UP_FROM, plain(followUp.months()));
    } else {
      text.add(reading.typed());
    }
  }

  private void take(LengthRange range) {
    address = address.without(List.of("from", "to"));
    if (range.fromCentimetres() > 0) {
      address = address.with("from", plain(range.fromCentimetres()));
    }
    if (Double.isFinite(range.toCentimetres())) {
      address = address.with("to", plain(range.toCentimetres()));
    }
  }

  private void take(String name, OptionalInt year) {
    if (year.isPresent()) {
      address = address.with(name, Integer.toString(year.getAsInt()));
    }
  }

  /** To two decimals, which no paper exceeds. */
  private static String plain(double number) {
    return BigDecimal.valueOf(number)
        .setScale(2, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }
}
