package gapwise.server.job;

import java.util.List;
import java.util.Objects;

/**
 * A study that an import would put in the place of another content, as people are asked about it.
 *
 * @param key what agrees to it
 * @param id its name
 * @param label its authors and year, or else its title
 * @param standing which version stands there, who wrote it when and why, or that it was withdrawn
 * @param fields how many fields differ
 * @param lines the first of them; fewer, or none, where a person reads the whole list in a file
 */
public record ChangedStudy(
    String key, String id, String label, Standing standing, int fields, List<Line> lines) {
  public ChangedStudy {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(standing, "standing");
    lines = List.copyOf(lines);
  }

  /**
   * What stands there.
   *
   * @param version its number
   * @param withdrawn whether a person withdrew the study with it
   * @param when the minute, in coordinated universal time
   * @param who who wrote it
   * @param why the reason they gave
   */
  public record Standing(int version, boolean withdrawn, String when, String who, String why) {}

  /**
   * One field that differs.
   *
   * @param sheet sheet of the template
   * @param row what tells the row from its neighbours; empty for the study itself
   * @param field name of the column for people
   * @param before its text now; empty where nothing stands there
   * @param after its text afterwards; empty where nothing will stand there
   */
  public record Line(String sheet, String row, String field, String before, String after) {
    /** Sheet and row. */
    public String where() {
      return row.isEmpty() ? sheet : sheet + ": " + row;
    }
  }

  /** How many fields differ that are not among the lines. */
  public int more() {
    return fields - lines.size();
  }
}
