package gapwise.reference;

import java.util.Objects;

/**
 * A field of a file that no part of a reference stands for, kept as it was.
 *
 * @param name tag or name as the file has it
 * @param value its text
 */
public record OtherField(String name, String value) {
  public OtherField {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(value, "value");
  }
}
