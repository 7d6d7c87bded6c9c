package gapwise.store;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Whoever hears of writes, in the order in which they came. Safe for threads. */
final class WriteListeners {
  private static final Logger LOG = LoggerFactory.getLogger(WriteListeners.class);

  private final List<Consumer<WriteAnswer.Written>> listeners = new CopyOnWriteArrayList<>();

  void add(Consumer<WriteAnswer.Written> listener) {
    listeners.add(Objects.requireNonNull(listener, "listener"));
  }

  /**
   * Every listener hears of it. The writes stand whatever a listener does, so its failure must not
   * reach the writer, who would take it for a failure to write.
   */
  void tell(WriteAnswer.Written written) {
    for (Consumer<WriteAnswer.Written> listener : listeners) {
      try {
        listener.accept(written);
      } catch (RuntimeException failure) {
        LOG.error("what follows the store failed after change {}", written.lastChange(), failure);
      }
    }
  }
}
