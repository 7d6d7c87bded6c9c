package gapwise.reference.format;

/**
 * A field as it stands in a file.
 *
 * @param name tag or name in the case that the format has
 * @param value its text, lines joined
 * @param line first line in the file
 */
record RawField(String name, String value, int line) {}
