package gapwise.server.admission;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.util.Optional;
import org.eclipse.jetty.io.ByteBufferPool;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Components;

/**
 * What a request brought, read whole before anybody computes: in memory while it is small, then on
 * the disk. Written by one thread after the other, then read once.
 */
final class KeptBody implements AutoCloseable {
  /** A form or a short plan; a thousand of them are 16 MB. */
  private static final int MOST_IN_MEMORY = 16 * 1024;

  private final Spool spool;
  private final ByteArrayOutputStream memory = new ByteArrayOutputStream();
  private Optional<FileChannel> file = Optional.empty();
  private long spooled;

  KeptBody(Spool spool) {
    this.spool = spool;
  }

  /**
   * Adds what has come.
   *
   * @throws BusyException when the room for bodies is full
   * @throws IOException when it cannot be written
   */
  void add(ByteBuffer part) throws IOException {
    if (file.isEmpty() && memory.size() + part.remaining() <= MOST_IN_MEMORY) {
      byte[] bytes = new byte[part.remaining()];
      part.get(bytes);
      memory.writeBytes(bytes);
      return;
    }
    if (file.isEmpty()) {
      file = Optional.of(spool.open());
      write(ByteBuffer.wrap(memory.toByteArray()));
      memory.reset();
    }
    write(part);
  }

  private void write(ByteBuffer part) throws IOException {
    if (!spool.take(part.remaining())) {
      throw new BusyException(
          Lane.INTAKE.retryAfterSeconds(),
          "The server takes in as many uploads as it has room for. Nothing was taken of yours; try"
              + " again in a minute.");
    }
    spooled += part.remaining();
    while (part.hasRemaining()) {
      file.orElseThrow().write(part);
    }
  }

  boolean isInMemory() {
    return file.isEmpty();
  }

  /** All of it, from the start. */
  Content.Source source(Components components) throws IOException {
    if (file.isEmpty()) {
      return Content.Source.from(ByteBuffer.wrap(memory.toByteArray()));
    }
    FileChannel whole = file.get().position(0);
    ByteBufferPool pool = components.getByteBufferPool();
    return Content.Source.from(new ByteBufferPool.Sized(pool, false, MOST_IN_MEMORY), whole);
  }

  /** Forgets it; the file goes with its last use. */
  @Override
  public void close() throws IOException {
    spool.giveBack(spooled);
    spooled = 0;
    if (file.isPresent()) {
      file.get().close();
    }
  }
}
