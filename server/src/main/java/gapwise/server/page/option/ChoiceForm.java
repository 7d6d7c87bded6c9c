package gapwise.server.page.option;

import gapwise.decision.choice.Unknowns;
import gapwise.server.address.Address;
import gapwise.server.address.ChoiceAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.address.SheetAddress;
import java.util.Arrays;
import java.util.List;

/**
 * What forms that take a table further have in common.
 *
 * @param situation the situation in words
 * @param table address of the table
 * @param kept the situation, which goes along unseen
 * @param unknowns what can become of what is not known
 * @param seed where draws begin, as the address has it
 * @param here the address with all that is entered
 */
public record ChoiceForm(
    String situation,
    String table,
    List<SituationForm.Kept> kept,
    List<SituationForm.Choice> unknowns,
    String seed,
    Address here) {

  /**
   * @param situation the address of the situation alone
   */
  static ChoiceForm of(String words, Address situation, Address address) {
    String chosen = address.first(ChoiceAddress.UNKNOWN);
    return new ChoiceForm(
        words,
        situation.at(PagePaths.COMPARE),
        situation.parameters().entrySet().stream()
            .flatMap(
                one ->
                    one.getValue().stream()
                        .map(value -> new SituationForm.Kept(one.getKey(), value)))
            .toList(),
        Arrays.stream(Unknowns.values())
            .map(
                one -> new SituationForm.Choice(one.code(), one.label(), one.code().equals(chosen)))
            .toList(),
        address.first(ChoiceAddress.SEED),
        address);
  }

  /**
   * Address of the sheet with what is shown here.
   *
   * @param what of the table taken further, as {@link SheetAddress#WITH} has it
   */
  public String sheet(String what) {
    return here.and(SheetAddress.WITH, what)
        .without(List.of(ChoiceAddress.ASKED))
        .at(PagePaths.SHEET);
  }

  /** What the address has under a name. */
  public String value(String name) {
    return here.first(name);
  }
}
