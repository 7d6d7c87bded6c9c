package gapwise.place;

/** How one value stands to another, in the forms that sentences need. */
enum Comparative {
  EARLIER("earlier", "Earlier", "an earlier", "early"),
  LATER("later", "Later", "a later", "late"),
  SHORTER("shorter", "Shorter", "a shorter", "short"),
  LONGER("longer", "Longer", "a longer", "long"),
  LOWER("lower", "Lower", "a lower", "low"),
  HIGHER("higher", "Higher", "a higher", "high");

  private final String word;
  private final String first;
  private final String one;
  private final String plain;

  Comparative(String word, String first, String one, String plain) {
    this.word = word;
    this.first = first;
    this.one = one;
    this.plain = plain;
  }

  /** Within a sentence: "earlier". */
  String word() {
    return word;
  }

  /** As the first word of a sentence: "Earlier". */
  String first() {
    return first;
  }

  /** Before a noun: "an earlier". */
  String one() {
    return one;
  }

  /** Without a comparison: "early". */
  String plain() {
    return plain;
  }
}
