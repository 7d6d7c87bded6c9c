package gapwise.server.report;

import gapwise.decision.sheet.PatientPage;
import gapwise.decision.sheet.PatientRow;
import gapwise.decision.sheet.ShareCell;
import gapwise.decision.sheet.TeamPage;
import gapwise.evidence.vocabulary.Method;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableCell;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;

/**
 * The sheet as a text document (Office Open XML, ECMA-376), with the words of the page, tables with
 * head rows and drawings with alternative text, for a clinic to go on from.
 */
public final class SheetWord {
  private final WordWriter word = new WordWriter("Ways to treat a gap in the bone");
  private final SheetDocument sheet;

  private SheetWord(SheetDocument sheet) {
    this.sheet = sheet;
  }

  /** The document. */
  public static byte[] of(SheetDocument sheet) {
    return new SheetWord(sheet).written();
  }

  private byte[] written() {
    patient(sheet.sheet().patient());
    team(sheet.sheet().team());
    return word.bytes();
  }

  private void patient(PatientPage page) {
    if (sheet.prepared().invented()) {
      word.say("Invented data, no real patients.", WordWriter.PLAIN);
    }
    word.head(page.question(), "Heading1");
    word.say("Clinic to call: ______________________   Date: ____________", WordWriter.PLAIN);
    page.bone().ifPresent(bone -> WordWriter.picture(word.paragraph(), bone, page.question()));
    word.say(String.join(". ", page.situation()) + ".", WordWriter.PLAIN);
    word.say(String.join(" ", page.choice()), WordWriter.PLAIN);
    word.say(page.followed(), WordWriter.PLAIN);
    methods(page);
    word.say(
        SheetPictures.keys().stream()
            .map(SheetPictures.Key::words)
            .collect(Collectors.joining("; ", "Of 100 marks: ", "; red bar: the number itself.")),
        WordWriter.SMALL);
    word.head("What nobody knows", "Heading2");
    word.say(String.join(" ", page.nobody()), WordWriter.PLAIN);
    page.rows()
        .forEach(
            row ->
                word.say(
                    row.plain().name() + ": not known is " + row.plain().unknown() + ".",
                    WordWriter.PLAIN));
    word.head("What matters to you", "Heading2");
    page.wishes().forEach(wish -> word.say("\u25a1 " + wish, WordWriter.PLAIN));
    word.head("What to ask us", "Heading2");
    page.questions().forEach(question -> word.say(question, WordWriter.PLAIN));
    word.say(String.join(" ", page.caution()), WordWriter.PLAIN);
  }

  private void methods(PatientPage page) {
    List<String> heads = new ArrayList<>(List.of("The way", "What it takes, in months"));
    page.heads().forEach(one -> heads.add(one + ", of 100"));
    XWPFTable table = word.table(page.rows().size(), heads);
    for (int i = 0; i < page.rows().size(); i++) {
      PatientRow row = page.rows().get(i);
      XWPFTableRow line = table.getRow(i + 1);
      WordWriter.say(
          line.getCell(0),
          row.plain().name() + ". " + row.plain().is(),
          "Asks of you: " + row.plain().asks(),
          "May go wrong: " + row.plain().wrong());
      WordWriter.picture(
          line.getCell(1).getParagraphs().get(0), SheetPictures.strip(row), row.stripWords());
      WordWriter.add(line.getCell(1), row.frame(), row.walking());
      for (int j = 0; j < row.shares().size(); j++) {
        share(line.getCell(j + 2), row.shares().get(j));
      }
    }
  }

  private void share(XWPFTableCell cell, ShareCell share) {
    if (share.array().isPresent()) {
      WordWriter.picture(
          cell.getParagraphs().get(0), SheetPictures.array(share), share.alternative());
    }
    WordWriter.add(cell, share.sentence());
    if (!share.range().isEmpty()) {
      WordWriter.add(cell, share.range());
    }
    share.level().ifPresent(level -> WordWriter.add(cell, "How sure: " + level.label()));
  }

  private void team(TeamPage page) {
    XWPFParagraph head = word.head("For the team: what stands behind the numbers", "Heading1");
    head.setPageBreak(true);
    word.say(
        sheet.sheet().patient().question()
            + " "
            + (page.person().isEmpty() ? "" : String.join(", ", page.person()) + ". ")
            + page.followed(),
        WordWriter.PLAIN);
    word.say(
        "Separate groups of patients, no comparison. The order of the columns is no ranking.",
        WordWriter.PLAIN);
    List<String> heads = new ArrayList<>(List.of("Outcome"));
    page.methods().stream().map(Method::shortLabel).forEach(heads::add);
    XWPFTable table = word.table(page.lines().size(), heads);
    for (int i = 0; i < page.lines().size(); i++) {
      TeamPage.Line line = page.lines().get(i);
      WordWriter.say(table.getRow(i + 1).getCell(0), line.aspect(), line.outcome());
      for (int j = 0; j < line.cells().size(); j++) {
        WordWriter.say(table.getRow(i + 1).getCell(j + 1), lines(line.cells().get(j)));
      }
    }
    if (!page.notAsked().isEmpty()) {
      word.say(
          "We did not look for: " + String.join(", ", page.notAsked()) + ".", WordWriter.PLAIN);
    }
    answers(
        "Compared within studies, the first less the second", page.answers().within().sentences());
    answers("Difference that would change the choice", page.answers().mattering().sentences());
    answers("Weighed by wishes", page.answers().weighed());
    answers("Costs", page.answers().costed());
    page.settled().forEach(one -> word.say(one, WordWriter.PLAIN));
    word.say(
        page.sources().stream()
            .map(TeamPage.Source::label)
            .collect(Collectors.joining(", ", "Studies behind the numbers: ", ".")),
        WordWriter.PLAIN);
    word.say(page.retracted(), WordWriter.PLAIN);
    word.say(
        "Last search of the literature: "
            + sheet.prepared().searched().map(LocalDate::toString).orElse("____________"),
        WordWriter.PLAIN);
    word.say(
        "Made on " + sheet.prepared().on() + " from " + sheet.prepared().edition().words() + ".",
        WordWriter.PLAIN);
    word.say(sheet.prepared().address(), WordWriter.PLAIN);
    word.say("Paid for by (the clinic fills in): ______________________", WordWriter.PLAIN);
  }

  private void answers(String head, List<String> sentences) {
    word.say(head + ": " + String.join(" ", sentences), WordWriter.PLAIN);
  }

  private static String[] lines(TeamPage.TeamCell cell) {
    return List.of(cell.value(), cell.counted(), cell.newCentre(), cell.fit(), cell.certainty())
        .stream()
        .filter(line -> !line.isEmpty())
        .toArray(String[]::new);
  }
}
