package gapwise.paper;

import java.io.ByteArrayInputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;

/**
 * One message between a server and the process that reads papers: a text, and the bytes of a
 * picture beside it, each behind its length.
 */
public final class Frame {
  /** Above what any page within the caps gives; more comes from a process that is not itself. */
  private static final int MOST_BYTES = 256_000_000;

  private final byte[] text;
  private final byte[] picture;

  private Frame(byte[] text, byte[] picture) {
    this.text = text;
    this.picture = picture;
  }

  /** A message without a picture. */
  public static Frame of(byte[] text) {
    return new Frame(text.clone(), new byte[0]);
  }

  /** The same message with a picture beside it. */
  public Frame with(Picture beside) throws IOException {
    return new Frame(text, beside.png().readAllBytes());
  }

  /** The text, as UTF-8. */
  public InputStream text() {
    return new ByteArrayInputStream(text);
  }

  /** The picture as a PNG file; no bytes where there is none. */
  public byte[] picture() {
    return picture.clone();
  }

  public void write(DataOutputStream out) throws IOException {
    out.writeInt(text.length);
    out.writeInt(picture.length);
    out.write(text);
    out.write(picture);
    out.flush();
  }

  /**
   * The next message; empty where the other side has ended.
   *
   * @throws IOException where what comes is no message
   */
  public static Optional<Frame> read(DataInputStream in) throws IOException {
    int first = in.read();
    if (first < 0) {
      return Optional.empty();
    }
    int text = first << 24 | in.readUnsignedByte() << 16 | in.readUnsignedShort();
    int picture = in.readInt();
    if (text < 0 || picture < 0 || text > MOST_BYTES || picture > MOST_BYTES) {
      throw new IOException("no message: lengths " + text + " and " + picture);
    }
    byte[] own = new byte[text];
    in.readFully(own);
    byte[] beside = new byte[picture];
    in.readFully(beside);
    return Optional.of(new Frame(own, beside));
  }
}
