package gapwise.evidence.rule;

import gapwise.evidence.EventCount;
import gapwise.evidence.ReportedValue;
import gapwise.evidence.Study;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * One count of so many of so many, wherever it stands in a study.
 *
 * @param count the count
 * @param events its column of events
 * @param total its column of totals
 * @param percent its column of percentages
 * @param part names a part of the record by a column
 */
public record CountAt(
    EventCount count,
    String events,
    String total,
    String percent,
    Function<String, RecordPart> part) {

  public static List<CountAt> of(Study study) {
    List<CountAt> all = new ArrayList<>();
    for (Group group : Group.of(study)) {
      all.addAll(of(group));
    }
    for (ReportAt at : ReportAt.of(study)) {
      if (at.report().value() instanceof ReportedValue.Events events) {
        all.add(new CountAt(events.count(), "events", "total", "percent", at::part));
      }
    }
    return all;
  }

  /** The counts of the baseline. */
  public static List<CountAt> of(Group group) {
    List<CountAt> all = new ArrayList<>();
    add(all, group, "male", group.baseline().male());
    add(all, group, "smokers", group.baseline().smokers());
    add(all, group, "diabetics", group.baseline().diabetics());
    add(all, group, "infected", group.baseline().infected());
    return all;
  }

  private static void add(List<CountAt> all, Group group, String name, Optional<EventCount> count) {
    count.ifPresent(
        c -> all.add(new CountAt(c, name, name + "_of", name + "_percent", group::part)));
  }

  public RecordPart at(String column) {
    return part.apply(column);
  }
}
