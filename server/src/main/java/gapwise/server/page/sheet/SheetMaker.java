package gapwise.server.page.sheet;

import gapwise.answer.Edition;
import gapwise.decision.choice.CostAsked;
import gapwise.decision.choice.CostedTable;
import gapwise.decision.choice.WeighedTable;
import gapwise.decision.choice.WeighingAsked;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.option.OptionTable;
import gapwise.decision.sheet.Beside;
import gapwise.decision.sheet.Sheet;
import gapwise.decision.sheet.Since;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.server.address.PagePaths;
import gapwise.server.address.SheetAddress;
import gapwise.server.home.Evidence;
import gapwise.server.home.Pieces;
import gapwise.server.home.RememberedOptions;
import gapwise.server.report.Prepared;
import gapwise.server.report.SheetDocument;
import java.time.Clock;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Makes the sheet that an address asks for, from one state of the evidence base.
 *
 * @param evidence the state
 * @param edition the same in words
 * @param clock says the day
 */
record SheetMaker(Evidence evidence, Edition edition, Clock clock) {
  /** Refuses an address of which no sheet can be made, before anything is worked out. */
  void check(SheetAddress asked) {
    asked.made();
    asked.searched(LocalDate.now(clock));
    asked.cost();
    asked.weighing();
    if (Sheet.methods(asked.question()).size() > Sheet.MOST) {
      Problems problems = new Problems();
      problems.add(
          "method",
          "too-many-methods",
          "a sheet has room for five methods beside amputation; name them by 'method'");
      throw new WrongInputException(problems.list());
    }
  }

  /** What the sheet stands on. */
  Pieces pieces(SheetAddress asked) {
    OptionQuestion question = asked.question();
    Set<Aspect> drawn = EnumSet.noneOf(Aspect.class);
    asked.weighing().map(WeighingAsked::aspects).ifPresent(drawn::addAll);
    asked.cost().filter(SheetMaker::isWhole).ifPresent(one -> drawn.addAll(CostedTable.needed()));
    Pieces pieces =
        Pieces.ofCompared(evidence.options(), question)
            .withAverages(evidence.averages(), question, drawn);
    OptionalLong made = earlier(asked);
    return made.isEmpty()
        ? pieces
        : pieces
            .and(
                () -> evidence.hasEarlier(made.getAsLong()),
                () -> evidence.earlier(made.getAsLong()))
            .and(
                () -> evidence.earlier(made.getAsLong()).options().hasTable(question),
                () -> evidence.earlier(made.getAsLong()).options().table(question));
  }

  /** What is missing of prices is named on the sheet, and nothing is drawn for it. */
  private static boolean isWhole(CostAsked asked) {
    return CostedTable.missing(asked).isEmpty();
  }

  /** The change that the print was made from, where the evidence has gone on since. */
  private OptionalLong earlier(SheetAddress asked) {
    OptionalLong made = asked.made();
    return made.isPresent() && made.getAsLong() < evidence.change() ? made : OptionalLong.empty();
  }

  /**
   * The sheet.
   *
   * @param server where it is reached, such as "http://localhost:7180"
   */
  SheetDocument document(SheetAddress asked, String server) {
    OptionQuestion question = asked.question();
    RememberedOptions.Compared compared = evidence.options().compared(question);
    OptionTable table = evidence.options().table(question);
    Sheet sheet =
        Sheet.of(
            table,
            new Beside(
                compared.within(),
                compared.apart(),
                asked.weighing().map(one -> WeighedTable.of(table, one, evidence.averages())),
                asked.cost().map(one -> CostedTable.of(table, one, evidence.averages()))));
    String here =
        asked.sheet().with(SheetAddress.MADE, Long.toString(evidence.change())).at(PagePaths.SHEET);
    LocalDate today = LocalDate.now(clock);
    return new SheetDocument(
        sheet,
        new Prepared(edition, server + here, today, asked.searched(today), evidence.hasInvented()),
        asked.made(),
        since(sheet, question, earlier(asked)));
  }

  private Optional<Since> since(Sheet now, OptionQuestion question, OptionalLong earlier) {
    if (earlier.isEmpty()) {
      return Optional.empty();
    }
    long made = earlier.getAsLong();
    Sheet then = Sheet.numbersOf(evidence.earlier(made).options().table(question));
    return Optional.of(Since.between(then, now, evidence.studies(), made));
  }
}
