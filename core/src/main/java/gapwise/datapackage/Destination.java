package gapwise.datapackage;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;

/** Where files of a package are put, one after the other. */
interface Destination extends Closeable {
  /** A file to write; it is closed before the next one is begun. */
  OutputStream next(String path) throws IOException;

  /** All are written: what was made takes its name. */
  void finish() throws IOException;

  /** Deletes what was begun and not finished. */
  @Override
  void close() throws IOException;
}
