package gapwise.server.home;

import gapwise.server.testing.RealServer;
import gapwise.store.StorePlace;
import java.nio.file.Path;

/** The same promises, kept by a database of a PostgreSQL server, which goes on running. */
class KilledDeskOnServerTest extends KilledDeskTest {
  @Override
  StorePlace newPlace(Path home) {
    return RealServer.newPlace(home);
  }
}
