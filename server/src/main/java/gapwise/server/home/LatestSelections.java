package gapwise.server.home;

import gapwise.search.StudySearch;
import gapwise.selection.Question;
import gapwise.selection.Selection;
import gapwise.selection.Selector;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Remembers the latest selections until the evidence base changes: one page asks for the same rows
 * for its plan, its figure and its list. Safe for use by many threads.
 */
final class LatestSelections implements Function<Question, Selection> {
  private static final int MOST = 16;

  private final Selector selector;
  private final StudySearch search;
  private final Map<Question, Selection> latest =
      new LinkedHashMap<>(MOST, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Question, Selection> eldest) {
          return size() > MOST;
        }
      };

  LatestSelections(Selector selector, StudySearch search) {
    this.selector = selector;
    this.search = search;
  }

  @Override
  public Selection apply(Question question) {
    long change = search.shownChange();
    Optional<Selection> known = known(question).filter(s -> s.change() == change);
    if (known.isPresent()) {
      return known.get();
    }
    Selection selection = selector.select(question);
    synchronized (latest) {
      latest.put(question, selection);
    }
    return selection;
  }

  private Optional<Selection> known(Question question) {
    synchronized (latest) {
      return Optional.ofNullable(latest.get(question));
    }
  }
}
