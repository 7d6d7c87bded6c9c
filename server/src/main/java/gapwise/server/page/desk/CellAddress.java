package gapwise.server.page.desk;

import static gapwise.sentence.Sentences.say;

import gapwise.desk.Draft;
import gapwise.desk.DraftRow;
import gapwise.evidence.Reading;
import gapwise.exchange.Template;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import io.javalin.http.NotFoundResponse;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A cell of a draft as a form names it: {@code c.12.events}.
 *
 * @param row number of its row
 * @param column its column
 */
record CellAddress(int row, String column) {
  /** More than a cell of any paper holds; a workbook's cell takes 32,767 letters. */
  private static final int MOST_LETTERS = 20_000;

  private static final Pattern NAME = Pattern.compile("c\\.(\\d{1,7})\\.([a-z0-9_]{1,80})");
  private static final Pattern NUMBER = Pattern.compile("\\d{1,7}");

  static CellAddress of(String name) {
    Matcher parts = NAME.matcher(name);
    if (!parts.matches()) {
      throw new NotFoundResponse(say("desk.no-cell"));
    }
    return new CellAddress(Integer.parseInt(parts.group(1)), parts.group(2));
  }

  /** A number as a form sends it; empty for anything else. */
  static Optional<Integer> number(String text) {
    return NUMBER.matcher(text).matches() ? Optional.of(Integer.valueOf(text)) : Optional.empty();
  }

  /** The draft with this text in the cell; the same draft where it stands there already. */
  Draft typed(Draft draft, String text) {
    return typed(draft, text, Optional.empty());
  }

  /**
   * The same with the place where it was read.
   *
   * @param reading empty for what was typed
   */
  Draft typed(Draft draft, String text, Optional<Reading> reading) {
    DraftRow found = in(draft);
    if (text.length() > MOST_LETTERS) {
      Problems problems = new Problems();
      problems.add(column, "text-too-long", say("desk.too-long", Map.of("letters", text.length())));
      throw new WrongInputException(problems.list());
    }
    boolean same = found.text(column).equals(text.strip()) && reading.isEmpty();
    return same ? draft : draft.withCell(row, column, text, reading);
  }

  /** The row of the cell, which has such a cell to be typed. */
  DraftRow in(Draft draft) {
    DraftRow found = draft.row(row).orElseThrow(DraftPage::goneRow);
    boolean known =
        Template.column(found.sheet(), column).isPresent()
            && !column.equals(Template.STUDY)
            && !column.equals(Template.READINGS);
    if (!known) {
      throw new NotFoundResponse(say("desk.no-cell"));
    }
    return found;
  }
}
