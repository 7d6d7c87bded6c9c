package gapwise.server.page.part;

import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import java.util.List;

/**
 * The words of one detail of the method, each to be taken alone.
 *
 * @param legend the detail
 * @param words its words with how many groups have each, as choices of an address
 */
public record ByDetail(String legend, List<Word> words) {
  /** One word, and the address of the question to its groups alone. */
  public record Word(String label, int groups, String href) {}

  /** Details of which more than one word is on record. */
  public static List<ByDetail> of(String path, FilterForm form) {
    return form.details().stream()
        .filter(detail -> detail.choices().size() > 1)
        .map(detail -> of(path, form.address(), detail))
        .toList();
  }

  /** Another word of the same detail is taken off, words of other details stay. */
  private static ByDetail of(String path, Address address, FilterForm.Group detail) {
    Address others = address;
    for (FilterForm.Choice choice : detail.choices()) {
      others = others.without(Filters.DETAIL, choice.value());
    }
    Address rest = others;
    return new ByDetail(
        detail.legend(),
        detail.choices().stream()
            .filter(choice -> !choice.chosen())
            .map(
                choice ->
                    new Word(
                        choice.label(),
                        choice.count(),
                        rest.and(Filters.DETAIL, choice.value()).at(path)))
            .toList());
  }
}
