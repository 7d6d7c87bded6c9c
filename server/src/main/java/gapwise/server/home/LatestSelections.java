package gapwise.server.home;

import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.selection.Selector;
import java.util.function.Function;

/**
 * Remembers the latest selections until the evidence base changes: one page asks for the same rows
 * for its plan, its figure and its list. Safe for use by many threads.
 */
final class LatestSelections implements Function<Question, Selection> {
  /** A selection holds whole studies. */
  private static final int MOST = 16;

  private final StudySearch search;
  private final Latest<Question, Selection> latest;

  LatestSelections(Selector selector, StudySearch search) {
    this.search = search;
    this.latest = new Latest<>(MOST, selector::select);
  }

  @Override
  public Selection apply(Question question) {
    return latest.at(search.shownChange(), question);
  }
}
