package gapwise.sentence;

/** Whole numbers in words of a page, thousands apart: "1,204 studies". */
public final class Counted {
  private static final int GROUP = 1000;

  private Counted() {}

  /** A number with its word. */
  public static String of(long number, String one, String many) {
    return grouped(number) + " " + (number == 1 ? one : many);
  }

  /** A number of 0 or more alone. */
  public static String grouped(long number) {
    if (number < GROUP) {
      return Long.toString(number);
    }
    long rest = number % GROUP;
    String digits = Long.toString(GROUP + rest).substring(1);
    return grouped(number / GROUP) + "," + digits;
  }
}
