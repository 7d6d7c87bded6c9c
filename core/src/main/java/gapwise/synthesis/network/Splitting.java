package gapwise.synthesis.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Direct and indirect evidence for pairs of treatments (Dias, Welton, Caldwell and Ades, Stat Med
 * 2010;29:932). Only for pairs that no study of more than two arms holds: there the information of
 * direct and indirect studies adds up, and taking the direct part out of the network's estimate is
 * the same as leaving its studies out, which is how it is done here, without the subtraction. The
 * variance between studies stays that of the whole network.
 */
final class Splitting {
  private final NetworkFrame frame;
  private final double tauSquared;
  private final Map<Pair, List<NetworkStudy>> direct = new LinkedHashMap<>();

  /** Two treatments by their places, the smaller first. */
  private record Pair(int one, int other) {
    static Pair of(int a, int b) {
      return new Pair(Math.min(a, b), Math.max(a, b));
    }
  }

  Splitting(NetworkFrame frame, double tauSquared) {
    this.frame = frame;
    this.tauSquared = tauSquared;
    for (NetworkStudy study : frame.studies()) {
      if (study.contrasts() == 1) {
        direct.computeIfAbsent(pairs(study).get(0), p -> new ArrayList<>()).add(study);
      }
    }
    frame.studies().stream()
        .filter(study -> study.contrasts() > 1)
        .forEach(study -> pairs(study).forEach(direct::remove));
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
    List<NetworkStudy> studies = direct.get(Pair.of(one, other));
    if (studies == null || studies.size() == frame.studies().size()) {
      return Optional.empty();
    }
    List<NetworkStudy> others =
        frame.studies().stream()
            .filter(study -> study.contrasts() > 1 || !pairs(study).contains(Pair.of(one, other)))
            .toList();
    Optional<Comparison> indirect = alone(others, one, other);
    return indirect.flatMap(
        way -> alone(studies, one, other).map(straight -> new Split(straight, way)));
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
              NetworkModel.NetworkFit fit = part.fitAt(tauSquared);
              SparseRow contrast = part.contrast(a, b);
              return new Comparison(fit.estimate(contrast), Math.sqrt(fit.variance(contrast)));
            });
  }
}
