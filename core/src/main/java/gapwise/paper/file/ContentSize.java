package gapwise.paper.file;

import gapwise.paper.Guard;
import gapwise.paper.Refused;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.filter.Filter;
import org.apache.pdfbox.filter.FilterFactory;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Unpacks the drawing of a page, and the drawings in it, once and only to count, stage by stage and
 * never past the cap, since PDFBox unpacks without one.
 */
final class ContentSize {
  /** Drawings within drawings within a page: more are never needed. */
  private static final int DEEPEST = 12;

  private final Guard guard;
  private final Set<COSBase> seen = Collections.newSetFromMap(new IdentityHashMap<>());
  private long total;
  private boolean whole = true;

  private ContentSize(Guard guard) {
    this.guard = guard;
  }

  /**
   * Counts.
   *
   * @return whether all parts could be unpacked to their ends; PDFBox itself says nothing where one
   *     breaks off
   */
  static boolean check(PDPage page, Guard guard) throws IOException {
    ContentSize size = new ContentSize(guard);
    COSBase contents = page.getCOSObject().getDictionaryObject(COSName.CONTENTS);
    if (contents instanceof COSArray parts) {
      for (int i = 0; i < parts.size(); i++) {
        size.count(parts.getObject(i));
      }
    } else if (contents != null) {
      size.count(contents);
    }
    if (page.getResources() != null) {
      size.within(page.getResources().getCOSObject(), 0);
    }
    return size.whole;
  }

  private void within(COSDictionary resources, int depth) throws IOException {
    guard.step();
    if (depth > DEEPEST || !seen.add(resources)) {
      return;
    }
    COSDictionary drawings = resources.getCOSDictionary(COSName.XOBJECT);
    if (drawings == null) {
      return;
    }
    for (COSName name : drawings.keySet()) {
      if (drawings.getDictionaryObject(name) instanceof COSStream stream) {
        if (COSName.FORM.equals(stream.getCOSName(COSName.SUBTYPE))) {
          count(stream);
          COSDictionary own = stream.getCOSDictionary(COSName.RESOURCES);
          if (own != null) {
            within(own, depth + 1);
          }
        }
      }
    }
  }

  private void count(COSBase base) throws IOException {
    guard.step();
    if (!(base instanceof COSStream stream) || !seen.add(stream)) {
      return;
    }
    COSBase named = stream.getFilters();
    List<? extends COSBase> names =
        named instanceof COSArray array
            ? array.toList()
            : named == null ? List.of() : List.of(named);
    if (names.size() == 1 && COSName.FLATE_DECODE.equals(names.get(0))) {
      whole &= isWhole(stream);
    }
    if (names.isEmpty()) {
      total += stream.getLength();
    } else {
      unpack(stream, names);
    }
    if (total > guard.caps().unpackedBytes()) {
      throw tooMuch();
    }
  }

  private boolean isWhole(COSStream stream) throws IOException {
    byte[] unpacked = new byte[1 << 14];
    try (InputStream raw = stream.createRawInputStream();
        InflaterInputStream in = new InflaterInputStream(raw)) {
      long count = 0;
      for (int made = in.read(unpacked); made >= 0; made = in.read(unpacked)) {
        guard.tick();
        count += made;
        if (count > guard.caps().unpackedBytes()) {
          throw tooMuch();
        }
      }
      return true;
    } catch (ZipException | EOFException brokenOff) {
      return false;
    }
  }

  private void unpack(COSStream stream, List<? extends COSBase> names) throws IOException {
    try (InputStream raw = stream.createRawInputStream()) {
      InputStream in = raw;
      Iterator<? extends COSBase> rest = names.iterator();
      for (int i = 0; rest.hasNext(); i++) {
        if (!(rest.next() instanceof COSName name)) {
          return;
        }
        Filter filter = FilterFactory.INSTANCE.getFilter(name);
        boolean last = !rest.hasNext();
        ByteArrayOutputStream kept = new ByteArrayOutputStream();
        filter.decode(in, new Counting(last ? OutputStream.nullOutputStream() : kept), stream, i);
        in = new ByteArrayInputStream(kept.toByteArray());
      }
    }
  }

  private Guard.StoppedException tooMuch() {
    return new Guard.StoppedException(
        Refused.tooMuch("a drawing of more than " + guard.caps().unpackedBytes() + " bytes"));
  }

  private final class Counting extends OutputStream {
    private final OutputStream to;

    Counting(OutputStream to) {
      this.to = to;
    }

    @Override
    public void write(int b) throws IOException {
      add(1);
      to.write(b);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
      add(length);
      to.write(bytes, offset, length);
    }

    private void add(int length) {
      guard.tick();
      total += length;
      if (total > guard.caps().unpackedBytes()) {
        throw tooMuch();
      }
    }
  }
}
