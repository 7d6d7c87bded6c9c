package gapwise.store;

/** Hears of every write, in the order of the change log, one at a time. */
@FunctionalInterface
public interface WriteListener {
  /**
   * Called when the writes are durable and before the writer is told so. It may read the store, but
   * not write to it. The writes stand whatever it does: what it throws goes to the log, never to
   * the writer.
   */
  void written(WriteAnswer.Written written);
}
