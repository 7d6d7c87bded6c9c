package gapwise.appraisal;

import gapwise.evidence.Appraisal;
import gapwise.evidence.vocabulary.Instrument;
import gapwise.evidence.vocabulary.Risk;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What follows from one appraisal.
 *
 * @param appraisal from which
 * @param whole the judgement on the whole
 * @param points what the answers count together; empty where nothing is counted or items are open
 * @param unanswered items that are asked and have no answer, in the order of the instrument
 */
public record Conclusion(
    Appraisal appraisal, Whole whole, Optional<Points> points, List<Instrument.Item> unanswered) {

  public Conclusion {
    unanswered = List.copyOf(unanswered);
  }

  /** The judgement on the whole, and whence it comes. */
  public sealed interface Whole {
    /** Whether it stands by what people said or the rule of the instrument, or not at all. */
    Optional<Instrument.Judgement> judgement();

    /** As people settled it. */
    record Settled(Instrument.Judgement said) implements Whole {
      @Override
      public Optional<Instrument.Judgement> judgement() {
        return Optional.of(said);
      }
    }

    /** The worst domain, by the rule of the instrument; nobody settled it. */
    record ByRule(Instrument.Judgement worst) implements Whole {
      @Override
      public Optional<Instrument.Judgement> judgement() {
        return Optional.of(worst);
      }
    }

    /** Settled as better than the worst domain, which the rule forbids: the worst domain counts. */
    record BetterThanRule(Instrument.Judgement said, Instrument.Judgement worst) implements Whole {
      @Override
      public Optional<Instrument.Judgement> judgement() {
        return Optional.of(worst);
      }
    }

    /** Nobody settled it, and no rule gives it: too many items are open, or there is no rule. */
    record Open() implements Whole {
      @Override
      public Optional<Instrument.Judgement> judgement() {
        return Optional.empty();
      }
    }
  }

  /** What follows from an appraisal. */
  public static Conclusion of(Appraisal appraisal) {
    return new Conclusion(
        appraisal, whole(appraisal), Points.of(appraisal), Asked.unanswered(appraisal));
  }

  private static Whole whole(Appraisal appraisal) {
    Optional<Instrument.Judgement> said = appraisal.settled();
    Optional<Instrument.Judgement> worst = worst(appraisal);
    if (said.isEmpty()) {
      boolean known =
          Asked.unanswered(appraisal).isEmpty()
              || worst.flatMap(Instrument.Judgement::risk).filter(Risk::isHigh).isPresent();
      return worst.filter(one -> known).<Whole>map(Whole.ByRule::new).orElseGet(Whole.Open::new);
    }
    Instrument instrument = appraisal.instrument();
    return worst
        .filter(one -> instrument.worseness(said.get()) < instrument.worseness(one))
        .<Whole>map(one -> new Whole.BetterThanRule(said.get(), one))
        .orElseGet(() -> new Whole.Settled(said.get()));
  }

  /** The worst domain that has an answer, where the instrument has a rule about it. */
  private static Optional<Instrument.Judgement> worst(Appraisal appraisal) {
    Instrument instrument = appraisal.instrument();
    if (instrument.overallBy() != Instrument.OverallBy.WORST_DOMAIN) {
      return Optional.empty();
    }
    return instrument.items().stream()
        .flatMap(item -> appraisal.judged(item).stream())
        .max(Comparator.comparingInt(instrument::worseness));
  }

  /** The risk of bias that the judgement on the whole stands for. */
  public Risk risk() {
    return whole.judgement().flatMap(Instrument.Judgement::risk).orElse(Risk.NOT_RATED);
  }
}
