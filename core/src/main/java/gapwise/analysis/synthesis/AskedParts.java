package gapwise.analysis.synthesis;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import gapwise.analysis.bayesian.BayesianPart;
import gapwise.analysis.clusters.RobustPart;
import gapwise.analysis.moderators.AskedRegression;
import gapwise.analysis.pooling.CumulativePart;
import gapwise.analysis.pooling.PlacesPart;
import gapwise.analysis.smallstudy.FunnelPart;
import gapwise.analysis.smallstudy.SmallStudyPart;
import gapwise.synthesis.pooling.PoolingSettings;
import java.util.Optional;

/**
 * What a plan of a synthesis asks beside the pooled value.
 *
 * @param places of values
 * @param moderators which explain effects
 * @param robust standard errors
 * @param smallStudies tests for small-study effects
 * @param funnel what a funnel plot shows
 * @param influence whether everything is told again without each study
 * @param cumulative the pooled value as studies are added
 * @param bayesian what is asked of a posterior, if the model has one
 */
record AskedParts(
    PlacesPart places,
    Optional<AskedRegression> moderators,
    Optional<RobustPart> robust,
    SmallStudyPart smallStudies,
    Optional<FunnelPart> funnel,
    boolean influence,
    Optional<CumulativePart> cumulative,
    BayesianPart bayesian) {

  /** Reads them from a checked plan. */
  static AskedParts of(ObjectNode full, PoolingSettings settings) {
    return new AskedParts(
        PlacesPart.of(full),
        AskedRegression.of(full, settings),
        RobustPart.of(full, settings),
        SmallStudyPart.of(full),
        FunnelPart.of(full),
        full.path("influence").asBoolean(),
        Optional.ofNullable(full.get("cumulativeBy"))
            .map(JsonNode::asText)
            .map(CumulativePart::new),
        BayesianPart.of(full));
  }
}
