package gapwise.synthesis.network.exact;

import gapwise.synthesis.network.ChiSquaredTest;
import gapwise.synthesis.network.DesignByTreatment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Predicate;

/**
 * The same studies with some of their treatments taken for others, so that these have effects of
 * their own, tau being shared: how far the likelihood rises tells whether the network holds
 * together. Fitted anew each time.
 */
final class Apart {
  /** Joins what tells a treatment apart with its name; no name of a treatment begins with it. */
  private static final String MARK = "\u0000";

  private final List<CountedStudy> studies;
  private final ExactFit whole;
  private final Pieces pieces;
  private final boolean random;

  /**
   * @param whole the network as it is
   * @param random whether it has a variance between studies
   */
  Apart(List<CountedStudy> studies, Pieces pieces, ExactFit whole, boolean random) {
    this.studies = studies;
    this.pieces = pieces;
    this.whole = whole;
    this.random = random;
  }

  private record Fitted(Pieces pieces, ExactFit fit) {}

  private Optional<Fitted> fitted(BiFunction<CountedStudy, String, String> named) {
    List<CountedStudy> renamed = new ArrayList<>();
    for (CountedStudy study : studies) {
      renamed.add(
          new CountedStudy(
              study.label(),
              study.treatments().stream().map(name -> named.apply(study, name)).toList(),
              study.arms()));
    }
    Pieces apart = Pieces.of(renamed, pieces.names().get(0));
    int contrasts = studies.stream().mapToInt(CountedStudy::contrasts).sum();
    if (apart.falling().isPresent() || (random && contrasts <= apart.parameters())) {
      return Optional.empty();
    }
    return ExactFit.of(apart.likelihood(renamed), random)
        .filter(ExactFit::converged)
        .map(fit -> new Fitted(apart, fit));
  }

  private double pValue(Fitted apart, int degrees) {
    return test(apart, degrees).pValue().orElseThrow();
  }

  private ChiSquaredTest test(Fitted apart, int degrees) {
    double risen = apart.fit().top().value() - whole.top().value();
    return new ChiSquaredTest(Math.max(0, 2 * risen), degrees);
  }

  /**
   * All design-by-treatment interactions, a design being the exact set of treatments of a study, by
   * the likelihood ratio; empty where designs have no effects of their own to set against each
   * other, or those of one have no highest point.
   */
  Optional<DesignByTreatment> designs() {
    return fitted((study, name) -> new TreeSet<>(study.treatments()) + MARK + name)
        .filter(apart -> apart.pieces().parameters() > pieces.parameters())
        .map(
            apart ->
                new DesignByTreatment(
                    test(apart, apart.pieces().parameters() - pieces.parameters()),
                    apart.fit().top().tau() * apart.fit().top().tau()));
  }

  /**
   * Direct and indirect evidence; empty unless studies of two arms alone hold the pair and there is
   * another way.
   */
  Optional<ExactSplit> split(String one, String other) {
    Predicate<CountedStudy> both =
        study -> study.treatments().contains(one) && study.treatments().contains(other);
    if (studies.stream().noneMatch(both)
        || studies.stream().filter(both).anyMatch(study -> study.contrasts() > 1)) {
      return Optional.empty();
    }
    boolean around =
        Pieces.of(studies.stream().filter(both.negate()).toList(), "").joins(one, other);
    if (!around) {
      return Optional.empty();
    }
    return fitted((study, name) -> both.test(study) ? MARK + name : name)
        .map(apart -> split(apart, one, other));
  }

  private ExactSplit split(Fitted apart, String one, String other) {
    Pieces own = apart.pieces();
    double[] direct = own.contrast(own.place(MARK + one), own.place(MARK + other));
    double[] indirect = own.contrast(own.place(one), own.place(other));
    double[] difference = direct.clone();
    for (int i = 0; i < difference.length; i++) {
      difference[i] -= indirect[i];
    }
    return new ExactSplit(
        apart.fit().comparison(direct),
        apart.fit().comparison(indirect),
        apart.fit().comparison(difference),
        pValue(apart, 1));
  }
}
