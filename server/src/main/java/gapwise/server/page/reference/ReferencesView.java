package gapwise.server.page.reference;

import gapwise.server.job.reference.ReferenceFileOut;
import gapwise.server.job.reference.ReferenceState;
import gapwise.server.job.reference.Waiting;
import gapwise.server.page.Site;
import java.util.List;
import java.util.Optional;

/** What the page of references shows: files to choose, or a load of them. */
public sealed interface ReferencesView {
  /** The frame of the page. */
  Site site();

  /** No load yet; what was kept before. */
  record Choosing(Site site, KeptOverview kept) implements ReferencesView {}

  /**
   * A load.
   *
   * @param href its address
   * @param names names of its files
   * @param state how far it is
   */
  record Following(Site site, String href, List<String> names, ReferenceState state)
      implements ReferencesView {
    public Following {
      names = List.copyOf(names);
    }

    /** Whether there will be more to tell without anybody's doing. */
    public boolean goesOn() {
      return !state.isSettled();
    }

    /** What can be kept; empty where nothing can, or it is kept. */
    public Optional<Waiting> waiting() {
      if (state instanceof ReferenceState.Done done) {
        return Optional.of(done.waiting()).filter(one -> !one.files().isEmpty());
      }
      return state instanceof ReferenceState.NotKept failed
          ? Optional.of(failed.waiting())
          : Optional.empty();
    }

    /** The lines of the log of searches as far as they are known. */
    public List<KeepForm.Row> rows() {
      return waiting().map(KeepForm::rows).orElse(List.of());
    }

    /** The address of the table of proposals. */
    public String tableHref() {
      return href(ReferenceFileOut.PROPOSALS);
    }

    /** The address of all that was read, as RIS. */
    public String risHref() {
      return href(ReferenceFileOut.RIS);
    }

    /** The address of all that was read, as CSL-JSON. */
    public String jsonHref() {
      return href(ReferenceFileOut.CSL_JSON);
    }

    private String href(ReferenceFileOut file) {
      return href + "/" + file.file();
    }
  }
}
