package gapwise.server.page.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import gapwise.answer.Edition;
import gapwise.decision.certainty.Level;
import gapwise.decision.sheet.Beside;
import gapwise.decision.sheet.Listed;
import gapwise.decision.sheet.PatientPage;
import gapwise.decision.sheet.PatientRow;
import gapwise.decision.sheet.ShareCell;
import gapwise.decision.sheet.Sheet;
import gapwise.decision.sheet.TeamAnswers;
import gapwise.decision.sheet.TeamPage;
import gapwise.figure.array.HundredArray;
import gapwise.figure.array.StageStrip;
import gapwise.figure.value.Estimate;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import gapwise.server.page.Assets;
import gapwise.server.page.Templates;
import gapwise.server.report.Prepared;
import gapwise.server.report.SheetDocument;
import gapwise.server.report.SheetPdf;
import gapwise.server.testing.Invented;
import gapwise.server.testing.PageStates;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sheet of six methods of which every cell has a number in its longest words. */
class FullSheetTest {
  private static final ShareCell SHARE =
      new ShareCell(
          "Reported: 113 of 114 had germs in the leg; this says little about you.",
          "fewer than 1 to over 99 fits; 93 did not.",
          Optional.of(new HundredArray(0, 100, 0.5)),
          Optional.of(Level.VERY_LOW),
          "three numbers");

  private static final TeamPage.TeamCell CELL =
      new TeamPage.TeamCell(
          "52.5 (45.7 to 59.3)",
          true,
          "134 of 154, 9 groups of 8 studies",
          "centre under 0.1 to 10",
          "fit 24/26/25/25",
          "very low BBPPFFU *");

  /** As many of each, and as long, as the page for the team tells at most. */
  private static final TeamAnswers ANSWERS =
      new TeamAnswers(
          new Listed(
              List.of(),
              Collections.nCopies(
                  8,
                  "Another, unplanned operation, Shortening, lengthening less Induced membrane:"
                      + " +12.5 of 100 (-12.5 to +22.5), 12 studies, very low BBPPFFU."),
              102,
              List.of("12 further comparisons cannot be told in numbers.")),
          new Listed(
              List.of(
                  "Named before the sheet was made: Bone joined 10 of 100, Infection afterwards 5"
                      + " of 100, Time to full weight 2 months."),
              Collections.nCopies(
                  8,
                  "Another, unplanned operation, separate groups and no comparison: By more than 10"
                      + " of 100: Shortening, lengthening higher in 32 of 100, Induced membrane"
                      + " higher in 23 of 100, neither in 45 of 100."),
              56,
              List.of()),
          List.of(
              "Wishes: in order of importance Later amputation, Infection afterwards; Infection"
                  + " afterwards at least a fifth of the decision.",
              "First, of 100 ways of weighing drawn from those that fit (to within 1): "
                  + "Induced membrane 23, ".repeat(6)
                  + "Separate groups, no comparison, and none is recommended.",
              "Left out for want of numbers or a price: Primary amputation."),
          List.of(
              "Horizon 20 years; costs discounted by 3 % a year, effects by 3 %.",
              "In XTS of 2024 for one patient, with prices that the reader entered, mean cost and"
                  + " years healed with the limits of 95 of 100 draws: "
                  + "Induced membrane 123,456 (101,234 to 143,210) and 12.3 (10.2 to 14.5), "
                      .repeat(6)
                  + "Separate groups, no comparison.",
              "Left out for want of numbers or a price: Primary amputation."));

  @TempDir private Path folder;

  private static PatientRow full(PatientRow row) {
    Optional<Estimate> months = Optional.of(Estimate.of(12, 10, 15));
    return new PatientRow(
        row.method(),
        row.plain(),
        Collections.nCopies(row.shares().size(), SHARE),
        row.method().frame() ? "Perhaps 12 months in a frame, maybe quite different." : row.frame(),
        "Perhaps 12 months until full weight, maybe quite different.",
        new StageStrip(2, months, months, 18),
        "both");
  }

