package gapwise.server.page.studies;

import gapwise.server.job.ChangedStudy;
import gapwise.server.job.ImportState;
import gapwise.server.page.Site;
import java.util.List;

/** What the page of imports shows: files to choose, an import under way, or what it stored. */
public sealed interface ImportView {
  /** The frame of the page. */
  Site site();

  /**
   * No import yet.
   *
   * @param sheets names of the sheets of the template
   */
  record Choosing(Site site, List<String> sheets) implements ImportView {}

  /**
   * An import.
   *
   * @param href its address
   * @param names of its files
   * @param state how far it is
   * @param links its studies, the first of them, where it is done; else none
   */
  record Following(Site site, String href, String names, ImportState state, List<Link> links)
      implements ImportView {
    public Following {
      links = List.copyOf(links);
    }

    /** Whether there will be more to tell without anybody's doing. */
    public boolean goesOn() {
      return state instanceof ImportState.Reading;
    }
  }

  /**
   * A study that was imported.
   *
   * @param was how it stood before the import, in words
   */
  record Link(String href, String label, String was) {}

  /** Studies that are shown one by one; a tick for all of them covers what is not. */
  int MOST_SHOWN = 200;

  /** Stands for exactly these changes, so that a tick for all never covers some not seen. */
  static String all(List<ChangedStudy> changes) {
    return Integer.toHexString(changes.stream().map(ChangedStudy::key).toList().hashCode());
  }
}
