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

/**
 * A paper that does not exist, as a PDF: 12 invented patients after bone transport, three pages.
 */
public final class InventedPaper {
  private static final float SIZE = 11;
  private static final float LEFT = 60;

  public static final int PATIENTS = 12;

  private final PDDocument document = new PDDocument();
  private final PDType0Font face;

  private InventedPaper() throws IOException {
    try (InputStream letters =
        InventedPaper.class.getResourceAsStream("/liberation/LiberationSans-Regular.ttf")) {
      face = PDType0Font.load(document, Objects.requireNonNull(letters, "typeface"));
    }
  }

  public static Path write(Path file) throws IOException {
    InventedPaper paper = new InventedPaper();
    paper.page(
        List.of(
            "Transport of bone over invented gaps",
            "An invented series for a test. There are no such patients.",
            "Twelve patients were treated. The gap was 6.4 cm on average.",
            "Primary union was achieved in 10/12 (83%) of limbs.",
            "The frame was worn for 11.5 months."));
    paper.table();
    InventedFigure.draw(paper.document, paper.face);
    paper.document.save(file.toFile());
    paper.document.close();
    return file;
  }

  /** Twelve patients; no number of them is anybody's. */
  private void table() throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      float top = page.getMediaBox().getHeight() - 80;
      words(content, LEFT, top, "Table 1. The patients");
      row(content, top - 24, "Case", "Age (years)", "Defect (cm)", "Union");
      for (int patient = 1; patient <= PATIENTS; patient++) {
        row(
            content,
            top - 24 - 18 * patient,
            Integer.toString(patient),
            Integer.toString(24 + 3 * patient),
            (40 + 4 * patient) / 10 + "." + (40 + 4 * patient) % 10,
            patient % 6 == 0 ? "no" : "yes");
      }
    }
  }

  private void row(PDPageContentStream content, float top, String... cells) throws IOException {
    for (int at = 0; at < cells.length; at++) {
      words(content, LEFT + 110 * at, top, cells[at]);
    }
  }

  private void words(PDPageContentStream content, float left, float top, String words)
      throws IOException {
    content.beginText();
    content.setFont(face, SIZE);
    content.newLineAtOffset(left, top);
    content.showText(words);
    content.endText();
  }

  private void page(List<String> lines) throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      float top = page.getMediaBox().getHeight() - 80;
      for (String line : lines) {
        words(content, LEFT, top, line);
        top -= 24;
      }
    }
  }
}
