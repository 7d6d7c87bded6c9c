package gapwise.place;

/** A share of new series in rounded words: such numbers carry no more than a tenth. */
final class ShareWords {
  private static final double TWENTIETH = 0.05;

  private ShareWords() {}

  /**
   * How the value of a case stands to new series.
   *
   * @param below share of new series expected below it, 0 to 1
   * @param milestone what was reached
   * @param of whose series, such as "bone transport"
   * @return such as "earlier than about 8 in 10 new series of X would be expected to report"
   */
  static String stands(double below, Milestone milestone, String of) {
    double above = 1 - below;
    String would = " new series of " + of + " would be expected to report";
    if (Math.abs(below - 0.5) < TWENTIETH) {
      return "about the middle of what" + would;
    }
    boolean smaller = above > below;
    double passed = Math.max(above, below);
    String word = smaller ? milestone.less() : milestone.more();
    if (passed > 1 - TWENTIETH) {
      return word
          + " than nearly all"
          + would
          + ": fewer than 1 in 20 would report as "
          + plain(word)
          + (milestone.isTime() ? " a time" : " a cost");
    }
    return word + " than about " + Math.min(9, Math.round(10 * passed)) + " in 10" + would;
  }

  private static String plain(String comparative) {
    return switch (comparative) {
      case "earlier" -> "early";
      case "later" -> "late";
      case "shorter" -> "short";
      case "longer" -> "long";
      case "lower" -> "low";
      case "higher" -> "high";
      default -> throw new IllegalArgumentException("no plain form of " + comparative);
    };
  }
}
