package gapwise.server.page.desk;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** A paper that does not exist, as a PDF: 12 invented patients after bone transport, two pages. */
final class InventedPaper {
  private static final float SIZE = 11;
  private static final float LEFT = 60;

  private final PDDocument document = new PDDocument();
  private final PDType0Font face;

  private InventedPaper() throws IOException {
    try (InputStream letters =
        InventedPaper.class.getResourceAsStream("/liberation/LiberationSans-Regular.ttf")) {
      face = PDType0Font.load(document, Objects.requireNonNull(letters, "typeface"));
    }
  }

  static Path write(Path file) throws IOException {
    InventedPaper paper = new InventedPaper();
    paper.page(
        List.of(
            "Transport of bone over invented gaps",
            "An invented series for a test. There are no such patients.",
            "Twelve patients were treated. The gap was 6.4 cm on average.",
            "Bone joined without a further graft in 10/12 (83%) of limbs.",
            "The frame was worn for 11.5 months."));
    paper.page(
        List.of(
            "Table 1. The patients",
            "Case Age Gap Joined",
            "1 34 6.0 yes",
            "2 41 5.5 yes",
            "3 29 7.2 no"));
    paper.document.save(file.toFile());
    paper.document.close();
    return file;
  }

  private void page(List<String> lines) throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      float top = page.getMediaBox().getHeight() - 80;
      for (String line : lines) {
        content.beginText();
        content.setFont(face, SIZE);
        content.newLineAtOffset(LEFT, top);
        content.showText(line);
        content.endText();
        top -= 24;
      }
    }
  }
}
