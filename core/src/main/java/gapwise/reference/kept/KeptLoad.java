package gapwise.reference.kept;

import java.util.Objects;

/**
 * A load that was accepted.
 *
 * @param file the file
 * @param added references that were new
 * @param changed references that another export of the same file had given otherwise
 * @param known references that stood there with the same content
 */
public record KeptLoad(LoadedFile file, int added, int changed, int known) {
  public KeptLoad {
    Objects.requireNonNull(file, "file");
    if (added < 0 || changed < 0 || known < 0) {
      throw new IllegalArgumentException("counts must be 0 or more");
    }
  }
}
