package gapwise.supplement;

import static gapwise.sentence.Sentences.say;

import gapwise.datapackage.PackageWriter;
import gapwise.figure.Figure;
import gapwise.figure.drawing.Medium;
import gapwise.figure.drawing.Picture;
import gapwise.figure.file.FigureFile;
import gapwise.figure.file.FileKind;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A figure as drawing, document and picture, sheet by sheet, and its numbers as a table. */
final class FigureFiles {
  /** Sheets of one figure; of more, the table has all numbers. */
  private static final int MOST_SHEETS = 12;

  private final PackageWriter writer;
  private final PdfDrawing pdf;

  FigureFiles(PackageWriter writer, PdfDrawing pdf) {
    this.writer = writer;
    this.pdf = pdf;
  }

  /**
   * Writes them.
   *
   * @param stem of the files, such as 01-union-forest
   * @return the paths that were written
   */
  List<String> write(String stem, Figure figure) throws IOException {
    List<String> paths = new ArrayList<>();
    List<Picture> pictures = figure.draw(Medium.PAGE);
    for (int sheet = 1; sheet <= Math.min(MOST_SHEETS, pictures.size()); sheet++) {
      String file = "figures/" + stem + (sheet == 1 ? "" : "-" + sheet);
      FigureFile.Wish wish = new FigureFile.Wish(Medium.PAGE, sheet, Optional.empty());
      byte[] drawing = FigureFile.of(figure, FileKind.SVG, wish);
      byte[] picture = FigureFile.of(figure, FileKind.PNG, wish);
      byte[] document = pdf.pdf(pictures.get(sheet - 1), figure.title());
      add(paths, file + ".svg", "image/svg+xml", figure, drawing);
      add(paths, file + ".pdf", "application/pdf", figure, document);
      add(paths, file + ".png", "image/png", figure, picture);
    }
    String table = "tables/" + stem + ".csv";
    writer.addText(
        SupplementForm.file(
            table,
            SupplementForm.CSV_TYPE,
            say("supplement.numbers-of-figure", Map.of("title", figure.title()))),
        figure.csv());
    paths.add(table);
    return paths;
  }

  private void add(List<String> paths, String path, String type, Figure figure, byte[] bytes)
      throws IOException {
    writer.add(SupplementForm.file(path, type, figure.title()), target -> target.write(bytes));
    paths.add(path);
  }
}
