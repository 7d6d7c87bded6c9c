package gapwise.synthesis.pooling;

import static gapwise.sentence.Sentences.say;

import gapwise.effect.StudyData;
import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the four ways of Mantel and Haenszel share: sums over studies, then a value from the sums.
 */
abstract class MantelHaenszel implements CountPooling {
  /** The sums of no study. */
  abstract CountSums none();

  /** What one study adds. */
  abstract CountSums of(StudyData study);

  /** The pooled value, without weights. */
  abstract Pooled pooled(CountSums all, double level);

  @Override
  public final Pooled pool(List<? extends StudyData> studies, double level) {
    List<CountSums> each = new ArrayList<>();
    CountSums all = none();
    for (StudyData study : studies) {
      CountSums one = of(study);
      each.add(one);
      all = all.plus(one);
    }
    Pooled pooled = pooled(all, level);
    double total = all.denominator();
    return pooled.mean().isEmpty()
        ? pooled
        : pooled.with(each.stream().map(one -> one.denominator() / total).toList());
  }

  /** The studies before it and those after it, each summed once: linear in their number. */
  @Override
  public final List<PooledValue> withoutEach(List<? extends StudyData> studies, double level) {
    List<CountSums> after = new ArrayList<>();
    after.add(none());
    for (int i = studies.size() - 1; i > 0; i--) {
      after.add(of(studies.get(i)).plus(after.get(after.size() - 1)));
    }
    Collections.reverse(after);
    List<PooledValue> without = new ArrayList<>();
    CountSums before = none();
    for (int i = 0; i < studies.size(); i++) {
      Pooled rest = pooled(before.plus(after.get(i)), level);
      without.add(PooledValue.of(rest, studies.size() - 1));
      before = before.plus(of(studies.get(i)));
    }
    return without;
  }

  /** A value with normal limits. */
  static Pooled normal(CountSums all, double estimate, double standardError, double level) {
    return new Pooled(
        Optional.of(
            PooledMean.symmetric(estimate, standardError, ReferenceDistribution.normal(), level)),
        Optional.empty(),
        all.heterogeneity(estimate),
        List.of(),
        OptionalDouble.of(standardError),
        Optional.empty(),
        warnings(all.studies(), standardError));
  }

  private static List<Problem> warnings(int studies, double standardError) {
    if (standardError == 0) {
      return List.of(new Problem("", "zero-width-interval", say("analysis.every-variance-zero")));
    }
    return studies > 1
        ? List.of()
        : List.of(new Problem("", "single-study", say("analysis.one-study")));
  }
}
