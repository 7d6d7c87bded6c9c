package gapwise.synthesis.bayes;

import gapwise.budget.Work;
import gapwise.synthesis.likelihood.MarginalLikelihood;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/** The centre at each tau that was asked for, by the place of that tau, each worked out once. */
final class CentresByTau {
  /** How far the centre is thought to move from one tau to the next, at most, in its spread. */
  private static final double FARTHEST = 6;

  /** How much wider or narrower it is thought to become, at most. */
  private static final double MOST_GROWTH = 1.5;

  private final MarginalLikelihood likelihood;
  private final CentrePrior prior;
  private final FirstLook look;
  private final NavigableMap<Double, SmoothDensity> known = new TreeMap<>();
  private Optional<MarginalLikelihood.OverSpreads> overSpreads = Optional.empty();

  CentresByTau(MarginalLikelihood likelihood, CentrePrior prior, FirstLook look) {
    this.likelihood = likelihood;
    this.prior = prior;
    this.look = look;
  }

  /** What was worked out at a place. */
  SmoothDensity known(double place) {
    return Optional.ofNullable(known.get(place)).orElseThrow();
  }

  /** Keeps what it knows, without the many numbers that would make further ones known faster. */
  void rest() {
    overSpreads = Optional.empty();
  }

  private MarginalLikelihood.OverSpreads overSpreads() {
    MarginalLikelihood.OverSpreads now = overSpreads.orElseGet(likelihood::overSpreads);
    overSpreads = Optional.of(now);
    return now;
  }

  SmoothDensity at(double place, double tau) {
    SmoothDensity before = known.get(place);
    if (before != null) {
      return before;
    }
    Work.check();
    MarginalLikelihood.AtSpread at = overSpreads().at(tau);
    SmoothDensity one =
        SmoothDensity.of(
            centres -> {
              double[] logs = at.logs(centres);
              for (int i = 0; i < logs.length; i++) {
                logs[i] += prior.logDensity(centres[i]);
              }
              return logs;
            },
            edges(place, tau),
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY);
    known.put(place, one);
    return one;
  }

  /** Where the centre is thought to lie: as at the nearest tau, moved on along the line to it. */
  private List<Double> edges(double place, double tau) {
    List<Map.Entry<Double, SmoothDensity>> near = nearest(place);
    if (near.isEmpty()) {
      return look.centre(tau);
    }
    SmoothDensity one = near.get(0).getValue();
    if (near.size() == 1) {
      return one.edgesOfAnother();
    }
    SmoothDensity other = near.get(1).getValue();
    double way = (place - near.get(0).getKey()) / (near.get(1).getKey() - near.get(0).getKey());
    double sd = Math.sqrt(one.variance());
    double move = way * (other.mean() - one.mean());
    double growth = 1 + way * (Math.sqrt(other.variance()) / sd - 1);
    double moved = one.mean() + Math.max(-FARTHEST * sd, Math.min(FARTHEST * sd, move));
    double grown = Math.max(1 / MOST_GROWTH, Math.min(MOST_GROWTH, growth));
    return one.edgesOfAnother().stream().map(edge -> moved + (edge - one.mean()) * grown).toList();
  }

  /** The two nearest that are known, the nearest first; fewer if fewer are. */
  private List<Map.Entry<Double, SmoothDensity>> nearest(double place) {
    List<Map.Entry<Double, SmoothDensity>> near = new ArrayList<>();
    known.headMap(place, false).descendingMap().entrySet().stream().limit(2).forEach(near::add);
    known.tailMap(place, true).entrySet().stream().limit(2).forEach(near::add);
    near.sort((a, b) -> Double.compare(Math.abs(a.getKey() - place), Math.abs(b.getKey() - place)));
    return near.size() > 2 ? near.subList(0, 2) : near;
  }
}
