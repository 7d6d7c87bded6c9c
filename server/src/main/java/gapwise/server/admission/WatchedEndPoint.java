package gapwise.server.admission;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.SocketChannel;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.io.ManagedSelector;
import org.eclipse.jetty.io.SocketChannelEndPoint;
import org.eclipse.jetty.util.BufferUtil;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * One connection. It ends itself when a header comes or an answer is taken too slowly, and while a
 * request is computed it can tell whether the other side has gone.
 *
 * <p>That somebody has gone shows only by reading, and what is read may be the next request, sent
 * ahead. Such bytes are kept aside and served first by {@link #fill}. Who looks ({@link #peerGone})
 * and who reads are kept apart by one lock, and looking ends before the answer is written.
 */
final class WatchedEndPoint extends SocketChannelEndPoint {
  /** Bytes kept of what is sent ahead; with more of them a departure is not seen. */
  private static final int AHEAD_BYTES = 4_096;

  private final Executor executor;
  private final Bounds bounds;
  private final Object reading = new Object();

  /** What was read ahead, from 0 to its position; made when first looked. */
  private ByteBuffer ahead = ByteBuffer.allocate(0);

  private boolean watched;

  private volatile Phase phase = Phase.BETWEEN;
  private volatile long since;
  private final AtomicLong written = new AtomicLong();

  private enum Phase {
    BETWEEN,
    HEADER,
    REQUEST,
    ANSWER
  }

  WatchedEndPoint(
      SocketChannel channel,
      ManagedSelector selector,
      SelectionKey key,
      Scheduler scheduler,
      Executor executor,
      Bounds bounds) {
    super(channel, selector, key, scheduler);
    this.executor = executor;
    this.bounds = bounds;
  }

  /** Says that a header has come whole, or a body; the answer begins after it. */
  void underWay() {
    phase = Phase.REQUEST;
  }

  /** Says that a request is answered and over. */
  void answered() {
    phase = Phase.BETWEEN;
  }

  /** Lets others look whether somebody is there; nobody may read meanwhile. */
  void watch(boolean on) {
    synchronized (reading) {
      watched = on;
      if (on && ahead.capacity() == 0) {
        ahead = ByteBuffer.allocate(AHEAD_BYTES);
      }
    }
  }

  /** Whether the other side has closed the connection; false where nobody may look. */
  boolean peerGone() {
    synchronized (reading) {
      if (!watched) {
        return false;
      }
      if (!isOpen()) {
        return true;
      }
      try {
        return ahead.hasRemaining() && getChannel().read(ahead) < 0;
      } catch (IOException reset) {
        return true;
      }
    }
  }

  @Override
  public int fill(ByteBuffer buffer) throws IOException {
    int filled;
    synchronized (reading) {
      filled = ahead.position() > 0 ? fromAhead(buffer) : super.fill(buffer);
    }
    return filled > 0 && headerTooSlow() ? -1 : filled;
  }

  private int fromAhead(ByteBuffer buffer) {
    ahead.flip();
    int start = BufferUtil.flipToFill(buffer);
    int count = Math.min(ahead.remaining(), buffer.remaining());
    buffer.put(ahead.slice().limit(count));
    BufferUtil.flipToFlush(buffer, start);
    ahead.position(count);
    ahead.compact();
    notIdle();
    return count;
  }

  private boolean headerTooSlow() {
    if (phase == Phase.BETWEEN) {
      since = System.nanoTime();
      phase = Phase.HEADER;
    } else if (phase == Phase.HEADER && System.nanoTime() - since > bounds.header().toNanos()) {
      close(new TimeoutException("the header of a request came too slowly"));
      return true;
    }
    return false;
  }

  @Override
  protected void needsFillInterest() {
    boolean waiting;
    synchronized (reading) {
      waiting = ahead.position() > 0;
    }
    if (waiting) {
      executor.execute(() -> getFillInterest().fillable());
    } else {
      super.needsFillInterest();
    }
  }

  @Override
  public boolean flush(ByteBuffer... buffers) throws IOException {
    if (phase == Phase.REQUEST) {
      since = System.nanoTime();
      written.set(0);
      phase = Phase.ANSWER;
    }
    long before = BufferUtil.remaining(buffers);
    boolean all = super.flush(buffers);
    written.addAndGet(before - BufferUtil.remaining(buffers));
    if (!all
        && phase == Phase.ANSWER
        && bounds.answer().tooSlow(System.nanoTime() - since, written.get())) {
      throw new EofException("the answer is taken too slowly");
    }
    return all;
  }

  /** While somebody computes, silence is no fault of the line. */
  @Override
  protected void onIdleExpired(TimeoutException silence) {
    boolean computing;
    synchronized (reading) {
      computing = watched;
    }
    if (!computing) {
      super.onIdleExpired(silence);
    }
  }
}
