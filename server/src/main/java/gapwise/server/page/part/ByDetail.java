package gapwise.server.page.part;

import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.QuestionAddress;
import java.util.List;
import java.util.Optional;

/**
 * The words of one detail of the method, each to be taken alone, or all of them by themselves.
 *
 * @param legend the detail
 * @param words its words with how many groups have each, as choices of an address
 * @param split the address that splits the question by the detail; empty where several methods are
 *     asked for, or it is split by it already
 */
public record ByDetail(String legend, List<Word> words, Optional<String> split) {
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
    String code = detail.choices().get(0).value().split(":", 2)[0];
    return new ByDetail(
        detail.legend(),
        detail.choices().stream()
            .filter(choice -> !choice.chosen())
            .map(
                choice ->
                    new Word(
                        choice.label(),
                        choice.count(),
                        rest.without(List.of(QuestionAddress.SPLIT))
                            .and(Filters.DETAIL, choice.value())
                            .at(path)))
            .toList(),
        Optional.of(rest.with(QuestionAddress.SPLIT, code))
            .filter(all -> all.all("method").size() == 1)
            .filter(all -> !address.has(QuestionAddress.SPLIT, code))
            .map(all -> all.at(path)));
  }
}
