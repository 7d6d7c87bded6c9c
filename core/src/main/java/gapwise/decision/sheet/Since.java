package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;

import gapwise.curation.StudiesAt;
import gapwise.curation.StudyVersion;
import gapwise.curation.VersionStamp;
import gapwise.decision.option.Column;
import gapwise.decision.option.Option;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What has changed since a sheet was printed.
 *
 * @param studies those behind its numbers, then or now, that were added, changed or withdrawn, with
 *     who, when and why
 * @param numbers what moved, from what to what
 */
public record Since(List<String> studies, List<String> numbers) {
  public Since {
    studies = List.copyOf(studies);
    numbers = List.copyOf(numbers);
  }

  /**
   * What lies between two sheets of the same question.
   *
   * @param studies the studies as they stand now, with their histories
   * @param made number of the change from which the first was made
   */
  public static Since between(Sheet then, Sheet now, StudiesAt studies, long made) {
    Map<String, String> labels = new TreeMap<>();
    then.team().sources().forEach(one -> labels.put(one.id(), one.label()));
    now.team().sources().forEach(one -> labels.put(one.id(), one.label()));
    List<String> changed = new ArrayList<>();
    labels.forEach(
        (id, label) ->
            studies.history(id).stream()
                .filter(version -> version.stamp().change() > made)
                .forEach(version -> changed.add(told(label, version))));
    return new Since(changed, moved(then, now));
  }

  private static String told(String study, StudyVersion version) {
    VersionStamp stamp = version.stamp();
    Map<String, String> places =
        Map.of(
            "study",
            study,
            "when",
            LocalDate.ofInstant(stamp.when(), ZoneOffset.UTC).toString(),
            "who",
            stamp.who(),
            "why",
            stamp.why());
    if (version.study().isEmpty()) {
      return say("sheet.since-withdrawn", places);
    }
    return stamp.version() == 1
        ? say("sheet.since-added", places)
        : say("sheet.since-changed", places);
  }

  private static List<String> moved(Sheet then, Sheet now) {
    List<String> moved = new ArrayList<>();
    for (Option option : now.options()) {
      for (Column column : now.table().columns()) {
        String is = TeamPages.told(now.table(), option, column);
        String was =
            then.options().stream()
                .filter(one -> one.method().equals(option.method()))
                .findFirst()
                .map(one -> before(then, one, column))
                .orElseGet(() -> say("decision.no-study"));
        if (!is.equals(was)) {
          moved.add(
              say(
                  "sheet.since-moved",
                  Map.of(
                      "method",
                      option.method().shortLabel(),
                      "outcome",
                      column.aspect().label(),
                      "before",
                      was,
                      "now",
                      is)));
        }
      }
    }
    return moved;
  }

  /** The aspect may have been counted in another way then, which its number says by its column. */
  private static String before(Sheet then, Option option, Column column) {
    Column own =
        then.table().columns().stream()
            .filter(one -> one.aspect() == column.aspect())
            .findFirst()
            .orElseThrow();
    String told = TeamPages.told(then.table(), option, own);
    return own.outcome().equals(column.outcome())
        ? told
        : say("sheet.outcome", Map.of("outcome", told, "unit", own.outcome().label()));
  }
}
