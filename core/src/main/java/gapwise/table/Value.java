package gapwise.table;

/** What stands in a cell, before it is known where. */
record Value(String text, Stored stored) {
  static final Value BLANK = new Value("", Stored.TEXT);

  static Value text(String text) {
    return text.isEmpty() ? BLANK : new Value(text, Stored.TEXT);
  }

  boolean isBlank() {
    return Blank.is(text);
  }
}
