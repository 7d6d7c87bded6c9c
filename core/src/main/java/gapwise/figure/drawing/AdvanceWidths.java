package gapwise.figure.drawing;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * How far each letter of a font file moves the pen, read from its tables and not through the
 * machine's painter, which measures with hinting or not as the machine is set. OpenType (ISO/IEC
 * 14496-22): table directory, "head", "hhea", "hmtx", and "cmap" in format 4, which covers the
 * Basic Multilingual Plane.
 */
final class AdvanceWidths {
  private static final int PLANE = 0x10000;
  private static final int WINDOWS = 3;
  private static final int UNICODE_BASIC = 1;
  private static final short NONE = -1;

  private final int unitsPerEm;

  /** By code point; {@link #NONE} where there is no letter. */
  private final short[] advances;

  private AdvanceWidths(int unitsPerEm, short[] advances) {
    this.unitsPerEm = unitsPerEm;
    this.advances = advances;
  }

  int unitsPerEm() {
    return unitsPerEm;
  }

  boolean has(int point) {
    return point < PLANE && advances[point] != NONE;
  }

  /** Of a letter that it has, in units of the em. */
  int of(int point) {
    return advances[point];
  }

  static AdvanceWidths of(byte[] file) {
    ByteBuffer font = ByteBuffer.wrap(file);
    int unitsPerEm = unsigned(font, table(font, "head") + 18);
    int measured = unsigned(font, table(font, "hhea") + 34);
    int metrics = table(font, "hmtx");
    int map = unicode(font, table(font, "cmap"));
    short[] advances = new short[PLANE];
    Arrays.fill(advances, NONE);
    int segments = unsigned(font, map + 6) / 2;
    int ends = map + 14;
    int starts = ends + 2 * segments + 2;
    int deltas = starts + 2 * segments;
    int ranges = deltas + 2 * segments;
    for (int i = 0; i < segments; i++) {
      int range = unsigned(font, ranges + 2 * i);
      int start = unsigned(font, starts + 2 * i);
      for (int point = start; point <= unsigned(font, ends + 2 * i); point++) {
        int glyph =
            range == 0 ? point : unsigned(font, ranges + 2 * i + range + 2 * (point - start));
        if (range == 0 || glyph != 0) {
          glyph = (glyph + unsigned(font, deltas + 2 * i)) & 0xFFFF;
        }
        if (glyph != 0) {
          // Letters after the last measured one are as wide as that.
          advances[point] = font.getShort(metrics + 4 * Math.min(glyph, measured - 1));
        }
      }
    }
    return new AdvanceWidths(unitsPerEm, advances);
  }

  private static int unsigned(ByteBuffer font, int at) {
    return Short.toUnsignedInt(font.getShort(at));
  }

  private static int table(ByteBuffer font, String name) {
    int tables = unsigned(font, 4);
    for (int i = 0; i < tables; i++) {
      int entry = 12 + 16 * i;
      byte[] tag = new byte[4];
      font.get(entry, tag);
      if (name.equals(new String(tag, StandardCharsets.US_ASCII))) {
        return font.getInt(entry + 8);
      }
    }
    throw new IllegalArgumentException("the font file has no table " + name);
  }

  /** Where the map of the Basic Multilingual Plane begins. */
  private static int unicode(ByteBuffer font, int map) {
    int maps = unsigned(font, map + 2);
    for (int i = 0; i < maps; i++) {
      int entry = map + 4 + 8 * i;
      int at = map + font.getInt(entry + 4);
      if (unsigned(font, entry) == WINDOWS
          && unsigned(font, entry + 2) == UNICODE_BASIC
          && unsigned(font, at) == 4) {
        return at;
      }
    }
    throw new IllegalArgumentException("the font file has no map of Unicode in format 4");
  }
}
