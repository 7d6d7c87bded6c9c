package gapwise.server.address;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.search.HowMade;
import gapwise.search.SearchRequest;
import gapwise.search.SearchRequest.DefectMatch;
import gapwise.search.YearRange;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;

/**
 * Reads the filters of an address: {@code q}, {@code outcome}, {@code from} and {@code to} (missing
 * bone in cm), {@code match}, {@code method}, {@code bone}, {@code segment}, {@code infected},
 * {@code design}, {@code risk}, {@code detail}, {@code year-from}, {@code year-to}, {@code
 * follow-up-from} (months). Pages and API read the same names.
 */
public final class Filters {
  /** Least follow-up in months. */
  public static final String FOLLOW_UP_FROM = "follow-up-from";

  /** Risk of bias as people judged it. */
  public static final String RISK = "risk";

  /** A word of a detail of the method, such as {@code fixation:ring}. */
  public static final String DETAIL = "detail";

  /** The names of all filters. */
  public static final List<String> NAMES =
      List.of(
          "q",
          "outcome",
          "from",
          "to",
          "match",
          "method",
          "bone",
          "segment",
          "infected",
          "design",
          RISK,
          DETAIL,
          "year-from",
          "year-to",
          FOLLOW_UP_FROM);

  /** By mean or median as a band: its upper end belongs to the next. */
  public static final String BAND = "band";

  /** Only groups whose paper gives no mean or median, whatever the lengths. */
  public static final String UNSIZED = "unsized";

  /** Only groups of whose length one end alone is given, so that it may or may not be in range. */
  public static final String ONE_SIDED = "one-sided";

  /** Only groups that give nothing in numbers of the length asked for. */
  public static final String UNKNOWN = "unknown";

  /** More than any filter has words; each is a link of the page that takes it off. */
  private static final int MOST_VALUES = 100;

  private static final int FIRST_YEAR = 1800;
  private static final int LAST_YEAR = 2200;

  private final Address address;
  private final Problems problems = new Problems();

  private Filters(Address address) {
    this.address = address;
  }

  /**
   * The request that an address asks for.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static SearchRequest read(Address address) {
    return new Filters(address).request();
  }

  /** The one outcome that an address asks for, where it names exactly one that there is. */
  public static Optional<Outcome> outcome(Address address) {
    List<String> codes = address.all("outcome");
    return codes.size() == 1 ? Outcome.vocabulary().find(codes.get(0)) : Optional.empty();
  }

  private SearchRequest request() {
    TypedWords.wrong(address).ifPresent(problems::add);
    NAMES.forEach(this::checkNumber);
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    SearchRequest request =
        new SearchRequest(
            address.first("q"),
            codes("method", Method.vocabulary()::find, Method.vocabulary().codes()),
            chosen("bone", Bone.class),
            new HashSet<>(address.all("segment")),
            chosen("infected", YesOrNo.class),
            new HowMade(chosen("design", Design.class), chosen(RISK, Risk.class)),
            codes("outcome", Outcome.vocabulary()::find, Outcome.vocabulary().codes()),
            found(DETAIL, MethodDetail::find, MethodDetail.codes()),
            new YearRange(year("year-from"), year("year-to")),
            defect(),
            match(),
            followUp());
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return request;
  }

  private void checkNumber(String name) {
    int found = address.all(name).size();
    if (found > MOST_VALUES) {
      problems.add(
          name,
          "too-many-values",
          "Found "
              + found
              + " values; a filter takes at most "
              + MOST_VALUES
              + ". Take some off, or leave the filter out, which takes all.");
    }
  }

  private Set<String> codes(
      String name, Function<String, ? extends Optional<?>> vocabulary, List<String> known) {
    return found(name, code -> vocabulary.apply(code).map(word -> code), known);
  }

  private <E extends Enum<E> & Coded> Set<E> chosen(String name, Class<E> vocabulary) {
    return found(name, code -> Coded.parse(vocabulary, code), Coded.codes(vocabulary));
  }

  private <T> Set<T> found(
      String name, Function<String, Optional<T>> vocabulary, List<String> known) {
    Set<T> found = new LinkedHashSet<>();
    for (String code : address.all(name)) {
      vocabulary.apply(code).ifPresentOrElse(found::add, () -> unknown(name, code, known));
    }
    return found;
  }

  private void unknown(String name, String found, List<String> known) {
    problems.add(
        name, "unknown-code", "'" + found + "' is unknown; " + Nearest.expected(found, known));
  }

  private OptionalInt year(String name) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (text.matches("\\d{4}")) {
      int year = Integer.parseInt(text);
      if (year >= FIRST_YEAR && year <= LAST_YEAR) {
        return OptionalInt.of(year);
      }
    }
    problems.add(name, "not-a-year", "'" + text + "' is not a year; expected one such as 2015");
    return OptionalInt.empty();
  }

  private OptionalDouble followUp() {
    return number(
        FOLLOW_UP_FROM, "not-a-time", "is not a follow-up; expected months such as 12 or 24");
  }

  private Optional<LengthRange> defect() {
    OptionalDouble from = centimetres("from");
    OptionalDouble to = centimetres("to");
    if ((from.isEmpty() && to.isEmpty()) || address.first("match").equals(UNSIZED)) {
      return Optional.empty();
    }
    double shortest = from.orElse(0.0);
    double longest = to.orElse(Double.POSITIVE_INFINITY);
    if (shortest > longest) {
      problems.add(
          "from",
          "range-backwards",
          "missing bone from "
              + address.first("from")
              + " to "
              + address.first("to")
              + " cm runs backwards; give the shorter length first");
      return Optional.empty();
    }
    boolean open = address.first("match").equals(BAND) && longest > shortest;
    return Optional.of(
        open && !Double.isInfinite(longest)
            ? LengthRange.under(shortest, longest)
            : new LengthRange(shortest, longest));
  }

  private OptionalDouble centimetres(String name) {
    return number(name, "not-a-length", "is not a length; expected centimetres such as 5 or 7.5");
  }

  private OptionalDouble number(String name, String code, String wrong) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (text.matches("\\d{1,4}([.,]\\d{1,4})?")) {
      return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
    }
    problems.add(name, code, "'" + text + "' " + wrong);
    return OptionalDouble.empty();
  }

  private DefectMatch match() {
    String text = address.first("match");
    return switch (text) {
      case "", "overlap" -> DefectMatch.OVERLAP;
      case "centre", BAND -> DefectMatch.CENTRE;
      case UNSIZED -> DefectMatch.NO_CENTRE;
      case ONE_SIDED -> DefectMatch.ONE_SIDED;
      case UNKNOWN -> DefectMatch.UNKNOWN;
      default -> {
        unknown(
            "match", text, List.of("overlap", "centre", "band", "unsized", "one-sided", "unknown"));
        yield DefectMatch.OVERLAP;
      }
    };
  }
}
