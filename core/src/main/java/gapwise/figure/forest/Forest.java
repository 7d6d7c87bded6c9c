package gapwise.figure.forest;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A forest plot as a value: what it says, not how it is drawn. Draw it with {@link ForestDrawing},
 * list it with {@link ForestTable}. Every number is in the unit of {@code measure}.
 *
 * @param heading words over the figure
 * @param measure what the numbers are
 * @param axis words at the axis
 * @param blocks groups of series in order
 * @param overall summary over all blocks; empty for none
 * @param leftOut series that could not enter
 * @param notes how to read it, beyond the drawn key
 * @param cautions what must be known beside the result; printed on every page
 * @param provenance where the numbers come from
 */
public record Forest(
    Heading heading,
    Quantity measure,
    AxisWords axis,
    List<Block> blocks,
    Optional<ForestSummary> overall,
    List<ForestLeftOut> leftOut,
    List<String> notes,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  public Forest {
    Objects.requireNonNull(heading, "heading");
    Objects.requireNonNull(measure, "measure");
    Objects.requireNonNull(axis, "axis");
    blocks = List.copyOf(blocks);
    Objects.requireNonNull(overall, "overall");
    leftOut = List.copyOf(leftOut);
    notes = List.copyOf(notes);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    for (Block block : blocks) {
      block.rows().forEach(row -> measure.check(row.estimate(), row.study()));
    }
    summaries(blocks, overall).forEach(pooled -> check(measure, pooled));
  }

  private static void check(Quantity measure, ForestSummary.Pooled pooled) {
    measure.check(pooled.estimate(), pooled.label());
    pooled.prediction().ifPresent(limits -> measure.check(limits, pooled.label()));
  }

  private static List<ForestSummary.Pooled> summaries(
      List<Block> blocks, Optional<ForestSummary> overall) {
    return Stream.concat(blocks.stream().map(Block::summary), overall.stream())
        .filter(ForestSummary.Pooled.class::isInstance)
        .map(ForestSummary.Pooled.class::cast)
        .toList();
  }

  /** Every pooled value, blocks first. */
  public List<ForestSummary.Pooled> pooled() {
    return summaries(blocks, overall);
  }

  /** Every series that entered, in order. */
  List<ForestRow> rows() {
    return blocks.stream().flatMap(block -> block.rows().stream()).toList();
  }

  @Override
  public String title() {
    return heading.title();
  }

  /** Those of its provenance; without any, the citations of its series. */
  @Override
  public List<Reference> references() {
    return provenance.references().isEmpty()
        ? rows().stream()
            .map(ForestRow::citation)
            .filter(line -> !line.isBlank())
            .distinct()
            .map(Reference::ofLine)
            .toList()
        : provenance.references();
  }

  @Override
  public String description() {
    StringBuilder words = new StringBuilder("Forest plot, " + axis.heading() + ". ");
    if (provenance.demonstration()) {
      words.append(FigureProvenance.INVENTED).append(' ');
    }
    heading.sentences().forEach(sentence -> words.append(sentence).append(' '));
    for (Block block : blocks) {
      words.append(block.name().isBlank() ? "" : block.name() + ": ");
      words.append(block.rows().size()).append(" series. ").append(said(block.summary()));
    }
    overall.ifPresent(summary -> words.append(said(summary)));
    cautions.forEach(caution -> words.append(caution).append(' '));
    return words.toString().strip();
  }

  private String said(ForestSummary summary) {
    if (summary instanceof ForestSummary.NotPooled none) {
      return none.label() + ": " + none.reason() + " ";
    }
    ForestSummary.Pooled pooled = (ForestSummary.Pooled) summary;
    String prediction =
        pooled
            .prediction()
            .map(limits -> "; a new centre " + Shown.limits(measure, limits))
            .orElse("");
    return pooled.label() + ": " + Shown.estimate(measure, pooled.estimate()) + prediction + ". ";
  }

  @Override
  public List<Picture> draw(Medium medium) {
    return ForestDrawing.draw(this, medium);
  }

  @Override
  public int sheets(Medium medium) {
    return ForestDrawing.sheets(this, medium);
  }

  @Override
  public String csv() {
    return ForestTable.of(this).csv();
  }
}
