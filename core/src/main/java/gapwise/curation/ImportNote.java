package gapwise.curation;

import gapwise.problem.Problem;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * What is remembered of studies that are brought in, beside the studies themselves.
 *
 * @param who who brings them
 * @param why the reason in words
 * @param acknowledged the doubts that a person lets stand
 * @param acknowledgedKeys the keys of these, by which they are not asked again
 * @param reasons by whom and why a doubt was let stand, by its key; of some only
 */
public record ImportNote(
    String who,
    String why,
    List<Problem> acknowledged,
    List<String> acknowledgedKeys,
    Map<String, String> reasons) {
  public ImportNote {
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(why, "why");
    acknowledged = List.copyOf(acknowledged);
    acknowledgedKeys = List.copyOf(acknowledgedKeys);
    reasons = Collections.unmodifiableMap(new TreeMap<>(reasons));
  }

  /** The record of an import with this note. */
  ImportRecord record(int saved, int unchanged) {
    return new ImportRecord(saved, unchanged, acknowledged, acknowledgedKeys, reasons);
  }
}
