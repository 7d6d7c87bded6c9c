package gapwise.store;

import java.nio.file.Path;

/** The same promises, kept by a database of a PostgreSQL server, which goes on running. */
class StoreCrashOnServerTest extends StoreCrashTest {
  @Override
  StorePlace newPlace(Path folder) {
    return RealServer.newPlace(folder);
  }
}
