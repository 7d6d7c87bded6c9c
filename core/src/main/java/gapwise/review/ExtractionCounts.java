package gapwise.review;

import java.util.Map;
import java.util.Objects;

/**
 * How far extraction has come. Whoever keeps extractions in another way puts their counts here, and
 * the page of a review shows them.
 *
 * @param extracted studies by {@link gapwise.screening.Reader#key() person}
 * @param checked the same of a second look; empty where nobody is named for it
 * @param allExtracted of everybody
 * @param allChecked of everybody
 */
public record ExtractionCounts(
    Map<String, StageCount> extracted,
    Map<String, StageCount> checked,
    StageCount allExtracted,
    StageCount allChecked) {
  public ExtractionCounts {
    extracted = Map.copyOf(extracted);
    checked = Map.copyOf(checked);
    Objects.requireNonNull(allExtracted, "allExtracted");
    Objects.requireNonNull(allChecked, "allChecked");
  }
}
