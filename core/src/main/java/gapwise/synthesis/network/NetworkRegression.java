package gapwise.synthesis.network;

import gapwise.numeric.ReferenceDistribution;
import gapwise.problem.Problem;
import gapwise.synthesis.heterogeneity.EffectSample;
import gapwise.synthesis.heterogeneity.TauSquared;
import gapwise.synthesis.network.NetworkMeans.NetworkFit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A network whose comparisons with one treatment change along a number that each study has: the
 * effect of every other treatment less the reference is d + b (x - centre) with one slope b for
 * all, and comparisons between two others carry none (Cooper, Sutton, Morris, Ades and Welton, Stat
 * Med 2009;28:1861, the model of a common interaction, here by generalised least squares). So x
 * enters as one column beside the comparisons that span the network.
 */
public final class NetworkRegression {
  /** Studies that hold the reference, for the one slope: common practice, no source. */
  public static final int FEWEST_STUDIES = 10;

  /** Less than this share of the slope's column left by the comparisons is rounding. */
  private static final double NOTHING_LEFT = 1e-9;

  private final NetworkFrame frame;
  private final NetworkFit fit;
  private final NetworkHeterogeneity heterogeneity;
  private final SparseRow slope;
  private final double mean;
  private final int reference;
  private final int withReference;

  private NetworkRegression(Entering entering, NetworkFrame frame, NetworkSettings settings) {
    this.frame = frame;
    this.mean = entering.mean();
    this.reference = frame.index().of(entering.reference());
    this.withReference = entering.withReference();
    EffectSample column = entering.column(frame.index()).sample();
    int last = frame.model().parameters();
    List<SparseRow> rows = new ArrayList<>();
    for (int row = 0; row < column.size(); row++) {
      rows.add(frame.model().row(row).with(last, column.effect(row)));
    }
    NetworkMeans model = new NetworkMeans(last + 1, rows);
    this.slope = new SparseRow(new int[] {last}, new double[] {1});
    this.heterogeneity = NetworkHeterogeneity.of(frame.sample(), model, settings);
    this.fit =
        model.fitAt(
            frame.sample(), heterogeneity.tauSquared().map(TauSquared.Estimate::value).orElse(0.0));
  }

  /** A regression, or why there is none. */
  public sealed interface Fitted {
    /** There is one. */
    record Done(NetworkRegression regression) implements Fitted {}

    /** There is none. */
    record Not(Problem why) implements Fitted {}
  }

  /** Studies with the number of each, and the treatment that others are set against. */
  private record Entering(List<NetworkStudy> studies, List<Double> values, String reference) {
    int withReference() {
      return (int) studies.stream().filter(this::holdsReference).count();
    }

    boolean holdsReference(NetworkStudy study) {
      return study.treatments().contains(reference);
    }

    /** The mean over the studies, taken off so that no digits are lost. */
    double mean() {
      double mean = 0;
      for (int i = 0; i < values.size(); i++) {
        mean += values.get(i) / values.size();
      }
      return mean;
    }

    /** Whether studies of some other treatment with the reference have different numbers. */
    boolean varies() {
      Map<String, Double> first = new HashMap<>();
      for (int i = 0; i < studies.size(); i++) {
        if (holdsReference(studies.get(i))) {
          double value = values.get(i);
          for (String treatment : studies.get(i).treatments()) {
            Double before = first.putIfAbsent(treatment, value);
            if (!treatment.equals(reference) && before != null && before != value) {
              return true;
            }
          }
        }
      }
      return false;
    }

    /** Studies whose effects are what a slope of 1 adds to theirs. */
    NetworkFrame column(TreatmentIndex index) {
      List<NetworkStudy> moved = new ArrayList<>();
      double mean = mean();
      for (int i = 0; i < studies.size(); i++) {
        NetworkStudy study = studies.get(i);
        double distance = values.get(i) - mean;
        List<Double> shares =
            study.treatments().stream().map(t -> t.equals(reference) ? 0 : distance).toList();
        moved.add(
            new NetworkStudy(
                study.label(),
                study.treatments(),
                shares.subList(1, shares.size()).stream()
                    .map(share -> share - shares.get(0))
                    .toList(),
                study.covariance()));
      }
      return NetworkFrame.of(moved, index).orElseThrow();
    }
  }

