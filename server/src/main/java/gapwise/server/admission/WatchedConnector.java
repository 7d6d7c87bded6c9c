package gapwise.server.admission;

import java.nio.channels.SelectionKey;
import java.nio.channels.SocketChannel;
import org.eclipse.jetty.io.ByteBufferPool;
import org.eclipse.jetty.io.ManagedSelector;
import org.eclipse.jetty.io.SocketChannelEndPoint;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;

/**
 * Opens connections that know their limits and can be asked whether anybody is left. When there are
 * as many as are taken, those that say nothing go soon.
 */
final class WatchedConnector extends ServerConnector {
  private static final long CROWDED_SILENCE_MILLIS = 2_000;

  /** As many as the web server thinks right for the machine. */
  private static final int STANDARD_THREADS = -1;

  private final Bounds bounds;
  private volatile boolean crowded;

  WatchedConnector(Server server, HttpConfiguration http, Bounds bounds) {
    // Buffers are not used again: of many refused requests at once, one answer was seen to begin
    // with
    // what somebody else had sent. A new buffer a request costs little and holds nothing of others.
    super(
        server,
        null,
        null,
        ByteBufferPool.NON_POOLING,
        STANDARD_THREADS,
        STANDARD_THREADS,
        new HttpConnectionFactory(http));
    this.bounds = bounds;
    server.addBean(new Crowd());
  }

  /** Stops taking connections at the limit, and shortens the silence of those that there are. */
  private final class Crowd extends NetworkConnectionLimit {
    Crowd() {
      super(bounds.connections(), WatchedConnector.this);
      setEndPointIdleTimeout(CROWDED_SILENCE_MILLIS);
    }

    @Override
    protected void limit() {
      crowded = true; // for those that are taken already and not yet open
      super.limit();
    }

    @Override
    protected void unlimit() {
      crowded = false;
      super.unlimit();
    }
  }

  @Override
  protected SocketChannelEndPoint newEndPoint(
      SocketChannel channel, ManagedSelector selector, SelectionKey key) {
    WatchedEndPoint end =
        new WatchedEndPoint(channel, selector, key, getScheduler(), getExecutor(), bounds);
    end.setIdleTimeout(crowded ? CROWDED_SILENCE_MILLIS : getIdleTimeout());
    return end;
  }
}
