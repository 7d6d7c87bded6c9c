package gapwise.server.page.desk;

import gapwise.server.page.Site;
import gapwise.server.page.part.FoundLine;
import java.util.List;
import java.util.Map;

/**
 * A table before it is taken into a draft.
 *
 * @param site the frame of the page
 * @param draft name of the draft
 * @param study name of the study
 * @param source what the form must send again to mean the same table, by name
 * @param texts its cells as they were read
 * @param groups its groups
 * @param arms the draft's groups to choose from
 * @param clear what is clear
 * @param asked what a person must decide, under kinds of doubt
 * @param apart what was set apart, with why
 */
public record TableView(
    Site site,
    String draft,
    String study,
    Map<String, String> source,
    List<List<String>> texts,
    List<Group> groups,
    List<String> arms,
    List<FoundLine> clear,
    List<FoundLine.Kind> asked,
    List<Apart> apart) {
  public TableView {
    texts = texts.stream().map(List::copyOf).toList();
    groups = List.copyOf(groups);
    arms = List.copyOf(arms);
    clear = List.copyOf(clear);
    asked = List.copyOf(asked);
    apart = List.copyOf(apart);
  }

  /**
   * A group of the table.
   *
   * @param name as the reading calls it
   * @param label what the table calls it; empty text where it names none
   * @param meant the draft's group that it seems to be; empty text for none
   */
  public record Group(String name, String label, String meant) {}

  /** Words that are no value, with why. */
  public record Apart(String words, String why) {}
}
