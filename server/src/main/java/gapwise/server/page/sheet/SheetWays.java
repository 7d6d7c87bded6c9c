package gapwise.server.page.sheet;

import gapwise.server.address.Address;
import gapwise.server.address.PagePaths;
import gapwise.server.address.SheetAddress;
import java.util.List;

/**
 * Where a sheet is taken along, and how it is changed.
 *
 * @param pdf on A4
 * @param letter on Letter
 * @param word as a text document
 * @param table the table of its situation, where other methods are chosen
 * @param weighing where it is weighed, to be put onto the sheet from there
 * @param cost where it is reckoned in costs, to be put onto the sheet from there
 * @param searched the day of the last search as the address has it
 * @param kept what else the address has, which goes along when that day is entered
 */
public record SheetWays(
    String pdf,
    String letter,
    String word,
    String table,
    String weighing,
    String cost,
    String searched,
    List<Kept> kept) {
  public SheetWays {
    kept = List.copyOf(kept);
  }

  /** A value of the address. */
  public record Kept(String name, String value) {}

  static SheetWays of(SheetAddress asked) {
    Address whole = asked.whole().without(List.of(SheetAddress.PAPER));
    return new SheetWays(
        whole.at(PagePaths.SHEET_PDF),
        whole.with(SheetAddress.PAPER, SheetAddress.LETTER).at(PagePaths.SHEET_PDF),
        whole.at(PagePaths.SHEET_WORD),
        asked.situation().at(PagePaths.COMPARE),
        asked.sheet().at(PagePaths.COMPARE_WEIGHING),
        asked.sheet().at(PagePaths.COMPARE_COST),
        asked.whole().first(SheetAddress.SEARCHED),
        kept(asked.sheet().without(List.of(SheetAddress.SEARCHED))));
  }

  static List<Kept> kept(Address address) {
    return address.parameters().entrySet().stream()
        .flatMap(one -> one.getValue().stream().map(value -> new Kept(one.getKey(), value)))
        .toList();
  }
}