  /**
   * Fits.
   *
   * @param studies of a network that {@link Network} can fit
   * @param values the number of each, finite
   * @param reference the treatment that others are set against
   */
  public static Fitted of(
      List<NetworkStudy> studies, List<Double> values, String reference, NetworkSettings settings) {
    Entering entering = new Entering(List.copyOf(studies), List.copyOf(values), reference);
    int with = entering.withReference();
    if (with < FEWEST_STUDIES) {
      return not(
          "too-few-studies-for-moderator",
          with
              + (with == 1 ? " study" : " studies")
              + " with a value of the moderator compare "
              + reference
              + " with something, and a slope takes "
              + FEWEST_STUDIES
              + " (common practice, no source), so none is told");
    }
    if (!entering.varies()) {
      return not(
          "moderator-does-not-vary",
          "studies that compare the same treatment with "
              + reference
              + " have the same value of the moderator, so a slope could not be told from"
              + " differences between treatments, and none is told");
    }
    NetworkFrame frame =
        NetworkFrame.of(studies, TreatmentIndex.of(studies, reference)).orElseThrow();
    if (!leavesSomething(entering, frame)) {
      return not(
          "number-out-of-range",
          "values of the moderator differ too little beside their size, or from those of other"
              + " studies by too many powers of ten, for a slope to be told; check their units");
    }
    return new Fitted.Done(new NetworkRegression(entering, frame, settings));
  }

  private static boolean leavesSomething(Entering entering, NetworkFrame frame) {
    NetworkFrame column = entering.column(frame.index());
    NetworkFit explained = column.fitAt(0);
    double whole = 0;
    for (int row = 0; row < column.sample().size(); row++) {
      double value = column.sample().effect(row);
      whole += value * value / column.sample().variance(row);
    }
    return Double.isFinite(whole) && explained.q() > NOTHING_LEFT * whole;
  }

  private static Fitted not(String code, String message) {
    return new Fitted.Not(new Problem("", code, message));
  }

  /** The mean of the moderator over the studies. */
  public double mean() {
    return mean;
  }

  /** How many studies hold the reference. */
  public int studiesWithReference() {
    return withReference;
  }

  /** What one more of the moderator adds to every treatment less the reference. */
  public Comparison slope() {
    return comparison(slope);
  }

  /** Other treatments that studies join to the reference. */
  public List<String> treatments() {
    List<String> joined = new ArrayList<>(frame.index().names());
    joined.removeIf(name -> !isJoined(frame.index().of(name)));
    return joined;
  }

  private boolean isJoined(int treatment) {
    return treatment != reference
        && frame.forest().piece(treatment) == frame.forest().piece(reference);
  }

  /** A treatment of {@link #treatments} less the reference where the moderator has a value. */
  public Comparison effect(String treatment, double value) {
    int place = frame.index().of(Objects.requireNonNull(treatment, "treatment"));
    return comparison(
        frame.contrast(place, reference).with(frame.model().parameters(), value - mean));
  }

  private Comparison comparison(SparseRow row) {
    return new Comparison(fit.estimate(row), Math.sqrt(fit.variance(row)));
  }

  /** Differences between studies that the moderator leaves. */
  public NetworkHeterogeneity heterogeneity() {
    return heterogeneity;
  }

  /**
   * Student's t on the degrees of freedom that comparisons and slope leave; empty where they leave
   * none.
   */
  public Optional<ReferenceDistribution> studentT() {
    int degrees = heterogeneity.q().degreesOfFreedom();
    return degrees < 1 ? Optional.empty() : Optional.of(ReferenceDistribution.studentT(degrees));
  }
}
