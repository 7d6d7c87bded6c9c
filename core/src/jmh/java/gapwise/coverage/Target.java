package gapwise.coverage;

/** What an interval is to hold. */
enum Target {
  AVERAGE("the average over centres"),
  MIDDLE("the middle centre"),
  FURTHER("one more centre");

  private final String words;

  Target(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }
}
