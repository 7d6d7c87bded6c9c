package gapwise.server.page.untidy;

import gapwise.server.page.Site;
import gapwise.server.page.part.FoundLine;
import java.util.List;

/**
 * What is read in a sheet, before anything is accepted.
 *
 * @param site the frame of the page
 * @param href where the form is sent
 * @param file name of the file
 * @param problems what of the file cannot be read
 * @param tables what each column is taken to hold, by table
 * @param readWith mark of what the columns were taken to hold for this reading
 * @param counts how many values are clear, asked and left
 * @param clear the first of those that are clear
 * @param asked those that a person must decide, under kinds of doubt
 * @param apart the first of what was set apart, with why
 * @param notes comments, colours and other things seen
 */
public record UntidyView(
    Site site,
    String href,
    String file,
    List<String> problems,
    List<MappingForm> tables,
    String readWith,
    Counts counts,
    List<FoundLine> clear,
    List<FoundLine.Kind> asked,
    List<Apart> apart,
    List<String> notes) {
  public UntidyView {
    problems = List.copyOf(problems);
    tables = List.copyOf(tables);
    clear = List.copyOf(clear);
    asked = List.copyOf(asked);
    apart = List.copyOf(apart);
    notes = List.copyOf(notes);
  }

  /** How many values are clear, asked and left. */
  public record Counts(int clear, int asked, int apart) {}

  /** Words that are no value: the cell, the words, why. */
  public record Apart(String cell, String words, String why) {}
}
