package gapwise.figure.forest;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
    List<String> words = new ArrayList<>();
    words.add(say("figure.forest", Map.of("axis", axis.heading())));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    words.addAll(heading.sentences());
    for (Block block : blocks) {
      String series = Integer.toString(block.rows().size());
      words.add(
          block.name().isBlank()
              ? say("figure.only-block", Map.of("series", series))
              : say("figure.block", Map.of("block", block.name(), "series", series)));
      words.add(said(block.summary()));
    }
    overall.ifPresent(summary -> words.add(said(summary)));
    words.addAll(cautions);
    return String.join(" ", words);
  }

  private String said(ForestSummary summary) {
    if (summary instanceof ForestSummary.NotPooled none) {
      return say("figure.not-pooled", Map.of("name", none.label(), "reason", none.reason()));
    }
    ForestSummary.Pooled pooled = (ForestSummary.Pooled) summary;
    String value = Shown.estimate(measure, pooled.estimate());
    return pooled
        .prediction()
        .map(limits -> Shown.limits(measure, limits))
        .map(
            limits ->
                say(
                    "figure.pooled-and-new-centre",
                    Map.of("name", pooled.label(), "value", value, "limits", limits)))
        .orElseGet(() -> say("figure.pooled", Map.of("name", pooled.label(), "value", value)));
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return ForestDrawing.draw(this, setting);
  }

  @Override
  public int sheets(Medium medium) {
    return ForestDrawing.sheets(this, Setting.alone(medium));
  }

  @Override
  public String csv() {
    return ForestTable.of(this).csv();
  }
}
