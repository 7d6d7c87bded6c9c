package gapwise.server.address;

import gapwise.evidence.unit.Duration;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Clock;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Nearest;
import gapwise.evidence.vocabulary.Phase;
import gapwise.place.Course;
import gapwise.place.Milestone;
import gapwise.place.PatientCase;
import gapwise.place.PatientCase.Infection;
import gapwise.place.Reached;
import gapwise.place.Stay;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Reads a case from an address: {@code method}, {@code length} (cm), {@code bone}, {@code segment},
 * {@code infection}; for each milestone its code, with {@code -unit} and {@code -from}; {@code
 * cost} and {@code currency}; {@code start} and {@code phase-1}, {@code duration-1}, {@code unit-1}
 * and on, where {@code offered-1} in place of {@code phase-1} is a phase that the form offered: one
 * without a length is then no part of the course. Page and API read the same names; nothing of a
 * case is kept anywhere else.
 */
public final class CaseAddress {
  /** Phases that a course may have. */
  public static final int MOST_PHASES = 10;

  /** A time longer than this many months is a slip: thirty years. */
  private static final double LONGEST_MONTHS = 360;

  private static final double LARGEST_COST = 1e9;

  private final Address address;
  private final Problems problems = new Problems();

  private CaseAddress(Address address) {
    this.address = address;
  }

  /**
   * The case of an address; empty where it has neither a milestone nor a phase.
   *
   * @throws WrongInputException with everything that is wrong in it
   */
  public static Optional<PatientCase> read(Address address) {
    return new CaseAddress(address).patientCase();
  }

  private Optional<PatientCase> patientCase() {
    Optional<Method> method = method();
    OptionalDouble length =
        number("length", PatientCase.LONGEST_CENTIMETRES, "centimetres such as 8 or 7.5");
    Optional<Bone> bone = word("bone", Bone.class);
    Optional<String> segment = segment();
    Infection infection = infection();
    List<Reached> entered = entered();
    Optional<Clock> start = word("start", Clock.class);
    List<Stay> stays = stays();
    if (!problems.isEmpty()) {
      throw new WrongInputException(problems.list());
    }
    if (entered.isEmpty() && stays.isEmpty()) {
      return Optional.empty();
    }
    Course course = new Course(stays.isEmpty() ? Optional.empty() : start, stays);
    return Optional.of(new PatientCase(method, length, bone, segment, infection, entered, course));
  }

  private Optional<Method> method() {
    String code = address.first("method");
    Optional<Method> found = Method.vocabulary().find(code);
    if (!code.isEmpty() && found.isEmpty()) {
      unknown("method", code, Method.vocabulary().codes());
    }
    return found;
  }

  private Optional<String> segment() {
    String code = address.first("segment");
    if (!code.isEmpty() && !code.matches("[1-8]\\d?")) {
      problems.add(
          "segment",
          "unknown-code",
          "'" + code + "' is unknown; expected an AO/OTA code such as 42");
    }
    return Optional.of(code).filter(text -> !text.isEmpty());
  }

  private Infection infection() {
    String code = address.first("infection");
    return Stream.of(Infection.values())
        .filter(one -> one.name().toLowerCase(Locale.ROOT).equals(code))
        .findFirst()
        .orElseGet(
            () -> {
              if (!code.isEmpty()) {
                unknown("infection", code, List.of("none", "past", "active"));
              }
              return Infection.UNSAID;
            });
  }

  private <E extends Enum<E> & Coded> Optional<E> word(String name, Class<E> vocabulary) {
    String code = address.first(name);
    Optional<E> found = Coded.parse(vocabulary, code);
    if (!code.isEmpty() && found.isEmpty()) {
      unknown(name, code, Coded.codes(vocabulary));
    }
    return found;
  }

  private void unknown(String name, String found, List<String> known) {
    problems.add(
        name, "unknown-code", "'" + found + "' is unknown; " + Nearest.expected(found, known));
  }

  /** A number above 0 and up to the largest; empty where the name is not there. */
  private OptionalDouble number(String name, double largest, String expected) {
    String text = address.first(name);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (text.matches("\\d{1,10}([.,]\\d{1,4})?")) {
      double value = Double.parseDouble(text.replace(',', '.'));
      if (value > 0 && value <= largest) {
        return OptionalDouble.of(value);
      }
    }
    problems.add(
        name,
        "not-a-number",
        "'" + text + "'; expected " + expected + ", above 0 and at most " + (long) largest);
    return OptionalDouble.empty();
  }

  private Optional<Duration> duration(String name, String unitName) {
    String symbol = address.first(unitName);
    Unit unit = symbol.equals(Unit.WEEKS.symbol()) ? Unit.WEEKS : Unit.MONTHS;
    if (!symbol.isEmpty() && !symbol.equals(unit.symbol())) {
      unknown(unitName, symbol, List.of("weeks", "months"));
    }
    double largest = Unit.MONTHS.to(unit, LONGEST_MONTHS);
    return number(name, largest, unit.symbol() + " such as 7 or 7.5").stream()
        .mapToObj(value -> new Duration(value, unit))
        .findFirst();
  }

  private List<Reached> entered() {
    List<Reached> entered = new ArrayList<>();
    for (Milestone milestone : Milestone.values()) {
      if (milestone == Milestone.COST) {
        cost().ifPresent(entered::add);
        continue;
      }
      String name = milestone.code();
      Optional<Duration> time = duration(name, name + "-unit");
      Optional<Clock> clock = milestone.onlyClock().or(() -> word(name + "-from", Clock.class));
      if (time.isPresent() && clock.isEmpty()) {
        problems.add(
            name + "-from",
            "missing-field",
            milestone.label()
                + ": a time says nothing without its start; choose what it is counted from");
      }
      if (time.isPresent() && clock.isPresent()) {
        entered.add(Reached.at(milestone, time.get().months(), clock.get()));
      }
    }
    return entered;
  }

  private Optional<Reached> cost() {
    OptionalDouble amount = number("cost", LARGEST_COST, "an amount such as 45000");
    String currency = address.first("currency").toUpperCase(Locale.ROOT);
    if (amount.isEmpty()) {
      return Optional.empty();
    }
    if (!currency.matches("[A-Z]{3}")) {
      problems.addAll(
          List.of(
              new Problem(
                  "currency",
                  "missing-field",
                  "a cost needs its currency in three letters (ISO 4217) such as EUR")));
      return Optional.empty();
    }
    return Optional.of(Reached.cost(amount.getAsDouble(), currency));
  }

  private List<Stay> stays() {
    List<Stay> stays = new ArrayList<>();
    for (int i = 1; i <= MOST_PHASES; i++) {
      boolean chosen = !address.first("phase-" + i).isEmpty();
      String kind = (chosen ? "phase-" : "offered-") + i;
      Optional<Phase> phase = word(kind, Phase.class);
      Optional<Duration> time = duration("duration-" + i, "unit-" + i);
      boolean named = !address.first(kind).isEmpty();
      boolean timed = !address.first("duration-" + i).isEmpty();
      if (timed ? !named : chosen) {
        problems.add(
            (named ? "duration-" : "phase-") + i,
            "missing-field",
            "phase " + i + " of the course needs both its kind and how long it lasted");
      }
      if (phase.isPresent() && time.isPresent()) {
        stays.add(new Stay(phase.get(), time.get()));
      }
    }
    return stays;
  }
}
