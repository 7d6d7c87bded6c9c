package gapwise.paper.file;

import gapwise.paper.Guard;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.apache.pdfbox.io.RandomAccessRead;
import org.apache.pdfbox.io.RandomAccessReadView;

/** The bytes of a file, each under the eye of the guard of the work at hand. */
final class GuardedFile implements RandomAccessRead {
  private final RandomAccessRead file;
  private final Supplier<Guard> guard;
  private final AtomicLong taken = new AtomicLong();

  GuardedFile(RandomAccessRead file, Supplier<Guard> guard) {
    this.file = file;
    this.guard = guard;
  }

  /** Bytes handed out so far, those handed out again among them. */
  long taken() {
    return taken.get();
  }

  @Override
  public int read() throws IOException {
    guard.get().tick();
    taken.incrementAndGet();
    return file.read();
  }

  @Override
  public int read(byte[] bytes, int offset, int length) throws IOException {
    guard.get().tick();
    int read = file.read(bytes, offset, length);
    taken.addAndGet(Math.max(0, read));
    return read;
  }

  @Override
  public long getPosition() throws IOException {
    return file.getPosition();
  }

  @Override
  public void seek(long position) throws IOException {
    guard.get().tick();
    file.seek(position);
  }

  @Override
  public long length() throws IOException {
    return file.length();
  }

  @Override
  public boolean isClosed() {
    return file.isClosed();
  }

  @Override
  public boolean isEOF() throws IOException {
    guard.get().tick();
    return file.isEOF();
  }

  @Override
  public RandomAccessReadView createView(long start, long length) {
    return new RandomAccessReadView(this, start, length);
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
