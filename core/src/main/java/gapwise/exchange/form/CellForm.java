package gapwise.exchange.form;

import java.util.List;

/**
 * How the text of a cell stands for a value, both ways: {@code read(write(value))} equals the
 * value.
 *
 * @param <T> the value
 */
public interface CellForm<T> {
  /** What a column holds in the terms of the Frictionless Table Schema. */
  enum Type {
    STRING("string"),
    NUMBER("number"),
    INTEGER("integer"),
    YEAR_MONTH("string"),
    DAY("date");

    private final String schemaName;

    Type(String schemaName) {
      this.schemaName = schemaName;
    }

    public String schemaName() {
      return schemaName;
    }
  }

  /**
   * The value of a text that is not blank, spaces around it removed.
   *
   * @throws UnreadableException when it stands for none
   */
  T read(String text) throws UnreadableException;

  String write(T value);

  default Type type() {
    return Type.STRING;
  }

  /** The words of a closed list; empty when any words are taken. */
  default List<String> allowed() {
    return List.of();
  }
}
