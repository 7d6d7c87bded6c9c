package gapwise.store;

/** Hears of every write, in the order of the change log, one at a time. */
@FunctionalInterface
public interface WriteListener {
  /**
   * Called when the writes are durable and before the writer is told so. It may read the store, but
   * not write to it. What it throws reaches the writer; the writes stand all the same.
   */
  void written(WriteAnswer.Written written);
}
