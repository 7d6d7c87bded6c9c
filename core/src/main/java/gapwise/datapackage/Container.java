package gapwise.datapackage;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/** A folder or archive that files of a package are read from. */
interface Container extends Closeable {
  /** The bytes of a file from its start; empty where there is none of this path. */
  Optional<InputStream> open(String path) throws IOException;
}
