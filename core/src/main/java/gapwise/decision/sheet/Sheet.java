package gapwise.decision.sheet;

import gapwise.decision.option.Aspect;
import gapwise.decision.option.Option;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.evidence.vocabulary.Method;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A sheet: at most six methods in the order of the vocabulary, amputation among them.
 *
 * @param table the numbers
 * @param options those of its methods that stand on the sheet
 * @param patient the page for the patient
 * @param team the page for the team
 */
public record Sheet(OptionTable table, List<Option> options, PatientPage patient, TeamPage team) {
  /** More rows would not stand on one page in letters that can be read. */
  public static final int MOST = 6;

  private static final String AMPUTATION = "primary-amputation";

  public Sheet {
    Objects.requireNonNull(table, "table");
    options = List.copyOf(options);
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(team, "team");
    if (options.size() > MOST || options.stream().noneMatch(one -> isAmputation(one.method()))) {
      throw new IllegalArgumentException("at most six, amputation among them, were " + options);
    }
  }

  /** Whether it is the amputation that stands on every sheet. */
  public static boolean isAmputation(Method method) {
    return method.code().equals(AMPUTATION);
  }

  /**
   * The methods that a sheet for a question would have: those named, and amputation. More than
   * {@link #MOST} must be chosen from; none named means all.
   */
  public static List<Method> methods(OptionQuestion asked) {
    Set<String> named = asked.situation().among().methods();
    return Method.vocabulary().all().stream()
        .filter(method -> named.isEmpty() || named.contains(method.code()) || isAmputation(method))
        .toList();
  }

  /** The same question with everything asked that the page for the patient shows. */
  public static OptionQuestion asking(OptionQuestion asked) {
    List<Aspect> aspects =
        Stream.of(Aspect.values())
            .filter(one -> asked.aspects().contains(one) || PatientPages.SHOWN.contains(one))
            .toList();
    return new OptionQuestion(
        asked.situation(),
        asked.taken(),
        aspects,
        asked.counted(),
        asked.matters(),
        asked.leastStatus());
  }

  /**
   * The sheet of a table.
   *
   * @param table with every aspect of {@link #asking}, of at most six methods beside the other
   *     kinds of amputation
   * @param beside what the page for the team tells beside it
   */
  public static Sheet of(OptionTable table, Beside beside) {
    List<Method> methods = methods(table.asked());
    List<Option> options =
        table.options().stream().filter(one -> methods.contains(one.method())).toList();
    return new Sheet(
        table, options, PatientPages.of(table, options), TeamPages.of(table, options, beside));
  }

  /** The sheet of an earlier state, of which the numbers alone are told. */
  public static Sheet numbersOf(OptionTable table) {
    return of(table, Beside.nothing());
  }
}
