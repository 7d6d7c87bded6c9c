package gapwise.store;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * What a document is called.
 *
 * @param kind kebab-case word for what it is, such as study
 * @param key its name among documents of that kind; not blank
 */
public record DocumentId(String kind, String key) {
  private static final Pattern KIND = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

  public DocumentId {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(key, "key");
    if (!KIND.matcher(kind).matches()) {
      throw new IllegalArgumentException("kind must be a kebab-case word, was '" + kind + "'");
    }
    if (key.isBlank()) {
      throw new IllegalArgumentException("key must not be blank, kind " + kind);
    }
  }

  @Override
  public String toString() {
    return kind + " " + key;
  }
}
