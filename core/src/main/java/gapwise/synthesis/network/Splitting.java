package gapwise.synthesis.network;

import gapwise.budget.Work;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Direct and indirect evidence for pairs of treatments (Dias, Welton, Caldwell and Ades, Stat Med
 * 2010;29:932). Where a study of more than two arms holds a pair, {@link SideSplitting}. For all
 * others the information of direct and indirect studies adds up. With h the share of the direct
 * studies in the information, the indirect estimate is the network's plus h/(1 - h) times its
 * distance from the direct one, its variance the network's over 1 - h; where h is so near 1 that
 * the subtraction would cost digits, the network is fitted again without the direct studies, which
 * is the same. The variance between studies stays that of the whole network.
 */
final class Splitting {
  /** Above this share, 1 less the share has lost three digits. */
  private static final double HEAVY = 0.999;

  private final NetworkFrame frame;
  private final NetworkFit fit;
  private final double tauSquared;
  private final Map<Pair, List<NetworkStudy>> direct = new LinkedHashMap<>();

  /** Pairs that a study of more than two arms holds. */
  private final Set<Pair> several = new HashSet<>();

  /** Two treatments by their places, the smaller first. */
  private record Pair(int one, int other) {
    static Pair of(int a, int b) {
      return new Pair(Math.min(a, b), Math.max(a, b));
    }
  }

  /**
   * The ways through a network.
   *
   * @param fit at the variance between studies
   */
  Splitting(NetworkFrame frame, NetworkFit fit, double tauSquared) {
    this.frame = frame;
    this.fit = fit;
    this.tauSquared = tauSquared;
    for (NetworkStudy study : frame.studies()) {
      if (study.contrasts() == 1) {
        direct.computeIfAbsent(pairs(study).get(0), p -> new ArrayList<>()).add(study);
      }
    }
    frame.studies().stream()
        .filter(study -> study.contrasts() > 1)
        .forEach(study -> several.addAll(pairs(study)));
  }

  private List<Pair> pairs(NetworkStudy study) {
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < study.treatments().size(); i++) {
      for (int j = 0; j < i; j++) {
        pairs.add(
            Pair.of(
                frame.index().of(study.treatments().get(i)),
                frame.index().of(study.treatments().get(j))));
      }
    }
    return pairs;
  }

  /** The first treatment less the second; empty unless there are both kinds of evidence. */
  Optional<Split> of(int one, int other) {
    Work.check();
    List<NetworkStudy> studies = direct.get(Pair.of(one, other));
    if (several.contains(Pair.of(one, other))) {
      return new SideSplitting(frame, fit, tauSquared).of(one, other);
    }
    if (studies == null || studies.size() == frame.studies().size()) {
      return Optional.empty();
    }
    SparseRow contrast = frame.contrast(one, other);
    double whole = fit.estimate(contrast);
    double variance = fit.variance(contrast);
    double weights = 0;
    double shift = 0;
    for (NetworkStudy study : studies) {
      double weight = 1 / (study.variance(0, 1) + tauSquared);
      double sign = frame.index().of(study.treatments().get(1)) == one ? 1 : -1;
      weights += weight;
      shift += weight * (sign * study.effects().get(0) - whole);
    }
    Comparison direct = new Comparison(whole + shift / weights, 1 / Math.sqrt(weights));
    double share = weights * variance;
    Optional<Comparison> indirect =
        share > HEAVY
            ? without(one, other)
            : Optional.of(
                new Comparison(
                    whole - shift / weights * share / (1 - share),
                    Math.sqrt(variance / (1 - share))));
    return indirect.map(way -> Split.independent(direct, way));
  }

  private Optional<Comparison> without(int one, int other) {
    Pair pair = Pair.of(one, other);
    return alone(
        frame.studies().stream()
            .filter(study -> study.contrasts() > 1 || !pairs(study).contains(pair))
            .toList(),
        one,
        other);
  }

  private Optional<Comparison> alone(List<NetworkStudy> studies, int one, int other) {
    TreatmentIndex index = TreatmentIndex.of(studies, "");
    String first = frame.index().names().get(one);
    String second = frame.index().names().get(other);
    if (!index.has(first) || !index.has(second)) {
      return Optional.empty();
    }
    int a = index.of(first);
    int b = index.of(second);
    return NetworkFrame.of(studies, index)
        .filter(part -> part.forest().piece(a) == part.forest().piece(b))
        .map(
            part -> {
              NetworkFit others = part.fitAt(tauSquared);
              SparseRow contrast = part.contrast(a, b);
              return new Comparison(
                  others.estimate(contrast), Math.sqrt(others.variance(contrast)));
            });
  }
}
