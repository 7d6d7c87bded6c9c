package gapwise.place;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A month is 30.44 days, a week 7 days, as docs/methods tell. */
class UsualSpanTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // 0.2 x 30.44 = 6.1 days
        "0.2 | 0.2 | about 6 days in 2 series",
        "0.03 | 0.03 | about 1 day in 2 series",
        // 0.1 x 30.44 = 3.0 and 0.4 x 30.44 = 12.2 days
        "0.1 | 0.4 | 3 to 12 days on average in 2 series",
        // 0.5 x 30.44 / 7 = 2.17 and 0.9 x 30.44 / 7 = 3.91 weeks
        "0.5 | 0.9 | 2.2 to 3.9 weeks on average in 2 series",
        "1 | 1 | about 1 month in 2 series",
        "0.5 | 3 | 0.5 to 3 months on average in 2 series"
      })
  void whatIsShorterThanAMonthIsToldInWeeksOrDays(double one, double other, String words) {
    assertEquals(words, UsualSpan.of(List.of(one, other)).words());
  }
}
