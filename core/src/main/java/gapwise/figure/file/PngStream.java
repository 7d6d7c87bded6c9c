package gapwise.figure.file;

import gapwise.budget.Work;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/**
 * Writes a picture as PNG (W3C Recommendation, third edition, 2025) from bands of rows, so that a
 * large one is never in memory whole: first what the file says of itself, then the rows, then the
 * end. Eight bits for each of red, green and blue.
 */
final class PngStream {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

  /** Section 11.2.1: depth, true colour, deflate, adaptive filters, no interlace. */
  private static final byte[] KIND = {8, 2, 0, 0, 0};

  private static final int COLOURS = 3;

  /** Section 9.2: each byte less that above it, which leaves little of a drawing's flat areas. */
  private static final byte FILTER_UP = 2;

  /** A drawing packs well at once; slower settings save a quarter for twice the time. */
  private static final int PACKING = 3;

  private static final int BYTES_A_CHUNK = 1 << 16;

  private final DataOutputStream target;
  private final int width;
  private final Deflater deflater = new Deflater(PACKING);
  private final DeflaterOutputStream packed;
  private byte[] above;
  private byte[] row;

  PngStream(OutputStream target, int width, int height) throws IOException {
    this.target = new DataOutputStream(target);
    this.width = width;
    this.packed = new DeflaterOutputStream(new Chunks(), deflater, BYTES_A_CHUNK);
    this.above = new byte[COLOURS * width];
    this.row = new byte[COLOURS * width];
    target.write(SIGNATURE);
    ByteArrayOutputStream header = new ByteArrayOutputStream();
    DataOutputStream fields = new DataOutputStream(header);
    fields.writeInt(width);
    fields.writeInt(height);
    fields.write(KIND);
    chunk("IHDR", header.toByteArray());
  }

  /** Section 11.3.4.3: pixels per metre across and down. */
  void pixelsPerMetre(int number) throws IOException {
    ByteArrayOutputStream content = new ByteArrayOutputStream();
    DataOutputStream fields = new DataOutputStream(content);
    fields.writeInt(number);
    fields.writeInt(number);
    fields.writeByte(1);
    chunk("pHYs", content.toByteArray());
  }

  /** Section 11.3.3.4: international text, not packed, in English. */
  void text(String keyword, String words) throws IOException {
    ByteArrayOutputStream content = new ByteArrayOutputStream();
    content.write(keyword.getBytes(StandardCharsets.ISO_8859_1));
    content.write(new byte[] {0, 0, 0});
    content.write("en\0".getBytes(StandardCharsets.ISO_8859_1));
    content.write(0);
    content.write(words.replace('\0', ' ').getBytes(StandardCharsets.UTF_8));
    chunk("iTXt", content.toByteArray());
  }

  /** The next rows of the picture, as wide as it. */
  void rows(BufferedImage band, int count) throws IOException {
    int[] pixels = new int[width];
    byte[] filtered = new byte[1 + COLOURS * width];
    filtered[0] = FILTER_UP;
    for (int y = 0; y < count; y++) {
      Work.check();
      band.getRGB(0, y, width, 1, pixels, 0, width);
      for (int x = 0; x < width; x++) {
        row[COLOURS * x] = (byte) (pixels[x] >> 16);
        row[COLOURS * x + 1] = (byte) (pixels[x] >> 8);
        row[COLOURS * x + 2] = (byte) pixels[x];
      }
      for (int at = 0; at < row.length; at++) {
        filtered[at + 1] = (byte) (row[at] - above[at]);
      }
      packed.write(filtered);
      byte[] free = above;
      above = row;
      row = free;
    }
  }

  /** After the last row. */
  void end() throws IOException {
    packed.finish();
    deflater.end();
    chunk("IEND", new byte[0]);
  }

  private void chunk(String type, byte[] content) throws IOException {
    byte[] name = type.getBytes(StandardCharsets.ISO_8859_1);
    CRC32 check = new CRC32();
    check.update(name);
    check.update(content);
    target.writeInt(content.length);
    target.write(name);
    target.write(content);
    target.writeInt((int) check.getValue());
  }

  /** What the packer gives becomes chunks of pixels. */
  private final class Chunks extends OutputStream {
    @Override
    public void write(int one) throws IOException {
      chunk("IDAT", new byte[] {(byte) one});
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
      if (length > 0) {
        chunk("IDAT", Arrays.copyOfRange(bytes, offset, offset + length));
      }
    }
  }
}
