package gapwise.answer;

import gapwise.selection.Selection;
import java.util.List;

/**
 * What a question is answered with, wherever the same rows are shown in another way: a funnel or a
 * line over lengths has numbers of its own, and the answer stays the pooled one.
 */
public final class Headlines {
  /** A figure has room for so many. */
  private static final int MOST_IN_A_FIGURE = 3;

  private Headlines() {}

  /** One for each method; none where nothing can be pooled. */
  public static List<Told> of(Selection selection) {
    Answer pooled = Answers.pooled(selection.byMethod());
    return pooled.result().map(result -> Blocks.told(pooled, result)).orElse(List.of());
  }

  /** Their first sentences for the words of a figure; none where there are too many for one. */
  static List<String> forFigure(Selection selection) {
    List<Told> told = of(selection);
    return told.size() > MOST_IN_A_FIGURE ? List.of() : told.stream().map(Told::sentence).toList();
  }
}
