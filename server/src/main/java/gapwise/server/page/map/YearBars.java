package gapwise.server.page.map;

import static gapwise.sentence.Sentences.say;

import gapwise.search.SearchRequest;
import gapwise.search.StudySearch;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Groups of patients by year of publication, as bars.
 *
 * @param bars years from the first to the last with any group, empty years included
 * @param most groups in the fullest year
 */
public record YearBars(List<Bar> bars, int most) {
  /** Years shown at most, the latest; older ones are told in words. */
  private static final int MOST_YEARS = 60;

  /** One year. */
  public record Bar(int year, int arms) {}

  static YearBars of(StudySearch search, OptionalInt first, OptionalInt last) {
    if (first.isEmpty() || last.isEmpty()) {
      return new YearBars(List.of(), 0);
    }
    int from = Math.max(first.getAsInt(), last.getAsInt() - MOST_YEARS + 1);
    List<Bar> bars =
        IntStream.rangeClosed(from, last.getAsInt())
            .mapToObj(year -> new Bar(year, arms(search, year)))
            .toList();
    return new YearBars(bars, bars.stream().mapToInt(Bar::arms).max().orElse(0));
  }

  private static int arms(StudySearch search, int year) {
    SearchRequest ofYear = SearchRequest.EVERYTHING.ofYear(year);
    return search.search(ofYear, StudySearch.Order.YEAR_DESCENDING, 0, 0).arms();
  }

  /** What it shows, for those who cannot see it; there is at least one year. */
  public String title() {
    return say(
        "page.groups-by-year",
        Map.of(
            "first",
            Integer.toString(bars.get(0).year()),
            "last",
            Integer.toString(bars.get(bars.size() - 1).year()),
            "most",
            Integer.toString(most)));
  }

  /** Left edge of a bar in a drawing 1000 wide. */
  public double x(int index) {
    return 20 + index * step();
  }

  /** Width of a bar in a drawing 1000 wide. */
  public double width() {
    return Math.max(2, step() * 0.7);
  }

  /** Height of a bar in a drawing whose fullest bar is 90 high. */
  public double height(int index) {
    return most == 0 ? 0 : 90.0 * bars.get(index).arms() / most;
  }

  /** Whether a year is named below its bar: the first, the last, and round ones between. */
  public boolean named(int index) {
    int year = bars.get(index).year();
    boolean edge = index == 0 || index == bars.size() - 1;
    boolean clear = index > 2 && index < bars.size() - 3;
    return edge || (year % 5 == 0 && clear);
  }

  private double step() {
    return 960.0 / Math.max(1, bars.size());
  }
}
