package gapwise.effect;

import gapwise.effect.SpreadConversion.FromTest;
import java.util.List;

/** What measures of two means share: each study has its effect alone, and what its means tell. */
interface OfTwoMeans extends Measure<TwoMeans> {
  /** The effect of one study. */
  StudyEffect effect(TwoMeans study);

  @Override
  default List<StudyEffect> effects(List<TwoMeans> studies) {
    return studies.stream().map(this::effect).toList();
  }

  @Override
  default boolean fromMedian(TwoMeans study) {
    return study.fromMedian();
  }

  @Override
  default boolean looksSkewed(TwoMeans study) {
    return study.looksSkewed();
  }

  @Override
  default FromTest fromTest(TwoMeans study) {
    return study.fromTest();
  }
}
