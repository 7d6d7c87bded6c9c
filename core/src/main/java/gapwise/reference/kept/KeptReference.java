package gapwise.reference.kept;

import com.fasterxml.jackson.annotation.JsonIgnore;
import gapwise.reference.Author;
import gapwise.reference.Reference;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * A reference as it is kept, with all that a person reads of it to decide whether its paper is
 * worth reading. Which records are one paper is told by {@link ReferenceGroups}.
 *
 * @param id its name in the evidence base, which never changes
 * @param reference what its record says
 * @param sources every record of a file that said so, the first one first; at least one
 */
public record KeptReference(String id, Reference reference, List<RecordSource> sources) {
  /** How names of kept references begin; a study is never called so among decisions. */
  public static final String PREFIX = "ref-";

  public KeptReference {
    sources = List.copyOf(sources);
    if (!isId(id)) {
      throw new IllegalArgumentException("not the id of a kept reference: '" + id + "'");
    }
    if (sources.isEmpty()) {
      throw new IllegalArgumentException("a kept reference needs a source, " + id);
    }
  }

  /** Whether a text has the form of an id. */
  public static boolean isId(String text) {
    return text.matches(PREFIX + "[0-9a-f]{16}");
  }

  /** Its title. */
  @JsonIgnore
  public String title() {
    return reference.titles().main();
  }

  /** Its abstract. */
  @JsonIgnore
  public Optional<String> summary() {
    return reference.summary();
  }

  /** All its authors, separated by semicolons; empty where none is named. */
  @JsonIgnore
  public String authors() {
    return reference.authors().stream().map(Author::line).collect(Collectors.joining("; "));
  }

  /** Its year. */
  @JsonIgnore
  public OptionalInt year() {
    return reference.published().year();
  }

  /** Its journal, in full or as it is abbreviated. */
  @JsonIgnore
  public Optional<String> journal() {
    return reference.published().journal().or(() -> reference.published().shortJournal());
  }
}
