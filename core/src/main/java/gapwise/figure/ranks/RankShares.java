package gapwise.figure.ranks;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.drawing.Picture;
import gapwise.figure.drawing.Setting;
import gapwise.figure.file.CsvCell;
import gapwise.figure.file.CsvOrigin;
import gapwise.figure.value.Check;
import gapwise.figure.value.Shown;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Shares of ranks as a value: a bar for each alternative, from how often it comes first on the left
 * to how often it comes last on the right.
 *
 * @param title what is shown
 * @param sentences what it says
 * @param bars the alternatives, 2 to {@link #MOST_BARS}
 * @param cautions what must be known beside it
 * @param provenance where the numbers come from
 */
public record RankShares(
    String title,
    List<String> sentences,
    List<Bar> bars,
    List<String> cautions,
    FigureProvenance provenance)
    implements Figure {
  /** More ranks cannot be told by their shade; our choice. */
  public static final int MOST_BARS = 8;

  private static final double ROUNDING = 1e-6;

  /**
   * One alternative.
   *
   * @param kind which
   * @param shares at each rank from the first, 0 to 1, adding up to 1
   * @param error by how much the first share may be off since only so many were drawn, 0 to 1
   */
  public record Bar(MethodMark kind, List<Double> shares, double error) {
    public Bar {
      Objects.requireNonNull(kind, "kind");
      shares = List.copyOf(shares);
      double sum = shares.stream().mapToDouble(Double::doubleValue).sum();
      if (!(Math.abs(sum - 1) <= ROUNDING) || shares.stream().anyMatch(s -> s < 0)) {
        throw new IllegalArgumentException(kind.label() + ": shares " + shares);
      }
      if (!(error >= 0 && error <= 1)) {
        throw new IllegalArgumentException(kind.label() + ": error " + error);
      }
    }

    /** "first in 40 of 100 (within 0.3)". */
    String first() {
      return error > 0
          ? say(
              "figure.first-within",
              Map.of("share", Shown.of100(shares.get(0)), "error", Shown.number(100 * error)))
          : say("figure.first", Map.of("share", Shown.of100(shares.get(0))));
    }
  }

  public RankShares {
    Check.words(title, "title");
    sentences = List.copyOf(sentences);
    bars = List.copyOf(bars);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(provenance, "provenance");
    int ranks = bars.size();
    if (ranks < 2
        || ranks > MOST_BARS
        || bars.stream().anyMatch(bar -> bar.shares().size() != ranks)) {
      throw new IllegalArgumentException(
          "takes 2 to " + MOST_BARS + " alternatives with as many ranks, was " + ranks);
    }
  }

  @Override
  public String description() {
    List<String> words = new ArrayList<>();
    words.add(say("figure.ranks"));
    if (provenance.demonstration()) {
      words.add(FigureProvenance.INVENTED);
    }
    for (Bar bar : bars) {
      words.add(say("figure.ranks-of", Map.of("method", bar.kind().label(), "first", bar.first())));
    }
    words.addAll(sentences);
    words.addAll(cautions);
    return String.join(" ", words);
  }

  @Override
  public List<Picture> draw(Setting setting) {
    return List.of(RankDrawing.draw(this, setting));
  }

  /** A line for each alternative at each rank (RFC 4180). */
  @Override
  public String csv() {
    List<String> names = new ArrayList<>(List.of("alternative", "rank", "share", "error-of-first"));
    names.addAll(CsvOrigin.NAMES);
    StringBuilder out = new StringBuilder();
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader(names.toArray(String[]::new)).get();
    try (CSVPrinter printer = new CSVPrinter(out, format)) {
      for (Bar bar : bars) {
        for (int rank = 0; rank < bar.shares().size(); rank++) {
          List<Object> cells = new ArrayList<>();
          cells.add(CsvCell.text(bar.kind().label()));
          cells.add(rank + 1);
          cells.add(bar.shares().get(rank));
          cells.add(bar.error());
          cells.addAll(CsvOrigin.of(this));
          printer.printRecord(cells);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory could not be written", e);
    }
    return out.toString();
  }
}
