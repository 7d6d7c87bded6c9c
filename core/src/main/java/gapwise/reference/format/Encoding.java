package gapwise.reference.format;

/** Encodings of text that are told apart. */
enum Encoding {
  UTF_8("UTF-8"),
  UTF_16_LITTLE("UTF-16LE"),
  UTF_16_BIG("UTF-16BE"),
  WINDOWS_1252("windows-1252");

  private final String charset;

  Encoding(String charset) {
    this.charset = charset;
  }

  String charset() {
    return charset;
  }
}
