package gapwise.analysis.rows;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/** What the columns of a table stand for, in the words of the trade. */
final class RoleWords {
  private record Words(String what, String purpose) {}

  private static final Map<String, Words> ALL =
      Map.ofEntries(
          Map.entry("study", new Words("the name of the study", "tells the rows apart")),
          Map.entry("treatment", new Words("the treatment of the group", "links the studies")),
          Map.entry(
              "against",
              new Words("the treatment that it is compared with", "says what the effect is of")),
          Map.entry("events", new Words("the number of events", "is what is pooled")),
          Map.entry(
              "total",
              new Words(
                  "the number of patients or limbs counted", "is what the events are out of")),
          Map.entry("personTime", new Words("the time at risk", "is what the events came up in")),
          Map.entry("mean", new Words("the mean", "is what is pooled")),
          Map.entry("sd", new Words("the standard deviation (SD)", "gives the study its weight")),
          Map.entry("n", new Words("the number of patients (n)", "gives the study its weight")),
          Map.entry("effect", new Words("the effect", "is what is pooled")),
          Map.entry("time", new Words("the time", "says when it was observed")),
          Map.entry("event", new Words("whether the event came", "is what is counted")),
          Map.entry("value", new Words("the value of each patient", "is what is pooled")),
          Map.entry("moderator", new Words("the moderator", "is what the result is held against")),
          Map.entry("survival", new Words("the height of the curve", "is what is read of it")),
          Map.entry("group", new Words("the group", "says which curve a row belongs to")),
          Map.entry("atRisk", new Words("the number at risk", "says how many are still followed")),
          Map.entry("rater1", new Words("the judgement of the first rater", "is compared")),
          Map.entry("rater2", new Words("the judgement of the second rater", "is compared")));

  /** What tells of the spread of values, each with the columns that it takes, the best first. */
  private static final List<Spread> SPREADS =
      List.of(
          new Spread("a standard deviation (SD)", List.of("sd")),
          new Spread("a standard error", List.of("standardError")),
          new Spread("both limits of an interval", List.of("lower", "upper")),
          new Spread("a median with both quartiles", List.of("median", "q1", "q3")),
          new Spread("a median with the range", List.of("median", "min", "max")));

  private record Spread(String what, List<String> columns) {
    /** As people read it, with its columns. */
    String words(String group) {
      return what
          + " ("
          + String.join(", ", columns.stream().map(column -> group + column).toList())
          + ")";
    }

    boolean isAmong(Predicate<String> roles, String group) {
      return columns.stream().allMatch(column -> roles.test(group + column));
    }
  }

  private RoleWords() {}

  /**
   * What is missing where no column has a role, and what it is needed for.
   *
   * @param role such as {@code sd}, or {@code intervention.sd} of one group
   * @param needing what needs it, as the plan calls it
   */
  static String missing(String role, String needing) {
    int point = role.indexOf('.');
    String group = point < 0 ? "" : " of the group '" + role.substring(0, point) + "'";
    String name = role.substring(point + 1);
    Words words = ALL.get(name);
    String need = group + ", which '" + needing + "' needs";
    return words == null
        ? "No column gives '" + name + "'" + need + "."
        : "No column gives " + words.what() + need + ": it " + words.purpose() + ".";
  }

  /**
   * What else a mean needs beside the number of patients, where the data give no spread at all;
   * empty in any other case.
   *
   * @param role the one that is missing
   * @param roles that have a meaning for what is asked
   * @param given whether a role has a column
   */
  static String spreadToo(String role, List<String> roles, Predicate<String> given) {
    String group = role.substring(0, role.indexOf('.') + 1);
    List<Spread> possible =
        SPREADS.stream().filter(spread -> spread.isAmong(roles::contains, group)).toList();
    boolean asked = role.equals(group + "n") && !possible.isEmpty();
    if (!asked || possible.stream().anyMatch(spread -> spread.isAmong(given, group))) {
      return "";
    }
    return " Nor do they give a spread; a mean needs "
        + String.join(", or ", possible.stream().map(spread -> spread.words(group)).toList())
        + ".";
  }
}
