package gapwise.synthesis.network;

import gapwise.budget.Work;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Q of a network apart into what differs within designs and what between them (Krahn, Binder and
 * König, BMC Med Res Methodol 2013;13:35). A design is the exact set of treatments of a study. The
 * part between is the sum over designs of d'Ad, where d are the effects fitted in the design alone
 * less those fitted in the whole network and A is the information of the design on them: it equals
 * the total less the parts within, without the subtraction.
 */
final class Designs {
  private final NetworkFrame frame;
  private final List<Design> all;

  private record Design(String name, NetworkFrame alone) {}

  private Designs(NetworkFrame frame, List<Design> all) {
    this.frame = frame;
    this.all = List.copyOf(all);
  }

  /** The designs of a network; empty if one alone cannot be fitted. */
  static Optional<Designs> of(NetworkFrame frame) {
    Map<List<String>, List<NetworkStudy>> groups = new LinkedHashMap<>();
    for (NetworkStudy study : frame.studies()) {
      groups.computeIfAbsent(ordered(study, frame.index()), d -> new ArrayList<>()).add(study);
    }
    List<Design> designs = new ArrayList<>();
    for (Map.Entry<List<String>, List<NetworkStudy>> group : groups.entrySet()) {
      Work.check();
      Optional<NetworkFrame> alone =
          NetworkFrame.of(
              group.getValue(), TreatmentIndex.of(group.getValue(), group.getKey().get(0)));
      if (alone.isEmpty()) {
        return Optional.empty();
      }
      designs.add(new Design(String.join(" + ", group.getKey()), alone.get()));
    }
    return Optional.of(new Designs(frame, designs));
  }

  private static List<String> ordered(NetworkStudy study, TreatmentIndex index) {
    return study.treatments().stream().sorted(Comparator.comparingInt(index::of)).toList();
  }

  /** The Q of each design of two studies or more, in the order of their first studies. */
  List<DesignTest> listed() {
    return all.stream()
        .filter(design -> design.alone().studies().size() > 1)
        .map(design -> new DesignTest(design.name(), within(design.alone())))
        .toList();
  }

  /** All differences within designs. */
  ChiSquaredTest within() {
    ChiSquaredTest sum = new ChiSquaredTest(0, 0);
    for (Design design : all) {
      sum = sum.plus(within(design.alone()));
    }
    return sum;
  }

  private static ChiSquaredTest within(NetworkFrame alone) {
    int degrees = alone.degreesOfFreedom();
    return new ChiSquaredTest(degrees == 0 ? 0 : alone.fitAt(0).q(), degrees);
  }

  /**
   * The differences between designs with a given variance between studies: 0 for the common effect.
   *
   * @param whole the network's fit at the same variance
   */
  ChiSquaredTest between(NetworkFit whole, double tauSquared) {
    double q = 0;
    int degrees = -frame.model().parameters();
    for (Design design : all) {
      NetworkFrame alone = design.alone();
      q += difference(alone, alone.fitAt(tauSquared), whole, tauSquared);
      degrees += alone.model().parameters();
    }
    return new ChiSquaredTest(degrees == 0 ? 0 : q, degrees);
  }

  /** d'Ad, summed over the rows of the design as (x'd)^2 weighted. */
  private double difference(
      NetworkFrame alone, NetworkFit own, NetworkFit whole, double tauSquared) {
    double[] apart = own.estimates();
    for (int e = 0; e < apart.length; e++) {
      SpanningForest.Edge edge = alone.forest().edge(e);
      int one = frame.index().of(alone.index().names().get(edge.one()));
      int other = frame.index().of(alone.index().names().get(edge.other()));
      apart[e] -= whole.estimate(frame.contrast(one, other));
    }
    double sum = 0;
    for (int r = 0; r < alone.sample().size(); r++) {
      double value = alone.model().row(r).at(apart);
      sum += value * value / (alone.sample().variance(r) + tauSquared);
    }
    return sum;
  }

  /** The network in which each design has effects of its own. */
  Optional<NetworkFrame> apart() {
    List<NetworkStudy> studies = new ArrayList<>();
    for (int d = 0; d < all.size(); d++) {
      String own = d + " ";
      for (NetworkStudy study : all.get(d).alone().studies()) {
        studies.add(
            new NetworkStudy(
                study.label(),
                study.treatments().stream().map(treatment -> own + treatment).toList(),
                study.effects(),
                study.covariance()));
      }
    }
    return NetworkFrame.of(studies, TreatmentIndex.of(studies, ""));
  }
}
