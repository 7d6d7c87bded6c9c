package gapwise.analysis.network;

import com.fasterxml.jackson.annotation.JsonInclude;
import gapwise.analysis.result.Result;
import gapwise.synthesis.network.DesignByTreatment;
import gapwise.synthesis.network.Ranked;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Treatments compared through a network of studies, as part of a {@link Result}.
 *
 * @param treatments the reference first, then by alphabet
 * @param pieces the treatments of each connected piece
 * @param effects every ordered pair of one piece, treatment less against
 * @param inconsistency differences between studies, by common effect; empty with the exact
 *     likelihood, which has no Q
 * @param designByTreatment those between designs with allowance for differences between studies
 * @param designs those of two studies or more with their Q; none with the exact likelihood
 * @param ranking empty for a network in pieces
 * @param nodes what each treatment rests on
 * @param comparisons how many studies hold each pair
 * @param regression along a number of studies, if asked for and possible
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record NetworkResult(
    List<String> treatments,
    String reference,
    List<List<String>> pieces,
    List<Effect> effects,
    Result.Heterogeneity heterogeneity,
    Optional<Parted> inconsistency,
    Optional<Interactions> designByTreatment,
    List<Design> designs,
    Optional<List<Ranking>> ranking,
    List<Node> nodes,
    List<Edge> comparisons,
    Optional<NetworkRegressionResult> regression) {

  /**
   * What a network tells by any likelihood: nothing that stands on Q, and nothing along a number.
   *
   * @param shape what it rests on
   * @param pieces the treatments of each connected piece
   * @param interactions the test of all differences between designs; empty where there is none
   * @param ranking empty for a network in pieces and where no side is better
   */
  static NetworkResult of(
      NetworkShape shape,
      List<List<String>> pieces,
      List<Effect> effects,
      Result.Heterogeneity heterogeneity,
      Optional<DesignByTreatment> interactions,
      Optional<List<Ranked>> ranking) {
    return new NetworkResult(
        shape.treatments(),
        shape.treatments().get(0),
        pieces,
        effects,
        heterogeneity,
        Optional.empty(),
        interactions.map(Interactions::of),
        List.of(),
        ranking.map(all -> all.stream().map(Ranking::of).toList()),
        shape.nodes(),
        shape.comparisons(),
        Optional.empty());
  }

  /** The same with what stands on Q, and along a number where that was asked for. */
  NetworkResult with(
      Parted parted, List<Design> parts, Optional<NetworkRegressionResult> alongNumber) {
    return new NetworkResult(
        treatments,
        reference,
        pieces,
        effects,
        heterogeneity,
        Optional.of(parted),
        designByTreatment,
        parts,
        ranking,
        nodes,
        comparisons,
        alongNumber);
  }

  /**
   * Q in parts.
   *
   * @param total differences between studies in all
   * @param withinDesigns those between studies of one design
   * @param betweenDesigns those between designs
   */
  public record Parted(Test total, Test withinDesigns, Test betweenDesigns) {}

  /**
   * One treatment less another; direct and indirect where both can be parted.
   *
   * @param prediction of the difference in a further study; random effects
   * @param contributions of each direct comparison, in percent
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Effect(
      String treatment,
      String against,
      double estimate,
      double standardError,
      double lower,
      double upper,
      Result.Estimate shown,
      Optional<Predicted> prediction,
      Optional<Part> direct,
      Optional<Part> indirect,
      Optional<Disagreement> disagreement,
      Optional<List<Contribution>> contributions) {}

  /** Limits for a further study. */
  public record Predicted(double lower, double upper, Limits shown) {}

  /** Limits as people read them. */
  public record Limits(double lower, double upper) {}

  /** What the studies of a direct comparison contribute to a result. */
  public record Contribution(String treatment, String against, double percent) {}

  /** What one kind of evidence says. */
  public record Part(
      double estimate, double standardError, double lower, double upper, Result.Estimate shown) {}

  /**
   * Direct less indirect.
   *
   * @param method {@code side-splitting} where studies of several arms hold the pair, so that the
   *     two ways share studies; {@code likelihood-ratio} with the exact likelihood
   */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Disagreement(
      double difference, double standardError, double pValue, Optional<String> method) {}

  /** A test against chance alone; no p value without degrees of freedom. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Test(double q, int degreesOfFreedom, OptionalDouble pValue) {}

  /** The test of all design-by-treatment interactions under random effects. */
  public record Interactions(
      double chiSquared, int degreesOfFreedom, double pValue, double tauSquared) {
    static Interactions of(DesignByTreatment all) {
      return new Interactions(
          all.test().q(),
          all.test().degreesOfFreedom(),
          all.test().pValue().orElseThrow(),
          all.tauSquared());
    }
  }

  /** One set of treatments and how far its studies differ. */
  public record Design(String design, double q, int degreesOfFreedom) {}

  /** Where a treatment stands; ranks from simulation, 1 the best. */
  public record Ranking(
      String treatment,
      double meanRank,
      int rankLower,
      int rankUpper,
      List<Double> rankProbabilities,
      double pScore) {
    static Ranking of(Ranked one) {
      return new Ranking(
          one.treatment(),
          one.meanRank(),
          one.rankLower(),
          one.rankUpper(),
          one.rankProbabilities(),
          one.pScore());
    }
  }

  /** A treatment; patients where arms report them. */
  @JsonInclude(JsonInclude.Include.NON_ABSENT)
  public record Node(String treatment, int studies, OptionalDouble participants) {}

  /** A pair of treatments that studies hold. */
  public record Edge(String treatment, String against, int studies) {}
}
