package gapwise.store;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A wish to add one version to a document.
 *
 * @param id the document
 * @param json the new content; empty to delete the document
 * @param expectedVersion the version that the writer has seen and means to follow, 0 for none yet;
 *     empty when any may stand there
 */
public record Write(DocumentId id, Optional<String> json, OptionalInt expectedVersion) {
  public Write {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(json, "json");
    Objects.requireNonNull(expectedVersion, "expectedVersion");
    if (json.filter(String::isBlank).isPresent()) {
      throw new IllegalArgumentException("json must not be blank, document " + id);
    }
    if (expectedVersion.isPresent() && expectedVersion.getAsInt() < 0) {
      throw new IllegalArgumentException(
          "expectedVersion must be 0 or more, was " + expectedVersion.getAsInt());
    }
  }

  /** A first or next version, whatever stands there now. */
  public static Write put(String kind, String key, String json) {
    return new Write(new DocumentId(kind, key), Optional.of(json), OptionalInt.empty());
  }

  /**
   * A version that ends the document; its history stays. Deleting what is not there, or not any
   * more, is a conflict.
   */
  public static Write delete(String kind, String key) {
    return new Write(new DocumentId(kind, key), Optional.empty(), OptionalInt.empty());
  }

  /** The same wish, but only if the document's last version is this one; 0: if there is none. */
  public Write expecting(int version) {
    return new Write(id, json, OptionalInt.of(version));
  }
}