  /** A table of which one cell of so many has a number, and the others say why they have none. */
  private static TeamPage.TeamCell cell(int place, int each) {
    return place % each == 0
        ? CELL
        : new TeamPage.TeamCell("3 studies, none counted this", false, "", "", "", "");
  }

  private static TeamPage.Line line(TeamPage.Line line, TeamPage.TeamCell cell) {
    return new TeamPage.Line(
        line.aspect(), line.outcome(), Collections.nCopies(line.cells().size(), cell));
  }

  private static SheetDocument full(Sheet sheet, int each) {
    PatientPage page = sheet.patient();
    PatientPage patient =
        new PatientPage(
            page.question(),
            page.situation(),
            page.bone(),
            page.choice(),
            page.heads(),
            page.rows().stream().map(FullSheetTest::full).toList(),
            page.followed(),
            page.nobody(),
            page.wishes(),
            page.wishes().size(),
            page.questions(),
            page.caution());
    TeamPage team =
        new TeamPage(
            List.of("45 years old", "smokes", "has diabetes"),
            sheet.team().methods(),
            IntStream.range(0, sheet.team().lines().size())
                .mapToObj(place -> line(sheet.team().lines().get(place), cell(place, each)))
                .toList(),
            List.of(),
            sheet.team().followed(),
            List.of("Bone transport, Bone joined: settled by A. Reader on 2026-01-01. Why."),
            Collections.nCopies(400, new TeamPage.Source("invented-1", "Oarsworthe 2015")),
            "Retracted publications never count; 9 are left out for it here: "
                + "Oarsworthe 2015, ".repeat(4),
            ANSWERS);
    return new SheetDocument(
        new Sheet(sheet.table(), sheet.options(), patient, team),
        new Prepared(
            Edition.ofProgram("1.0"),
            // With every price of its costs.
            "http://localhost:7180/sheet?"
                + "method=induced-membrane&".repeat(12)
                + PageStates.PRICES,
            LocalDate.of(2026, 1, 1),
            Optional.of(LocalDate.of(2025, 12, 1)),
            true),
        OptionalLong.empty(),
        Optional.empty());
  }

  private static Sheet sheet(Home home, int named) {
    Address asked =
        new Address(
            Map.of(
                "from",
                List.of("6"),
                "to",
                List.of("6"),
                "bone",
                List.of("tibia"),
                "method",
                List.of(
                        "bone-transport",
                        "acute-shortening-lengthening",
                        "induced-membrane",
                        "vascularised-bone-flap",
                        "printed-scaffold")
                    .subList(0, named)));
    try (Hold hold = home.hold()) {
      return Sheet.of(
          hold.evidence().options().table(Sheet.asking(OptionAddress.question(asked))),
          new Beside(List.of(), List.of(), Optional.empty(), Optional.empty()));
    }
  }

  @Test
  void standsOnTwoPagesOfEitherPaper() throws IOException {
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      home.base().saveAll(Invented.studies().iterator(), "reviewer", "for a test", List.of());
      // Amputation comes to those that are named.
      for (int named = 1; named <= 5; named++) {
        Sheet sheet = sheet(home, named);
        // The emptier the table, the more is told beside it.
        for (int each : new int[] {1, 2, 4}) {
          standsOnTwoPages(full(sheet, each), named);
        }
      }
    }
  }

  private static void standsOnTwoPages(SheetDocument document, int named) throws IOException {
    for (SheetPaper.Size size : SheetPaper.Size.values()) {
      byte[] page =
          new Templates()
              .bytes("sheet/SheetPaper", SheetPaper.on(size, document, new Assets().sheetStyle()));
      try (PDDocument pdf = Loader.loadPDF(SheetPdf.of(page))) {
        assertEquals(
            2, pdf.getNumberOfPages(), size + " with " + named + " methods and amputation");
      }
    }
  }
}
