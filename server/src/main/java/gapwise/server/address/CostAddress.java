package gapwise.server.address;

import gapwise.decision.choice.CostAsked;
import gapwise.decision.choice.Stages;
import gapwise.decision.choice.Unknowns;
import gapwise.decision.cost.Amount;
import gapwise.decision.cost.CostEntries;
import gapwise.decision.cost.Entry;
import gapwise.decision.cost.Health;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Reads what somebody entered about costs, beside what {@link OptionAddress} reads: {@code
 * currency}, {@code price-year}, every {@link Entry} by its code, {@code treatment-METHOD} (the
 * cost of planned operations), each amount of money with {@code sd-} before it (its standard
 * deviation), {@code utility-STATE}, {@code worth-up-to} (money for one more year) and {@code
 * against} (a method). What is missing is named by whoever reckons.
 */
public final class CostAddress {
  public static final String CURRENCY = "currency";
  public static final String PRICE_YEAR = "price-year";
  public static final String TREATMENT = "treatment-";
  public static final String STAGES = "stages-";
  public static final String UTILITY = "utility-";
  public static final String SPREAD = "sd-";
  public static final String WORTH_UP_TO = "worth-up-to";
  public static final String AGAINST = "against";

  private static final int LONGEST_CURRENCY = 12;
  private static final Set<String> ENTRIES =
      Arrays.stream(Entry.values()).map(Entry::code).collect(Collectors.toSet());

  private final Address address;
  private final Problems problems = new Problems();

  private CostAddress(Address address) {
    this.address = address;
  }

  /** Whether a name speaks of costs and not of the situation. */
  public static boolean isOwn(String name) {
    return ENTRIES.contains(name)
        || List.of(
                CURRENCY,
                PRICE_YEAR,
                WORTH_UP_TO,
                AGAINST,
                ChoiceAddress.ASKED,
                ChoiceAddress.UNKNOWN,
                ChoiceAddress.SEED)
            .contains(name)
        || List.of(TREATMENT, STAGES, UTILITY, SPREAD).stream().anyMatch(name::startsWith);
  }

  /** The address of the situation alone. */
  public static Address situation(Address address) {
    return address.without(
        address.parameters().keySet().stream().filter(CostAddress::isOwn).toList());
  }

  /**
   * What was entered, whole or not.
   *
   * @throws WrongInputException with everything in it that cannot be read
   */
  public static CostAsked read(Address address) {
    return new CostAddress(address).asked();
  }

  private CostAsked asked() {
    CostEntries entries =
        new CostEntries(currency(), priceYear(), amounts(), treatments(), utilities());
    OptionalDouble upTo =
        TypedNumber.of(address, WORTH_UP_TO, "money for one more year, such as 50000", problems);
    if (upTo.isPresent() && !(upTo.getAsDouble() > 0)) {
      problems.add(WORTH_UP_TO, "entry-out-of-range", "money for one more year must be above 0");
    }
    Optional<Method> against = against();
    Map<String, Integer> stages = stages();
    Unknowns unknowns = ChoiceAddress.unknowns(address, problems);
    long seed = ChoiceAddress.seed(address, problems);
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    return new CostAsked(entries, upTo, against, stages, unknowns, seed);
  }

  private String currency() {
    String text = address.first(CURRENCY);
    if (text.length() > LONGEST_CURRENCY) {
      problems.add(
          CURRENCY,
          "too-long",
          "a currency has up to " + LONGEST_CURRENCY + " letters, such as EUR");
      return "";
    }
    return text;
  }

  private OptionalInt priceYear() {
    String text = address.first(PRICE_YEAR);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    if (text.matches("(19|20)\\d\\d")) {
      return OptionalInt.of(Integer.parseInt(text));
    }
    problems.add(PRICE_YEAR, "not-a-year", "'" + text + "' is not a year; expected such as 2024");
    return OptionalInt.empty();
  }

  private Map<Entry, Amount> amounts() {
    Map<Entry, Amount> amounts = new EnumMap<>(Entry.class);
    for (Entry entry : Entry.values()) {
      amount(entry.code(), entry.label(), entry.kind() == Entry.Kind.MONEY)
          .ifPresent(amount -> amounts.put(entry, amount));
    }
    return amounts;
  }

  private Map<String, Amount> treatments() {
    Map<String, Amount> treatments = new TreeMap<>();
    for (Method method : Method.vocabulary().all()) {
      amount(TREATMENT + method.code(), "the cost of " + method.shortLabel(), true)
          .ifPresent(amount -> treatments.put(method.code(), amount));
    }
    return treatments;
  }

  private Map<String, Integer> stages() {
    Map<String, Integer> stages = new TreeMap<>();
    for (Method method : Method.vocabulary().all()) {
      String name = STAGES + method.code();
      OptionalLong typed =
          TypedNumber.whole(address, name, "planned stages from 1 to " + Stages.MOST, problems);
      if (typed.isPresent()) {
        if (typed.getAsLong() < 1 || typed.getAsLong() > Stages.MOST) {
          problems.add(
              name,
              "entry-out-of-range",
              "planned stages are 1 to " + Stages.MOST + ", found " + typed.getAsLong());
        } else {
          stages.put(method.code(), (int) typed.getAsLong());
        }
      }
    }
    return stages;
  }

  private Optional<Amount> amount(String name, String label, boolean money) {
    OptionalDouble mean = TypedNumber.of(address, name, label, problems);
    OptionalDouble spread =
        money
            ? TypedNumber.of(address, SPREAD + name, "a standard deviation of money", problems)
            : OptionalDouble.empty();
    if (spread.isPresent() && spread.getAsDouble() < 0) {
      problems.add(
          SPREAD + name, "entry-out-of-range", "a standard deviation is 0 or more: " + label);
      return Optional.empty();
    }
    if (spread.isPresent() && mean.isEmpty()) {
      problems.add(
          name,
          "spread-without-amount",
          "a standard deviation stands without its amount: " + label);
    }
    return mean.isPresent()
        ? Optional.of(new Amount(mean.getAsDouble(), spread.orElse(0)))
        : Optional.empty();
  }

  private Map<Health, Double> utilities() {
    Map<Health, Double> utilities = new EnumMap<>(Health.class);
    for (Health health : Health.values()) {
      TypedNumber.of(address, UTILITY + health.code(), "the worth of a year, such as 0.8", problems)
          .ifPresent(worth -> utilities.put(health, worth));
    }
    return utilities;
  }

  private Optional<Method> against() {
    String code = address.first(AGAINST);
    if (code.isEmpty()) {
      return Optional.empty();
    }
    Optional<Method> found = Method.vocabulary().find(code);
    if (found.isEmpty()) {
      problems.add(
          AGAINST,
          "unknown-code",
          "'"
              + code
              + "'; "
              + Nearest.expected(
                  code, Method.vocabulary().all().stream().map(Method::code).toList()));
    }
    return found;
  }
}
