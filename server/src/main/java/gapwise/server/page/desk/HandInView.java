package gapwise.server.page.desk;

import gapwise.server.page.Site;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A draft before it is handed in.
 *
 * @param site the frame of the page
 * @param study name of the study
 * @param baseVersion the version it changes, 0 for a new study
 * @param told what is to be said of it, beside all that stands in the evidence base
 * @param changes each field of the study as it stands that would be another
 * @param refused why it was not taken; empty where nobody has tried
 */
public record HandInView(
    Site site,
    String study,
    int baseVersion,
    Told told,
    List<VersionsView.Line> changes,
    Optional<String> refused) {
  public HandInView {
    Objects.requireNonNull(told, "told");
    changes = List.copyOf(changes);
    Objects.requireNonNull(refused, "refused");
  }

  /** Whether nothing stands in the way. */
  public boolean ready() {
    return told.impossible() + told.needed() + told.doubts() == 0;
  }
}
