package gapwise.synthesis.likelihood;

import gapwise.effect.StudyData;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The likelihood of counts of several studies as a function of the mean and the spread of their
 * true values, which are normal on the analysis scale and integrated out study by study. For
 * proportions (logit), rates (log), odds ratios given all margins and rate ratios given the events
 * of both groups. Immutable.
 */
public final class MarginalLikelihood {
  private final StudyLikelihoods studies;
  private final int[] multiplicities;

  MarginalLikelihood(StudyLikelihoods studies) {
    this.studies = studies;
    this.multiplicities = studies.multiplicities();
  }

  /**
   * Of counts of one kind.
   *
   * @param data of at least one study that says something of what is pooled
   */
  public static MarginalLikelihood of(ExactLikelihood.Model model, List<? extends StudyData> data) {
    return new MarginalLikelihood(StudyLikelihoods.of(model, data));
  }

  /** Number of studies. */
  public int size() {
    return studies.size();
  }

  /** How many studies have the same counts as this one, which is the first of them; else 0. */
  public int alike(int study) {
    return multiplicities[study];
  }

  /** The same at one spread. */
  public AtSpread at(double tau) {
    int[] first = first();
    return new AtSpread(
        first, IntStream.of(first).mapToObj(i -> new StudyConvolution(studies, i, tau)).toList());
  }

  /** A value near the study's own true value; finite for empty and full groups too. */
  public double ownValue(int study) {
    return studies.start(study);
  }

  /** A value near its information on that, above 0. */
  public double ownInformation(int study) {
    return studies.startInformation(study);
  }

  /** The same at many spreads. */
  public OverSpreads overSpreads() {
    return new OverSpreads();
  }

  private int[] first() {
    return IntStream.range(0, multiplicities.length).filter(i -> multiplicities[i] > 0).toArray();
  }

  /**
   * The likelihood at many spreads, each of which has of the last what it can use. Its steps are
   * rounded, so that it is not smooth in the spread beyond ten digits or so. For one thread.
   */
  public final class OverSpreads {
    private final int[] first = first();
    private final List<StudyLattices> lattices =
        IntStream.of(first).mapToObj(i -> StudyLattices.shared(studies, i)).toList();

    private OverSpreads() {}

    /** At one spread; asked before another one is. */
    public AtSpread at(double tau) {
      return new AtSpread(
          first,
          IntStream.range(0, first.length)
              .mapToObj(i -> new StudyConvolution(studies, first[i], tau, lattices.get(i)))
              .toList());
    }
  }

  /** The likelihood at one spread. Keeps what it has worked out; for one thread. */
  public final class AtSpread {
    private final StudyConvolution[] kinds;
    private final int[] times;

    private AtSpread(int[] first, List<StudyConvolution> kinds) {
      this.kinds = kinds.toArray(StudyConvolution[]::new);
      this.times = IntStream.of(first).map(i -> multiplicities[i]).toArray();
    }

    /** Logarithm of the likelihood of all studies about a mean. */
    public double log(double mean) {
      return logs(new double[] {mean})[0];
    }

    /**
     * The same about each of some means. Study by study, since what a study keeps for one mean
     * serves the next only while it is still near the processor.
     */
    public double[] logs(double[] means) {
      double[] sums = new double[means.length];
      for (int i = 0; i < times.length; i++) {
        for (int j = 0; j < means.length; j++) {
          sums[j] += times[i] * kinds[i].log(means[j]);
        }
      }
      return sums;
    }
  }
}
