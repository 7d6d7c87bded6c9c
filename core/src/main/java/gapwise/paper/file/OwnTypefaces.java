package gapwise.paper.file;

import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/**
 * Typefaces for files that do not bring their own: always ours, so that a page is the same on every
 * machine, and so that PDFBox does not search the disk for typefaces at the first page.
 */
final class OwnTypefaces implements FontMapper {
  private static final OwnTypefaces ONLY = new OwnTypefaces();

  private final Map<String, TrueTypeFont> read = new ConcurrentHashMap<>();

  private OwnTypefaces() {}

  /** Once is enough; more does no harm. */
  static void install() {
    FontMappers.set(ONLY);
  }

  @Override
  public FontMapping<TrueTypeFont> getTrueTypeFont(String name, PDFontDescriptor descriptor) {
    return new FontMapping<>(face(String.valueOf(name)), true);
  }

  @Override
  public FontMapping<FontBoxFont> getFontBoxFont(String name, PDFontDescriptor descriptor) {
    return new FontMapping<>(face(String.valueOf(name)), true);
  }

  @Override
  public CIDFontMapping getCIDFont(
      String name, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
    TrueTypeFont face = face(String.valueOf(name));
    return face instanceof OpenTypeFont open
        ? new CIDFontMapping(open, face, true)
        : new CIDFontMapping(noOpenType(), face, true);
  }

  /** PDFBox asks for none where a typeface of the other kind is given. */
  @SuppressWarnings({"NullAway", "DataFlowIssue"})
  private static OpenTypeFont noOpenType() {
    return null;
  }

  private TrueTypeFont face(String name) {
    String lower = name.toLowerCase(Locale.ROOT);
    String family =
        lower.contains("times") || lower.contains("serif") && !lower.contains("sans")
            ? "Serif"
            : lower.contains("courier") || lower.contains("mono") ? "Mono" : "Sans";
    boolean bold = lower.contains("bold") || lower.contains("black");
    boolean italic = lower.contains("italic") || lower.contains("oblique");
    String style = bold ? italic ? "BoldItalic" : "Bold" : italic ? "Italic" : "Regular";
    return read.computeIfAbsent(
        "/liberation/Liberation" + family + "-" + style + ".ttf", OwnTypefaces::load);
  }

  private static TrueTypeFont load(String resource) {
    try (InputStream in =
        Objects.requireNonNull(OwnTypefaces.class.getResourceAsStream(resource), resource)) {
      return new TTFParser().parse(new RandomAccessReadBuffer(in));
    } catch (IOException missing) {
      throw new IllegalStateException("a typeface of the program is damaged", missing);
    }
  }
}
