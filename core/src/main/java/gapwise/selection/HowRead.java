package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Study;
import gapwise.evidence.vocabulary.ReadAs;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the studies behind a result were read. Each counts once: what was read in another paper that
 * tells of it counts as that, whoever checked it; the others by how far their extraction has come.
 *
 * @param agreed by two who read them apart
 * @param checked by a second person
 * @param once extracted once
 * @param drafts not yet extracted as a whole
 * @param secondHand read in another paper that tells of them
 */
public record HowRead(int agreed, int checked, int once, int drafts, int secondHand) {
  public HowRead {
    if (agreed < 0 || checked < 0 || once < 0 || drafts < 0 || secondHand < 0) {
      throw new IllegalArgumentException("counts must not be negative");
    }
  }

  /** Of studies, each of which may be named several times. */
  public static HowRead of(Collection<Study> studies) {
    Map<String, Study> different = new LinkedHashMap<>();
    studies.forEach(study -> different.put(study.id(), study));
    int[] counts = new int[5];
    for (Study study : different.values()) {
      boolean told = study.readAs().equals(Optional.of(ReadAs.SECOND_HAND));
      int at =
          told
              ? 4
              : switch (study.status()) {
                case AGREED -> 0;
                case VERIFIED -> 1;
                case EXTRACTED -> 2;
                case DRAFT -> 3;
              };
      counts[at]++;
    }
    return new HowRead(counts[0], counts[1], counts[2], counts[3], counts[4]);
  }

  /** Of the studies that rows are of. */
  public static HowRead ofRows(Collection<SelectedRow> rows) {
    return of(rows.stream().map(SelectedRow::study).toList());
  }

  /** All of them. */
  public int studies() {
    return agreed + checked + once + drafts + secondHand;
  }

  /**
   * Such as "Of the 9 studies, 1 is agreed by two who read it apart, 8 are extracted once."; empty
   * where there is no study.
   */
  public Optional<String> words() {
    if (studies() == 0) {
      return Optional.empty();
    }
    List<String> parts = new ArrayList<>();
    add(parts, agreed, say("selection.read-agreed", counted(agreed)));
    add(parts, checked, say("selection.read-checked", counted(checked)));
    add(parts, once, say("selection.read-once", counted(once)));
    add(parts, drafts, say("selection.read-drafts", counted(drafts)));
    add(parts, secondHand, say("selection.read-second-hand", counted(secondHand)));
    boolean alike = parts.size() == 1 && studies() > 1;
    return Optional.of(
        say(
            alike ? "selection.how-read-alike" : "selection.how-read",
            Map.of("studies", studies(), "parts", String.join(", ", parts))));
  }

  /** Of all of them their number would be said twice. */
  private Map<String, Object> counted(int count) {
    return Map.of("count", count, "number", studies() == count ? "" : count + " ");
  }

  private static void add(List<String> parts, int count, String words) {
    if (count > 0) {
      parts.add(words);
    }
  }
}
