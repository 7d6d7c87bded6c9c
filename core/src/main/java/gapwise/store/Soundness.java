package gapwise.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a look at every page and every record of a database file found.
 *
 * @param versions how many versions could be read
 * @param lastChange number of the last change, 0 when there is none
 * @param lastChangeAt when that was written
 * @param withoutChecksum versions with content and no checksum, which other programs or older
 *     layouts leave
 * @param structure what is wrong with the file as such, in the database's own words
 * @param records the versions that are not as they were written, in the order of the change log
 */
public record Soundness(
    long versions,
    long lastChange,
    Optional<Instant> lastChangeAt,
    long withoutChecksum,
    List<String> structure,
    List<DamagedRecord> records) {
  private static final int MOST_NAMED = 20;

  public Soundness {
    Objects.requireNonNull(lastChangeAt, "lastChangeAt");
    structure = List.copyOf(structure);
    records = List.copyOf(records);
  }

  /** Whether nothing is wrong. */
  public boolean isSound() {
    return structure.isEmpty() && records.isEmpty();
  }

  /**
   * One sentence that names the damaged records, at most {@value #MOST_NAMED}; empty when sound.
   */
  public String told() {
    List<String> parts = new ArrayList<>();
    if (!structure.isEmpty()) {
      parts.add("The file is damaged (" + structure.get(0) + ").");
    }
    if (!records.isEmpty()) {
      int named = Math.min(MOST_NAMED, records.size());
      String names =
          String.join("; ", records.subList(0, named).stream().map(DamagedRecord::line).toList());
      String more = named < records.size() ? "; and " + (records.size() - named) + " more" : "";
      parts.add(
          (records.size() == 1
                  ? "1 record is damaged: "
                  : records.size() + " records are damaged: ")
              + names
              + more
              + ".");
    } else if (!structure.isEmpty()) {
      parts.add("Each of the " + versions + " records in it could be read as it was written.");
    }
    return String.join(" ", parts);
  }
}
