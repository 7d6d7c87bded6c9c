package gapwise.server.page.desk;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * A figure that does not exist: the share of the 12 invented patients whose bone has united, over
 * 24 months, drawn as a journal would. Nobody is lost before the end, so that each event lifts the
 * curve by one twelfth (Kaplan and Meier 1958, worked by hand).
 */
public final class InventedFigure {
  /** When each bone united, months; the other two patients were last seen after 20 and 24. */
  public static final List<Double> UNITED =
      List.of(5.0, 6.0, 6.5, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 14.0);

  /** The sixth of twelve, so that one half has united then. */
  public static final double MEDIAN = 9;

  /** Numbers still followed and not united at 0, 6, 12 and 18 months, as printed below. */
  public static final List<Integer> AT_RISK = List.of(12, 11, 4, 2);

  private static final float LEFT = 120;
  private static final float BOTTOM = 420;
  private static final float MONTH = 12.5f;
  private static final float PERCENT = 2;
  private static final int MONTHS = 24;
  private static final float HEIGHT = PDRectangle.A4.getHeight();

  private InventedFigure() {}

  /** Where a time and a percentage lie, points from the page's top left corner. */
  public static double[] place(double month, double percent) {
    return new double[] {LEFT + MONTH * month, HEIGHT - (BOTTOM + PERCENT * percent)};
  }

  static void draw(PDDocument document, PDFont face) throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      axes(content, face);
      curve(content);
      words(content, face, LEFT + 90, BOTTOM - 32, "Time (months)");
      words(content, face, 50, BOTTOM - 52, "At risk");
      for (int at = 0; at < AT_RISK.size(); at++) {
        String number = AT_RISK.get(at).toString();
        words(content, face, centred(face, number, LEFT + 6 * MONTH * at), BOTTOM - 66, number);
      }
      words(content, face, 60, BOTTOM - 100, "Figure 1. Bone united over time. Median 9 months.");
    }
  }

  private static void axes(PDPageContentStream content, PDFont face) throws IOException {
    content.setLineWidth(0.8f);
    line(content, LEFT, BOTTOM, LEFT + MONTH * MONTHS, BOTTOM);
    line(content, LEFT, BOTTOM, LEFT, BOTTOM + PERCENT * 100);
    for (int month = 0; month <= MONTHS; month += 6) {
      float x = LEFT + MONTH * month;
      line(content, x, BOTTOM, x, BOTTOM - 4);
      String number = Integer.toString(month);
      words(content, face, centred(face, number, x), BOTTOM - 16, number);
    }
    for (int percent = 0; percent <= 100; percent += 20) {
      float y = BOTTOM + PERCENT * percent;
      line(content, LEFT, y, LEFT - 4, y);
      String number = Integer.toString(percent);
      float width = face.getStringWidth(number) / 1000 * 9;
      words(content, face, LEFT - 8 - width, y - 3.2f, number);
    }
    words(content, face, 70, BOTTOM + PERCENT * 100 + 18, "Bone united (%)");
  }

  private static void curve(PDPageContentStream content) throws IOException {
    content.setLineWidth(1.4f);
    content.setStrokingColor(0.75f, 0.1f, 0.1f);
    content.moveTo(LEFT, BOTTOM);
    float height = 0;
    for (int at = 0; at < UNITED.size(); at++) {
      float x = LEFT + MONTH * UNITED.get(at).floatValue();
      content.lineTo(x, BOTTOM + PERCENT * height);
      height = 100f * (at + 1) / InventedPaper.PATIENTS;
      content.lineTo(x, BOTTOM + PERCENT * height);
    }
    content.lineTo(LEFT + MONTH * MONTHS, BOTTOM + PERCENT * height);
    content.stroke();
    content.setStrokingColor(0f, 0f, 0f);
  }

  private static float centred(PDFont face, String words, float x) throws IOException {
    return x - face.getStringWidth(words) / 1000 * 9 / 2;
  }

  private static void line(PDPageContentStream content, float x1, float y1, float x2, float y2)
      throws IOException {
    content.moveTo(x1, y1);
    content.lineTo(x2, y2);
    content.stroke();
  }

  private static void words(
      PDPageContentStream content, PDFont face, float left, float bottom, String words)
      throws IOException {
    content.beginText();
    content.setFont(face, 9);
    content.newLineAtOffset(left, bottom);
    content.showText(words);
    content.endText();
  }
}
