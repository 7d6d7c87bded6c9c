package gapwise.server.admission;

import java.nio.channels.SelectionKey;
import java.nio.channels.SocketChannel;
import org.eclipse.jetty.io.ManagedSelector;
import org.eclipse.jetty.io.SocketChannelEndPoint;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;

/** Opens connections that know their limits and can be asked whether anybody is left. */
final class WatchedConnector extends ServerConnector {
  private final Bounds bounds;

  WatchedConnector(Server server, HttpConfiguration http, Bounds bounds) {
    super(server, new HttpConnectionFactory(http));
    this.bounds = bounds;
  }

  @Override
  protected SocketChannelEndPoint newEndPoint(
      SocketChannel channel, ManagedSelector selector, SelectionKey key) {
    WatchedEndPoint end =
        new WatchedEndPoint(channel, selector, key, getScheduler(), getExecutor(), bounds);
    end.setIdleTimeout(getIdleTimeout());
    return end;
  }
}
