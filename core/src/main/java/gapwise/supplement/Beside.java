package gapwise.supplement;

import java.util.Objects;

/**
 * A further file of a supplement, such as a table that a page makes.
 *
 * @param path where it lies in the package
 * @param type its media type
 * @param description what it is, in a sentence
 * @param text its content
 */
public record Beside(String path, String type, String description, String text) {
  public Beside {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(type, "type");
    Objects.requireNonNull(description, "description");
    Objects.requireNonNull(text, "text");
  }
}
