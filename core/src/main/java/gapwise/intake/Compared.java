package gapwise.intake;

import java.util.List;
import java.util.stream.Stream;

/**
 * How the studies of an import stand beside the evidence base, each by its id, in the order of the
 * file.
 *
 * @param fresh there was none of this name
 * @param same stand there with the same content
 * @param changed stand there with other content, or were withdrawn
 * @param mended stand there with a damaged record, which the import writes anew
 * @param left were left as they stand, as a person wished
 */
public record Compared(
    List<String> fresh,
    List<String> same,
    List<String> changed,
    List<String> mended,
    List<String> left) {
  public Compared {
    fresh = List.copyOf(fresh);
    same = List.copyOf(same);
    changed = List.copyOf(changed);
    mended = List.copyOf(mended);
    left = List.copyOf(left);
  }

  /** Those that stand in the base once the import is stored: all but those that were left. */
  public List<String> all() {
    return Stream.of(fresh, changed, mended, same).flatMap(List::stream).toList();
  }
}
