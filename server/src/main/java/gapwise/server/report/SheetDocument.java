package gapwise.server.report;

import gapwise.decision.sheet.Sheet;
import gapwise.decision.sheet.Since;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What page, PDF and text document show alike.
 *
 * @param sheet both pages
 * @param prepared how it was made
 * @param made number of the change from which it was printed before; empty where it is new
 * @param since what has changed since; empty where it is new or the number is of no change
 */
public record SheetDocument(
    Sheet sheet, Prepared prepared, OptionalLong made, Optional<Since> since) {
  public SheetDocument {
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(prepared, "prepared");
    Objects.requireNonNull(made, "made");
    Objects.requireNonNull(since, "since");
  }
}
