package gapwise.reference.pair;

import java.util.Objects;
import java.util.Optional;

/**
 * Which record is meant.
 *
 * @param file name of its file, or {@link #BASE}
 * @param shown how labels name the file: without its ending, unless another file has the same name
 * @param number number in the file, from 1
 * @param line first line in the file; 0 for a study of the base
 * @param id name by which the file knows it, if no other record of the file has it
 */
public record RecordKey(String file, String shown, int number, int line, Optional<String> id) {
  /** Stands in place of a file for what is in the evidence base already. */
  public static final String BASE = "evidence base";

  public RecordKey {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(shown, "shown");
    Objects.requireNonNull(id, "id");
  }

  /** File and id or number: "search:AB12", "search#7". */
  public String label() {
    return id.map(name -> shown + ":" + name).orElse(shown + "#" + number);
  }
}
