package gapwise.untidy;

import gapwise.printed.Doubt;
import gapwise.printed.Proposed;
import java.util.regex.Pattern;

/** What is seen of a cell beside its text makes a question of its value; it is never data. */
final class Remarks {
  /** A comment that only says where the number stands raises no question. */
  private static final Pattern PLACE =
      Pattern.compile(
          "(?i)\\s*(?:see |from |in )?(?:(?:p|pp|page|table|tab|fig|figure|text|abstract|methods|results|supplement)\\b\\.?\\s*[a-z]?\\d*[a-z]?[,;.: ]*)+|(?i)\\s*(?:checked|ok|verified|confirmed)\\b[^?\\d]*");

  private Remarks() {}

  static Proposed of(GridCell cell, Proposed value) {
    Proposed told = value;
    if (cell.comment().isPresent() && !PLACE.matcher(cell.comment().get()).matches()) {
      told =
          told.askedBecause(
              Doubt.REMARK,
              "The cell has the comment '" + cell.comment().get() + "'. Say which value counts.");
    }
    if (cell.struck()) {
      told = told.askedBecause(Doubt.REMARK, "The cell is struck through. Say whether it counts.");
    }
    if (cell.hidden()) {
      told =
          told.askedBecause(
              Doubt.REMARK, "The cell is hidden in the sheet. Say whether it counts.");
    }
    return told;
  }
}
