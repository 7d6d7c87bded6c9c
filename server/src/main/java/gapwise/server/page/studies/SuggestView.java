package gapwise.server.page.studies;

import gapwise.server.page.part.FilterForm;
import java.util.List;
import java.util.Optional;

/** What is said below the search box while someone types. */
public sealed interface SuggestView {
  /** Nothing is typed, so nothing is said. */
  record Silent() implements SuggestView {}

  /** Nothing is looked for, and why. */
  record Refused(String why) implements SuggestView {}

  /**
   * What was understood.
   *
   * @param parts what was understood as filters
   * @param text what will be looked for as words; may be empty
   * @param aside joining words that say nothing alone; may be empty
   * @param found how much Enter would find, in words
   * @param href address of what was found
   * @param spelling another spelling with its address
   */
  record Understood(
      List<Part> parts,
      String text,
      String aside,
      String found,
      String href,
      Optional<FilterForm.On> spelling)
      implements SuggestView {
    public Understood {
      parts = List.copyOf(parts);
    }
  }

  /** A part of what was typed with its meaning. */
  record Part(String typed, String meaning) {}
}
