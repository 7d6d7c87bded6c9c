package gapwise.store;

import java.nio.file.Path;

/** The same promises, kept by a database of a PostgreSQL server. */
class WorkingCopiesOnServerTest extends WorkingCopiesTest {
  @Override
  StorePlace newPlace(Path folder) {
    return RealServer.newPlace(folder);
  }
}
