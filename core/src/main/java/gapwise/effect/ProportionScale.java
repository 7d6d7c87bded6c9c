package gapwise.effect;

import java.util.Locale;

/** Scales on which proportions are pooled, with the variance each gives x events in n patients. */
enum ProportionScale {
  /** log(x/(n-x)), variance 1/x + 1/(n-x). */
  LOGIT {
    @Override
    StudyEffect effect(ArmCounts c) {
      return StudyEffect.of(
          Math.log(c.events()) - Math.log(c.nonEvents()), 1 / c.events() + 1 / c.nonEvents());
    }

    @Override
    boolean isInfinite(ArmCounts c) {
      return c.events() == 0 || c.nonEvents() == 0;
    }

    @Override
    double toProportion(double value) {
      return 1 / (1 + Math.exp(-value));
    }
  },
  /** Half of asin sqrt(x/(n+1)) + asin sqrt((x+1)/(n+1)), variance 1/(4n+2). */
  DOUBLE_ARCSINE {
    @Override
    StudyEffect effect(ArmCounts c) {
      return StudyEffect.of(DoubleArcsine.of(c), 1 / (4 * c.total() + 2));
    }

    @Override
    double toProportion(double value) {
      return ARCSINE.toProportion(value);
    }
  },
  /** asin sqrt(x/n), variance 1/(4n). */
  ARCSINE {
    @Override
    StudyEffect effect(ArmCounts c) {
      return StudyEffect.of(
          Math.atan2(Math.sqrt(c.events()), Math.sqrt(c.nonEvents())), 1 / (4 * c.total()));
    }

    @Override
    double toProportion(double value) {
      double sine = Math.sin(Math.max(0, Math.min(Math.PI / 2, value)));
      return sine * sine;
    }
  },
  /** log(x/n), variance 1/x - 1/n. */
  LOG {
    @Override
    StudyEffect effect(ArmCounts c) {
      return StudyEffect.of(Math.log(c.proportion()), c.nonEvents() / c.events() / c.total());
    }

    @Override
    boolean isInfinite(ArmCounts c) {
      return c.events() == 0;
    }

    @Override
    double toProportion(double value) {
      return Math.min(1, Math.exp(value));
    }
  },
  /** x/n, variance p(1-p)/n. */
  RAW {
    @Override
    StudyEffect effect(ArmCounts c) {
      return StudyEffect.of(
          c.proportion(), c.proportion() * (c.nonEvents() / c.total()) / c.total());
    }

    @Override
    double toProportion(double value) {
      return Math.max(0, Math.min(1, value));
    }
  };

  abstract StudyEffect effect(ArmCounts counts);

  /** Whether the effect has no finite value, so that something must be added first. */
  boolean isInfinite(ArmCounts counts) {
    return false;
  }

  /** The proportion at a value, cut at 0 and 1. */
  abstract double toProportion(double value);

  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
