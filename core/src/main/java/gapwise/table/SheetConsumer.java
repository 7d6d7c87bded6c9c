package gapwise.table;

/**
 * Takes the sheets of a reading in turn: for each wanted sheet one {@link #begin}, its rows in
 * order, one {@link #end}. A sheet whose header is wrong, or that is empty, is never begun. Blank
 * rows and rows with a problem are not passed on. What a consumer throws reaches the caller of the
 * reader as it is.
 */
public interface SheetConsumer {
  /** Whether to read a sheet at all; nothing in a sheet that is not wanted can be a problem. */
  default boolean wants(String sheet) {
    return true;
  }

  /** A sheet with a sound header begins. */
  void begin(Header header);

  /** The next row of the sheet that was begun last. */
  void row(Row row);

  /** The sheet that was begun last has been read to its end. */
  default void end(Header header) {}
}
