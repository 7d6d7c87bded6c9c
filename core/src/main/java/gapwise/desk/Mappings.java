package gapwise.desk;

import gapwise.store.WorkingCopies;
import gapwise.untidy.Mapping;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

/**
 * What people accepted of the columns of untidy sheets, kept for the next sheet of the same kind. A
 * sheet of a kind is known by the words of its heading.
 */
public final class Mappings {
  private static final String KIND = "column-mapping";

  /** The last kinds of sheets; each is held against every sheet that comes in. */
  private static final int MOST = 200;

  private final WorkingCopies copies;

  public Mappings(WorkingCopies copies) {
    this.copies = Objects.requireNonNull(copies, "copies");
  }

  /** All that are kept, the last accepted first. */
  public List<Mapping> all() {
    List<Mapping> all = new ArrayList<>();
    copies.forEach(
        KIND,
        copy -> {
          if (all.size() < MOST) {
            all.add(Mapping.ofJson(copy.json()));
          }
        });
    return List.copyOf(all);
  }

  /**
   * Keeps one; another of the same headings gives way to it.
   *
   * @return whether it was kept: not where it maps nothing, nor where somebody else kept one of the
   *     same headings at this moment, which is as good
   */
  public boolean keep(Mapping mapping, String who) {
    if (mapping.columns().isEmpty()) {
      return false;
    }
    String key = key(mapping);
    int seen = copies.find(KIND, key).map(copy -> copy.version()).orElse(0);
    return copies.keep(KIND, key, mapping.toJson(), who, seen).isPresent();
  }

  /** Whether one with these headings is kept, whatever it says of them. */
  public boolean isKept(Mapping mapping) {
    return copies.find(KIND, key(mapping)).isPresent();
  }

  /**
   * Forgets what is kept for these headings, so that the next sheet is read as if for the first
   * time.
   *
   * @return whether one was kept
   */
  public boolean forget(Mapping mapping) {
    return copies.drop(KIND, key(mapping));
  }

  private static String key(Mapping mapping) {
    String headers =
        String.join("|", mapping.columns().stream().map(Mapping.Column::header).sorted().toList());
    return UUID.nameUUIDFromBytes(headers.getBytes(StandardCharsets.UTF_8)).toString();
  }
}
