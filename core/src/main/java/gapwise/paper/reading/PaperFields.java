package gapwise.paper.reading;

import gapwise.budget.Work;
import gapwise.paper.Page;
import gapwise.paper.Page.Lettering;
import gapwise.paper.PageReading;
import gapwise.paper.Paper;
import gapwise.paper.Place;
import gapwise.paper.Refused;
import gapwise.paper.table.Grid;
import gapwise.paper.table.Tables;
import gapwise.untidy.SetApart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a paper holds for the template, before anything is accepted.
 *
 * @param fields taken, asked or left, those of tables first
 * @param grids the tables as they were understood
 * @param apart texts of tables that are no values, with the reason
 * @param notes what a person should know: pages that could not be read, scans, raised marks
 */
public record PaperFields(
    List<PaperField> fields, List<Grid> grids, List<SetApart> apart, List<String> notes) {
  /** Papers are shorter; a book is read chapter by chapter. */
  private static final int MOST_PAGES = 60;

  public PaperFields {
    fields = List.copyOf(fields);
    grids = List.copyOf(grids);
    apart = List.copyOf(apart);
    notes = List.copyOf(notes);
  }

  /** Reads the tables and the running text of a paper. */
  public static PaperFields of(Paper paper) {
    List<String> notes = new ArrayList<>();
    List<Page> pages = new ArrayList<>();
    int last = Math.min(paper.pages(), MOST_PAGES);
    for (int number = 1; number <= last; number++) {
      Work.check();
      PageReading reading = paper.page(number);
      if (reading instanceof Page page) {
        pages.add(page);
        notes.addAll(page.notes());
      } else {
        notes.add("Page " + number + " was not read. " + ((Refused) reading).sentence());
      }
    }
    if (paper.pages() > last) {
      notes.add(
          "Only the first "
              + last
              + " of "
              + paper.pages()
              + " pages were read. Save the pages that matter as a file of their own.");
    }
    return of(pages, notes);
  }

  /** Reads pages that follow one another. */
  public static PaperFields of(List<Page> pages, List<String> told) {
    List<Grid> grids = Tables.across(pages);
    TableFields tables = TableFields.of(grids, pages);
    List<PaperField> fields = new ArrayList<>(Contradictions.asked(tables.fields()));
    List<String> notes = new ArrayList<>(told);
    notes.addAll(tables.notes());
    fields.addAll(TextFields.of(pages, grids, fields));
    List<PaperField> doubted = fields.stream().map(field -> doubted(field, pages)).toList();
    return new PaperFields(doubted, grids, tables.apart(), notes);
  }

  /** Nothing is taken from a page whose letters may be other than they seem. */
  private static PaperField doubted(PaperField found, List<Page> pages) {
    Optional<Place> place = found.place();
    if (place.isEmpty()) {
      return found;
    }
    boolean doubtful =
        pages.stream()
            .filter(page -> page.number() == place.get().page())
            .anyMatch(page -> page.lettering() == Lettering.GUESSED || page.damaged());
    if (doubtful) {
      return found.askedBecause(
          "The letters of this page were guessed from a picture, or part of the page is damaged."
              + " Compare the value with the picture of the page.");
    }
    return place.get().words().contains("\uFFFD")
        ? found.askedBecause(
            "The file does not tell what some letters here mean. Read them from the picture of"
                + " the page.")
        : found;
  }
}
