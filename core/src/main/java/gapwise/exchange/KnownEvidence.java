package gapwise.exchange;

import gapwise.evidence.Study;
import java.util.Set;
import java.util.function.Consumer;

/** What stands in an evidence base already when a template is read. */
@FunctionalInterface
public interface KnownEvidence {
  /** Nothing stands there. */
  KnownEvidence NONE = consumer -> {};

  /** Passes on every study, one at a time. */
  void forEach(Consumer<? super Study> consumer);

  /** The keys of the doubts that were acknowledged with earlier imports. */
  default Set<String> acknowledged() {
    return Set.of();
  }
}
