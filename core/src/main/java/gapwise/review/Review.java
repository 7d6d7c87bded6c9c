package gapwise.review;

import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A review of the literature: its question by population, interventions, comparators and outcomes,
 * and which studies can answer it.
 *
 * @param title what it is called
 * @param registration where its protocol is registered, and under which number, as typed
 * @param population which patients, in words
 * @param interventions codes of the methods that are compared; empty means all
 * @param comparators codes of the methods that they are compared with; empty means one another
 * @param outcomes each once, the most important first
 * @param include what a study must be, one criterion a line
 * @param exclude what a study must not be
 * @param limits designs, lengths, years, languages
 * @param people who does what, each person once
 */
public record Review(
    String title,
    String registration,
    String population,
    List<String> interventions,
    List<String> comparators,
    List<ReviewOutcome> outcomes,
    List<String> include,
    List<String> exclude,
    ReviewLimits limits,
    List<ReviewPerson> people) {
  /** Longest title and registration, in letters. */
  public static final int LONGEST_TITLE = 300;

  /** Longest population. */
  public static final int LONGEST_POPULATION = 1000;

  /** Longest criterion. */
  public static final int LONGEST_CRITERION = 300;

  /** Most criteria of a list, outcomes, and people: more stand on no page that is read. */
  public static final int MOST = 30;

  /** Nothing said yet. */
  public static final Review EMPTY =
      new Review(
          "",
          "",
          "",
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          List.of(),
          ReviewLimits.NONE,
          List.of());

  public Review {
    atMost(LONGEST_TITLE, title, "title");
    atMost(LONGEST_TITLE, registration, "registration");
    atMost(LONGEST_POPULATION, population, "population");
    interventions = List.copyOf(interventions);
    comparators = List.copyOf(comparators);
    outcomes = List.copyOf(outcomes);
    include = List.copyOf(include);
    exclude = List.copyOf(exclude);
    Objects.requireNonNull(limits, "limits");
    people = List.copyOf(people);
    each(interventions, "interventions", Integer.MAX_VALUE);
    each(comparators, "comparators", Integer.MAX_VALUE);
    each(outcomes.stream().map(ReviewOutcome::outcome).toList(), "outcomes", MOST);
    each(people.stream().map(one -> one.who().key()).toList(), "people", MOST);
    for (List<String> criteria : List.of(include, exclude)) {
      each(criteria, "criteria", MOST);
      criteria.forEach(one -> atMost(LONGEST_CRITERION, one, "criterion"));
    }
  }

  private static void atMost(int most, String text, String what) {
    if (text.length() > most) {
      throw new IllegalArgumentException("the " + what + " has more than " + most + " letters");
    }
  }

  private static void each(List<String> all, String what, int most) {
    Set<String> seen = new HashSet<>();
    for (String one : all) {
      if (one.isBlank() || !seen.add(one)) {
        throw new IllegalArgumentException(what + " stand there once and not blank: '" + one + "'");
      }
    }
    if (all.size() > most) {
      throw new IllegalArgumentException("at most " + most + " " + what);
    }
  }

  /** The methods that it names, interventions and comparators, each once. */
  public List<String> methods() {
    return Stream.concat(interventions.stream(), comparators.stream()).distinct().toList();
  }
}
