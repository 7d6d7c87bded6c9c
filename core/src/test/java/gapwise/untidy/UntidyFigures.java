package gapwise.untidy;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Prints how much of each invented untidy sheet is read right, as a table for the docs. */
final class UntidyFigures {
  private UntidyFigures() {}

  /** No arguments. */
  public static void main(String[] arguments) {
    System.out.println(
        "| untidy by | values | right | asked | missed | wrong | to be asked: asked | to be left: left |");
    System.out.println("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    Map<String, Integer> all = new TreeMap<>();
    for (String name : UntidyExamplesTest.ALL) {
      Example example = Example.of(name + ".txt");
      Map<String, Integer> counts = Judged.of(example).counts();
      counts.forEach((verdict, count) -> all.merge(verdict, count, Integer::sum));
      System.out.println(row(example.kind(), counts));
    }
    System.out.println(row("all", all));
  }

  private static String row(String kind, Map<String, Integer> counts) {
    int wrong = starting(counts, "wrong: another value");
    int right = starting(counts, "right");
    int asked = counts.getOrDefault("asked", 0);
    int missed = starting(counts, "missed");
    int toAsk =
        starting(counts, "asked as it should be") + starting(counts, "wrong: taken silently");
    int toLeave =
        starting(counts, "left as it should be") + starting(counts, "wrong: taken though");
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %d | %d | %d | %d of %d | %d of %d |",
        kind,
        right + asked + missed + wrong,
        right,
        asked,
        missed,
        wrong,
        starting(counts, "asked as it should be"),
        toAsk,
        starting(counts, "left as it should be"),
        toLeave);
  }

  private static int starting(Map<String, Integer> counts, String with) {
    return counts.entrySet().stream()
        .filter(entry -> entry.getKey().startsWith(with))
        .mapToInt(Map.Entry::getValue)
        .sum();
  }
}
