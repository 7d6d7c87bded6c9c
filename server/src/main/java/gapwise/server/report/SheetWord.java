package gapwise.server.report;

import gapwise.decision.sheet.PatientPage;
import gapwise.decision.sheet.PatientRow;
import gapwise.decision.sheet.ShareCell;
import gapwise.decision.sheet.TeamPage;
import gapwise.evidence.vocabulary.Method;
import gapwise.figure.drawing.Picture;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.util.Units;
import org.apache.poi.xwpf.usermodel.ParagraphAlignment;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFPicture;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;

/**
 * The sheet as a text document (Office Open XML, ECMA-376), with the words of the page, tables with
 * head rows and drawings with alternative text, for a clinic to go on from.
 */
public final class SheetWord {
  private static final double PIXELS_PER_POINT = 96.0 / 72;
  private static final int SMALL = 8;
  private static final int PLAIN = 10;

  private final XWPFDocument document = new XWPFDocument();
  private final SheetDocument sheet;

  private SheetWord(SheetDocument sheet) {
    this.sheet = sheet;
  }

  /** The document. */
  public static byte[] of(SheetDocument sheet) {
    return new SheetWord(sheet).bytes();
  }

  private byte[] bytes() {
    SheetStyles.addTo(document);
    document.getProperties().getCoreProperties().setTitle("Ways to treat a gap in the bone");
    patient(sheet.sheet().patient());
    team(sheet.sheet().team());
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (document) {
      document.write(bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("the document could not be written to memory", e);
    }
    return bytes.toByteArray();
  }

  private void patient(PatientPage page) {
    if (sheet.prepared().invented()) {
      say("Invented data, no real patients.", PLAIN);
    }
    head(page.question(), "Heading1");
    say("Clinic to call: ______________________   Date: ____________", PLAIN);
    page.bone().ifPresent(bone -> picture(document.createParagraph(), bone, page.question()));
    say(String.join(". ", page.situation()) + ".", PLAIN);
    say(String.join(" ", page.choice()), PLAIN);
    say(page.followed(), PLAIN);
    methods(page);
    say(
        SheetPictures.keys().stream()
            .map(SheetPictures.Key::words)
            .collect(Collectors.joining("; ", "Of 100 marks: ", "; red bar: the number itself.")),
        SMALL);
    head("What nobody knows", "Heading2");
    say(String.join(" ", page.nobody()), PLAIN);
    page.rows()
        .forEach(
            row ->
                say(row.plain().name() + ": not known is " + row.plain().unknown() + ".", PLAIN));
    head("What matters to you", "Heading2");
    page.wishes().forEach(wish -> say("\u25a1 " + wish, PLAIN));
    head("What to ask us", "Heading2");
    page.questions().forEach(question -> say(question, PLAIN));
    say(String.join(" ", page.caution()), PLAIN);
  }

  private void methods(PatientPage page) {
    List<String> heads = new ArrayList<>(List.of("The way", "What it takes, in months"));
    page.heads().forEach(one -> heads.add(one + ", of 100"));
    XWPFTable table = table(page.rows().size(), heads);
    for (int i = 0; i < page.rows().size(); i++) {
      PatientRow row = page.rows().get(i);
      XWPFTableRow line = table.getRow(i + 1);
      say(
          line.getCell(0),
          row.plain().name() + ". " + row.plain().is(),
          "Asks of you: " + row.plain().asks(),
          "May go wrong: " + row.plain().wrong());
      picture(line.getCell(1).getParagraphs().get(0), SheetPictures.strip(row), row.stripWords());
      add(line.getCell(1), row.frame(), row.walking());
      for (int j = 0; j < row.shares().size(); j++) {
        share(line.getCell(j + 2), row.shares().get(j));
      }
    }
  }

  private void share(XWPFTableCell cell, ShareCell share) {
    if (share.array().isPresent()) {
      picture(cell.getParagraphs().get(0), SheetPictures.array(share), share.alternative());
    }
    add(cell, share.sentence());
    if (!share.range().isEmpty()) {
      add(cell, share.range());
    }
    share.level().ifPresent(level -> add(cell, "How sure: " + level.label()));
  }

  private void team(TeamPage page) {
    XWPFParagraph head = head("For the team: what stands behind the numbers", "Heading1");
    head.setPageBreak(true);
    say(sheet.sheet().patient().question() + " " + page.followed(), PLAIN);
    say(
        "Separate groups of patients, no comparison. The order of the columns is no ranking.",
        PLAIN);
    List<String> heads = new ArrayList<>(List.of("Outcome"));
    page.methods().stream().map(Method::shortLabel).forEach(heads::add);
    XWPFTable table = table(page.lines().size(), heads);
    for (int i = 0; i < page.lines().size(); i++) {
      TeamPage.Line line = page.lines().get(i);
      say(table.getRow(i + 1).getCell(0), line.aspect(), line.outcome());
      for (int j = 0; j < line.cells().size(); j++) {
        say(table.getRow(i + 1).getCell(j + 1), lines(line.cells().get(j)));
      }
    }
    if (!page.notAsked().isEmpty()) {
      say("We did not look for: " + String.join(", ", page.notAsked()) + ".", PLAIN);
    }
    answers("Compared within studies, the first less the second", page.answers().within().sentences());
    answers("Difference that would change the choice", page.answers().mattering().sentences());
    answers("Weighed by wishes", page.answers().weighed());
    answers("Costs", page.answers().costed());
    page.settled().forEach(one -> say(one, PLAIN));
    say(
        page.sources().stream()
            .map(TeamPage.Source::label)
            .collect(Collectors.joining(", ", "Studies behind the numbers: ", ".")),
        PLAIN);
    say(page.retracted(), PLAIN);
    say(
        "Last search of the literature: "
            + sheet.prepared().searched().map(LocalDate::toString).orElse("____________"),
        PLAIN);
    say(
        "Made on " + sheet.prepared().on() + " from " + sheet.prepared().edition().words() + ".",
        PLAIN);
    say(sheet.prepared().address(), PLAIN);
    say("Paid for by (the clinic fills in): ______________________", PLAIN);
  }

  private void answers(String head, List<String> sentences) {
    say(head + ": " + String.join(" ", sentences), PLAIN);
  }

  private static String[] lines(TeamPage.TeamCell cell) {
    return List.of(cell.value(), cell.counted(), cell.newCentre(), cell.fit(), cell.certainty())
        .stream()
        .filter(line -> !line.isEmpty())
        .toArray(String[]::new);
  }

  private XWPFParagraph head(String words, String style) {
    XWPFParagraph paragraph = document.createParagraph();
    paragraph.setStyle(style);
    paragraph.createRun().setText(words);
    return paragraph;
  }

  private void say(String words, int size) {
    write(document.createParagraph(), words, size);
  }

  private static void say(XWPFTableCell cell, String... lines) {
    write(cell.getParagraphs().get(0), lines[0], SMALL);
    for (int i = 1; i < lines.length; i++) {
      add(cell, lines[i]);
    }
  }

  private static void add(XWPFTableCell cell, String... lines) {
    for (String line : lines) {
      write(cell.addParagraph(), line, SMALL);
    }
  }

  private static void write(XWPFParagraph paragraph, String words, int size) {
    paragraph.setAlignment(ParagraphAlignment.LEFT);
    paragraph.setSpacingAfter(40);
    XWPFRun run = paragraph.createRun();
    run.setFontFamily("Arial");
    run.setFontSize(size);
    run.setText(words);
  }

  private XWPFTable table(int lines, List<String> heads) {
    XWPFTable table = document.createTable(lines + 1, heads.size());
    table.setWidth("100%");
    XWPFTableRow head = table.getRow(0);
    head.setRepeatHeader(true);
    for (int i = 0; i < heads.size(); i++) {
      XWPFRun run = head.getCell(i).getParagraphs().get(0).createRun();
      run.setFontFamily("Arial");
      run.setFontSize(SMALL);
      run.setBold(true);
      run.setText(heads.get(i));
    }
    return table;
  }

  private static void picture(XWPFParagraph paragraph, Picture drawn, String alternative) {
    try {
      XWPFPicture picture =
          paragraph
              .createRun()
              .addPicture(
                  new ByteArrayInputStream(Drawn.of(drawn.svg()).png()),
                  org.apache.poi.common.usermodel.PictureType.PNG,
                  "drawing.png",
                  Units.toEMU(drawn.width() / PIXELS_PER_POINT),
                  Units.toEMU(drawn.height() / PIXELS_PER_POINT));
      picture.getCTPicture().getNvPicPr().getCNvPr().setDescr(alternative);
      paragraph
          .getRuns()
          .get(paragraph.getRuns().size() - 1)
          .getCTR()
          .getDrawingArray(0)
          .getInlineArray(0)
          .getDocPr()
          .setDescr(alternative);
    } catch (InvalidFormatException | IOException e) {
      throw new IllegalStateException("a drawing of ours cannot be put into a document", e);
    }
  }
}
