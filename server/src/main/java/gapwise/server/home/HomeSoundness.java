package gapwise.server.home;

import gapwise.store.DocumentStore;
import gapwise.store.Soundness;
import gapwise.store.SoundnessCheck;
import gapwise.store.StoreUnusableException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The look at every page and every record of a database when its home is opened: before anything is
 * answered where that takes less than a second, else in the background.
 */
final class HomeSoundness implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(HomeSoundness.class);

  /**
   * Largest database that is looked at before the home is open. Measured: 20,000 studies are 84
   * megabytes and take half a second.
   */
  private static final long MOST_BYTES_BEFORE = 100_000_000;

  /** Processes that share the records read all of them one at a time. */
  private static final String WORK = "soundness";

  private final DocumentStore store;
  private final SoundnessCheck check;
  private final CountDownLatch ended = new CountDownLatch(1);
  private volatile Optional<Soundness> found = Optional.empty();

  private HomeSoundness(DocumentStore store) {
    this.store = store;
    this.check = store.soundnessCheck();
  }

  /**
   * Looks, or starts to look.
   *
   * @throws StoreUnusableException when the file itself is found damaged before the home is open;
   *     with damaged records in a sound file it opens, and only what needs those cannot be answered
   */
  static HomeSoundness of(DocumentStore store) {
    return of(store, MOST_BYTES_BEFORE);
  }

  static HomeSoundness of(DocumentStore store, long mostBytesBefore) {
    HomeSoundness soundness = new HomeSoundness(store);
    if (soundness.check.bytes() <= mostBytesBefore) {
      soundness.found = soundness.check.run();
      soundness.found.ifPresent(soundness.check::requireIntact);
      soundness.tell();
      soundness.ended.countDown();
    } else {
      soundness.check.requireComplete();
      Thread thread = new Thread(soundness::lookInBackground, "soundness");
      thread.setDaemon(true);
      thread.setPriority(Thread.MIN_PRIORITY);
      thread.start();
    }
    return soundness;
  }

  private void lookInBackground() {
    try {
      if (!store.doAlone(WORK, this::lookAtAll)) {
        LOG.info("Another process is looking at all records; it tells what it finds.");
      }
    } catch (StoreUnusableException failure) {
      LOG.error("The look at all records broke off: {}", failure.getMessage());
    } finally {
      ended.countDown();
    }
  }

  private void lookAtAll() {
    found = check.run();
    tell();
    found
        .filter(Soundness::isSound)
        .ifPresent(seen -> LOG.info("All {} records were read and are sound.", seen.versions()));
  }

  private void tell() {
    found
        .filter(seen -> !seen.isSound())
        .ifPresent(
            seen ->
                LOG.error(
                    "{} What needs a damaged record is refused. Put the last sound backup back by"
                        + " the command restore, or import the studies named again.",
                    seen.told()));
  }

  /** Waits until the look has ended; false when it has not after so long. */
  boolean await(Duration most) throws InterruptedException {
    return ended.await(most.toMillis(), TimeUnit.MILLISECONDS);
  }

  /** What was found; empty while it is under way. */
  Optional<Soundness> found() {
    return found;
  }

  /** Stops a look that is under way. */
  @Override
  public void close() {
    check.cancel();
  }
}
