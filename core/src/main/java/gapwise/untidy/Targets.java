package gapwise.untidy;

import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.printed.Said;
import gapwise.printed.Statistic;
import gapwise.printed.Wanted;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What is wanted of a target of {@code concepts.txt} in a table of groups or of patients. */
final class Targets {
  private static final Set<String> IDENTITY =
      Set.of(
          "study",
          "author",
          "year",
          "method",
          "group",
          "patient-id",
          "row-number",
          "remark",
          "outcome-name",
          "time-point",
          "subgroup",
          "total-column",
          "p-value");

  private static final Map<String, String> STUDIES =
      Map.of(
          "title", "title", "journal", "journal", "doi", "doi", "pmid", "pmid", "country",
          "country", "centre", "centres", "design", "design");

  private static final Map<String, String> ARMS =
      Map.ofEntries(
          Map.entry("patients", "patients"),
          Map.entry("row-number", "patients"),
          Map.entry("limbs", "limbs"),
          Map.entry("defects", "defects"),
          Map.entry("lost", "lost_to_follow_up"),
          Map.entry("age", "age"),
          Map.entry("male", "male"),
          Map.entry("smokers", "smokers"),
          Map.entry("diabetics", "diabetics"),
          Map.entry("infected", "infected"),
          Map.entry("infection-unclear", "infected"),
          Map.entry("defect-length", "defect_length"),
          Map.entry("follow-up", "follow_up"),
          Map.entry("previous-operations", "previous_operations"),
          Map.entry("bone", "bone_words"),
          Map.entry("mechanism", "mechanism"),
          Map.entry("fixation", "fixation"));

  private static final Map<String, String> PATIENTS =
      Map.of(
          "age",
          "age",
          "sex",
          "sex",
          "bone",
          "bone",
          "segment",
          "segment",
          "infected",
          "infected",
          "infection-unclear",
          "infected",
          "defect-length",
          "defect_length",
          "follow-up",
          "follow_up");

  private Targets() {}

  /** Whether a target says of whom a row tells, rather than what is measured. */
  static boolean isIdentity(String target) {
    return IDENTITY.contains(target);
  }

  static Optional<Wanted> wanted(Heading heading, boolean patients, boolean times) {
    String target = heading.target();
    if (STUDIES.containsKey(target)) {
      return Optional.ofNullable(STUDIES.get(target))
          .map(column -> Wanted.column("studies", column));
    }
    Optional<Outcome> outcome =
        Concepts.outcome(target).map(found -> timed(found, heading.said(), times));
    if (patients) {
      return outcome
          .map(found -> found.code().replace('-', '_'))
          .or(() -> Optional.ofNullable(PATIENTS.get(target)))
          .map(column -> Wanted.column("patients", column));
    }
    return outcome
        .map(Wanted::outcome)
        .or(
            () ->
                Optional.ofNullable(ARMS.get(target)).map(column -> Wanted.column("arms", column)));
  }

  /** "Union (weeks)" is a time, as is a column of union that holds weeks. */
  private static Outcome timed(Outcome outcome, Said said, boolean times) {
    boolean inTime =
        said.unit().filter(unit -> unit.dimension() == Unit.Dimension.TIME).isPresent();
    boolean measured =
        said.says(Statistic.MEAN) || said.says(Statistic.MEDIAN) || said.says(Statistic.SD);
    boolean isTime = inTime || times || measured;
    return switch (outcome.code()) {
      case "union", "primary-union", "final-union" ->
          isTime ? Outcome.of("time-to-union") : outcome;
      case "full-weight-bearing-reached" ->
          isTime ? Outcome.of("time-to-full-weight-bearing") : outcome;
      case "total-operations", "unplanned-operations" -> outcome;
      default -> outcome;
    };
  }
}
