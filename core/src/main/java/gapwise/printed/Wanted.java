package gapwise.printed;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * What is wanted of a text: one column of the template with the columns that belong to it.
 *
 * @param into the sheet: studies, arms, outcomes, patients
 * @param base the column without its part: {@code defect_length} of {@code defect_length_mean}; of
 *     an outcome empty
 * @param outcome on the sheet of outcomes, of which
 * @param kind what sort of value it is
 */
public record Wanted(String into, String base, Optional<Outcome> outcome, Kind kind) {
  /** Sorts of values. */
  public enum Kind {
    /** A count of a total with a percentage. */
    SHARE,
    /** A mean or median with its spread. */
    SUMMARY,
    /** One number of one patient, with a unit. */
    MEASURE,
    /** A number of people. */
    WHOLE,
    /** A number without a unit of its own, its unit in the name of the column. */
    NUMBER,
    /** Yes or no. */
    ANSWER,
    /** One of the codes of the column. */
    CODE,
    /** A year of publication. */
    YEAR,
    /** Author and year in one. */
    STUDY,
    /** A name or other words. */
    TEXT
  }

  private static final Set<String> SUMMARIES = Set.of("defect_length", "age", "follow_up");
  private static final Set<String> SHARES = Set.of("infected", "male", "smokers", "diabetics");
  private static final Set<String> WHOLES =
      Set.of("patients", "limbs", "defects", "lost_to_follow_up");
  private static final Set<String> CODES =
      Set.of("method", "design", "report_kind", "sex", "bone", "consecutive", "defect_stage");
  private static final Set<String> NUMBERS = Set.of("previous_operations", "months_from_injury");
  private static final List<String> PARTS =
      List.of(
          "_spread_unstated",
          "_ci_lower",
          "_ci_upper",
          "_percent",
          "_median",
          "_mean",
          "_unit",
          "_min",
          "_max",
          "_sd",
          "_se",
          "_q1",
          "_q3",
          "_of",
          "_n");

  public Wanted {
    Objects.requireNonNull(into, "into");
    Objects.requireNonNull(base, "base");
    Objects.requireNonNull(kind, "kind");
    if (into.equals("outcomes") != outcome.isPresent()) {
      throw new IllegalArgumentException("outcomes need an outcome, others none: " + into);
    }
  }

  /** What is wanted of an outcome of a group, by its kind. */
  public static Wanted outcome(Outcome outcome) {
    Kind kind = outcome.isEvent() ? Kind.SHARE : outcome.isMeasured() ? Kind.SUMMARY : Kind.TEXT;
    return new Wanted("outcomes", "", Optional.of(outcome), kind);
  }

  /**
   * What is wanted of a column of studies, arms or patients.
   *
   * @param column the column, or any that belongs to it, such as {@code age_sd} for {@code age}
   */
  public static Wanted column(String into, String column) {
    if (into.equals("patients")) {
      return new Wanted(into, column, Optional.empty(), ofPatient(column));
    }
    String base = base(column);
    return new Wanted(
        into, base, Optional.empty(), into.equals("arms") ? ofArm(base) : ofStudy(base));
  }

  private static String base(String column) {
    return PARTS.stream()
        .filter(part -> column.endsWith(part))
        .map(part -> column.substring(0, column.length() - part.length()))
        .filter(base -> SUMMARIES.contains(base) || SHARES.contains(base))
        .findFirst()
        .orElse(column);
  }

  private static Kind ofStudy(String column) {
    return switch (column) {
      case "year" -> Kind.YEAR;
      case "study_id" -> Kind.STUDY;
      default -> CODES.contains(column) ? Kind.CODE : Kind.TEXT;
    };
  }

  private static Kind ofArm(String base) {
    if (SUMMARIES.contains(base)) {
      return Kind.SUMMARY;
    }
    if (SHARES.contains(base)) {
      return Kind.SHARE;
    }
    if (NUMBERS.contains(base) || base.startsWith("gustilo_") || base.startsWith("host_")) {
      return Kind.NUMBER;
    }
    return WHOLES.contains(base) ? Kind.WHOLE : CODES.contains(base) ? Kind.CODE : Kind.TEXT;
  }

  private static Kind ofPatient(String column) {
    if (List.of("age", "defect_length", "follow_up").contains(column)) {
      return Kind.MEASURE;
    }
    if (column.equals("infected")) {
      return Kind.ANSWER;
    }
    if (CODES.contains(column)) {
      return Kind.CODE;
    }
    return Outcome.vocabulary()
        .find(column.replace('_', '-'))
        .map(found -> found.isEvent() ? Kind.ANSWER : found.isMeasured() ? Kind.MEASURE : Kind.TEXT)
        .orElse(Kind.TEXT);
  }

  /** The column of a part: {@code age_sd}, of an outcome {@code sd}. */
  String part(String part) {
    return base.isEmpty() ? part : base + "_" + part;
  }

  /** The column of the count itself: {@code events}, {@code infected}. */
  String count() {
    return base.isEmpty() ? "events" : base;
  }

  String total() {
    return base.isEmpty() ? "total" : base + "_of";
  }

  /** The unit that a number has which names none; empty where a unit must be named. */
  public Optional<Unit> usualUnit() {
    if (base.equals("age")) {
      return Optional.of(Unit.YEARS);
    }
    return measured()
        .filter(o -> o.unit().filter(u -> isFixed(u.dimension())).isPresent())
        .flatMap(Outcome::unit);
  }

  private static boolean isFixed(Unit.Dimension dimension) {
    return dimension == Unit.Dimension.SCORE || dimension == Unit.Dimension.COUNT;
  }

  private Optional<Outcome> measured() {
    return outcome.isPresent()
        ? outcome
        : into.equals("patients")
            ? Outcome.vocabulary().find(base.replace('_', '-'))
            : Optional.empty();
  }

  /** What its numbers measure; empty where anything may stand. */
  public Optional<Unit.Dimension> dimension() {
    if (base.equals("defect_length")) {
      return Optional.of(Unit.Dimension.LENGTH);
    }
    if (base.equals("age") || base.equals("follow_up")) {
      return Optional.of(Unit.Dimension.TIME);
    }
    return measured().flatMap(Outcome::unit).map(Unit::dimension);
  }

  /** The columns' own name for people. */
  String name() {
    return outcome.map(Outcome::label).orElse(base.replace('_', ' '));
  }
}
