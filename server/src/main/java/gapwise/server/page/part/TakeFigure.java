package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.figure.Figure;
import gapwise.figure.drawing.Medium;
import gapwise.figure.file.FileKind;
import gapwise.figure.file.PngSize;
import gapwise.server.address.Address;
import gapwise.server.address.FigureAddress;
import gapwise.server.download.FigureDownloads;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The panel from which a figure is taken away: links for each purpose, and a form for a picture of
 * a chosen size.
 *
 * @param purposes what it can be drawn for
 * @param data numbers and citations
 * @param picture address of the picture, without parameters
 * @param rest what the address says of the question, which the form sends along
 * @param studies number of studies in the citations
 */
public record TakeFigure(
    List<Purpose> purposes, List<Link> data, String picture, Address rest, int studies) {
  private static final List<Medium> OFFERED =
      List.of(Medium.SLIDE, Medium.COLUMN, Medium.TWO_COLUMNS, Medium.A4, Medium.PAGE);

  /** Sheets of one purpose that have a link each; of more the first ones. Our choice. */
  private static final int MOST_LINKED = 24;

  /** A file by its words. */
  public record Link(String label, String href) {}

  /**
   * What the figure can be drawn for.
   *
   * @param code of the medium
   * @param size width in words
   * @param drawings its sheets as drawings
   * @param pictures its sheets as pictures
   * @param more how the sheets are reached that have no link; empty where all have one
   */
  public record Purpose(
      String code,
      String label,
      String size,
      List<Link> drawings,
      List<Link> pictures,
      String more) {}

  /**
   * The panel of a figure.
   *
   * @param path of its files, as given to {@link FigureDownloads#add}
   * @param address the question
   */
  public static TakeFigure of(String path, Address address, Figure figure) {
    Address rest = address.without(FigureAddress.NAMES);
    return new TakeFigure(
        OFFERED.stream().map(medium -> purpose(path, rest, figure, medium)).toList(),
        Stream.of(FileKind.CSV, FileKind.CITATIONS, FileKind.RIS, FileKind.CSL)
            .filter(kind -> kind == FileKind.CSV || !figure.references().isEmpty())
            .map(kind -> new Link(kind.label(), rest.at(path + kind.ending())))
            .toList(),
        path + FileKind.PNG.ending(),
        rest,
        figure.references().size());
  }

  private static Purpose purpose(String path, Address rest, Figure figure, Medium medium) {
    int sheets = figure.sheets(medium);
    Address drawn = medium == Medium.PAGE ? rest : rest.with("for", medium.code());
    return new Purpose(
        medium.code(),
        medium.label(),
        size(medium),
        links(path, drawn, FileKind.SVG, sheets),
        links(path, drawn, FileKind.PNG, sheets),
        sheets <= MOST_LINKED
            ? ""
            : say("page.further-sheets", Map.of("last", Integer.toString(sheets))));
  }

  private static List<Link> links(String path, Address drawn, FileKind kind, int sheets) {
    return IntStream.rangeClosed(1, Math.min(sheets, MOST_LINKED))
        .mapToObj(
            sheet ->
                new Link(
                    sheets == 1 ? kind.name() : kind.name() + " " + sheet,
                    (sheet == 1 ? drawn : drawn.with("sheet", Integer.toString(sheet)))
                        .at(path + kind.ending())))
        .toList();
  }

  private static String size(Medium medium) {
    PngSize usual = PngSize.usual(medium);
    String pixels = Integer.toString(usual.pixelWidth());
    return medium.printed()
        ? say(
            "page.size-in-print",
            Map.of(
                "millimetres",
                String.format(Locale.ROOT, "%.0f", medium.widthMillimetres()),
                "pixels",
                pixels,
                "dots",
                medium.usualDotsPerInch()))
        : say("page.size-on-screen", Map.of("pixels", pixels));
  }

  /** Names and values that the form sends along unseen. */
  public List<Map.Entry<String, String>> hidden() {
    return rest.parameters().entrySet().stream()
        .flatMap(e -> e.getValue().stream().map(value -> Map.entry(e.getKey(), value)))
        .toList();
  }
}
