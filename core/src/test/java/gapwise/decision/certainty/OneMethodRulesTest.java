package gapwise.decision.certainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.decision.certainty.OneMethodRules.Known;
import gapwise.decision.certainty.SeriesSeen.Concern;
import gapwise.decision.situation.Fit;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * What lowers the certainty of a rate after one method, domain by domain, at each of its limits.
 */
class OneMethodRulesTest {
  private static SeriesSeen seen(double share, Concern concern) {
    return new SeriesSeen(share, concern, OptionalDouble.of(0.8), 50, false);
  }

  private static List<SeriesSeen> sound(int number) {
    List<SeriesSeen> series = new ArrayList<>();
    for (int i = 0; i < number; i++) {
      series.add(seen(1.0 / number, Concern.LOW));
    }
    return series;
  }

  private static Known share(double value, double lower, double upper, Optional<Limits> centre) {
    return new Known(
        Quantity.of100(),
        Optional.of(Estimate.of(value, lower, upper)),
        centre,
        OptionalDouble.empty(),
        sound(4),
        new Fit(1, 0, 0, 0),
        false);
  }

  @Test
  void soundSeriesThatFitAndAgreeStayHigh() {
    Rating rating =
        OneMethodRules.propose(share(0.85, 0.79, 0.90, Optional.of(new Limits(0.75, 0.92))));
    assertEquals(Level.HIGH, rating.level());
    assertEquals("", rating.letters());
  }

  @Test
  void doubtOverHalfOfTheInformationLowersOnceOverThreeQuartersTwice() {
    assertEquals(0, bias(0.5, Concern.SERIOUS));
    assertEquals(1, bias(0.51, Concern.SERIOUS));
    assertEquals(1, bias(0.75, Concern.SERIOUS));
    assertEquals(2, bias(0.76, Concern.SERIOUS));
    assertEquals(2, bias(0.51, Concern.CRITICAL));
    assertEquals(1, bias(0.9, Concern.UNKNOWN));
  }

  private static int bias(double share, Concern concern) {
    return OneMethodRules.bias(List.of(seen(share, concern), seen(1 - share, Concern.LOW)))
        .levels();
  }

  @Test
  void otherPatientsOverAQuarterLowerOnceOverThreeQuartersTwice() {
    assertEquals(0, OneMethodRules.indirectness(new Fit(0.75, 0, 0.25, 0), false).levels());
    assertEquals(1, OneMethodRules.indirectness(new Fit(0.7, 0, 0.2, 0.1), false).levels());
    assertEquals(2, OneMethodRules.indirectness(new Fit(0.2, 0, 0.5, 0.3), false).levels());
    assertEquals(0, OneMethodRules.indirectness(new Fit(0, 1, 0, 0), false).levels());
    assertEquals(2, OneMethodRules.indirectness(new Fit(1, 0, 0, 0), true).levels());
    assertEquals(0, OneMethodRules.indirectness(Fit.NONE, false).levels());
  }

  @Test
  void halfTheIntervalAgainstTenOfAHundredOrWhatMatters() {
    assertEquals(0, OneMethodRules.imprecision(share(0.8, 0.71, 0.89, Optional.empty())).levels());
    assertEquals(1, OneMethodRules.imprecision(share(0.8, 0.68, 0.89, Optional.empty())).levels());
    assertEquals(2, OneMethodRules.imprecision(share(0.7, 0.48, 0.89, Optional.empty())).levels());
    Known strict =
        new Known(
            Quantity.of100(),
            Optional.of(Estimate.of(0.8, 0.71, 0.89)),
            Optional.empty(),
            OptionalDouble.of(0.05),
            sound(4),
            Fit.NONE,
            false);
    assertEquals(1, OneMethodRules.imprecision(strict).levels());
  }

  /** A narrow interval from fewer patients than 1.96 squared times p(1 - p) over h squared. */
  @Test
  void fewerPatientsThanTheInformationSizeLowerOnce() {
    Known few =
        new Known(
            Quantity.of100(),
            Optional.of(Estimate.of(0.5, 0.41, 0.59)),
            Optional.empty(),
            OptionalDouble.empty(),
            List.of(
                new SeriesSeen(0.5, Concern.LOW, OptionalDouble.empty(), 48, false),
                new SeriesSeen(0.5, Concern.LOW, OptionalDouble.empty(), 48, false)),
            Fit.NONE,
            false);
    assertEquals(97, InformationSize.ofOneShare(0.5, 0.1));
    assertEquals(1, OneMethodRules.imprecision(few).levels());
  }

  @Test
  void oneSeriesLowersTwiceAndNoAverageThreeTimes() {
    Known one =
        new Known(
            Quantity.mean("months"),
            Optional.of(Estimate.of(10, 9.5, 10.5)),
            Optional.empty(),
            OptionalDouble.empty(),
            List.of(seen(1, Concern.LOW)),
            Fit.NONE,
            false);
    assertEquals(2, OneMethodRules.imprecision(one).levels());
    Known none =
        new Known(
            Quantity.of100(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            sound(2),
            Fit.NONE,
            false);
    assertEquals(3, OneMethodRules.imprecision(none).levels());
    assertEquals(Level.VERY_LOW, OneMethodRules.propose(none).level());
  }

  @Test
  void oneWidthLowersOnce() {
    // A new centre from 30 to 95 beside an average from 55 to 80: 20 of 100 beyond lowers once.
    Known spread = share(0.68, 0.55, 0.80, Optional.of(new Limits(0.28, 0.95)));
    assertEquals(1, OneMethodRules.inconsistency(spread).levels());
    Known wideAverage = share(0.68, 0.33, 0.93, Optional.of(new Limits(0.28, 0.95)));
    assertEquals(0, OneMethodRules.inconsistency(wideAverage).levels());
  }

  @Test
  void smallSeriesThatOnlySucceedLowerOnceOverHalfOfTheInformation() {
    SeriesSeen all = new SeriesSeen(0.6, Concern.LOW, OptionalDouble.of(1), 9, true);
    SeriesSeen large = new SeriesSeen(0.6, Concern.LOW, OptionalDouble.of(1), 60, true);
    SeriesSeen other = seen(0.4, Concern.LOW);
    assertEquals(1, OneMethodRules.unpublished(List.of(all, other)).levels());
    assertEquals(0, OneMethodRules.unpublished(List.of(large, other)).levels());
  }
}
