package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.situation.SoftTissue;
import gapwise.decision.situation.Wish;
import gapwise.evidence.vocabulary.Coded;
import gapwise.server.address.Address;
import gapwise.server.address.Filters;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.PagePaths;
import gapwise.server.page.part.FilterForm.On;
import gapwise.server.page.part.Narrowing;
import gapwise.server.page.part.ReadStands;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What an address of options says, each with the address without it. */
final class Labels {
  private Labels() {}

  /** In the order of the form; an outcome goes along and is none of this page. */
  static List<On> of(Address address) {
    List<On> labels =
        new ArrayList<>(
            Narrowing.of(PagePaths.COMPARE, address, Filters.read(address).withOutcomes(Set.of()))
                .stream()
                .filter(one -> one.rest().all("outcome").equals(address.all("outcome")))
                .toList());
    ReadStands.taken(PagePaths.COMPARE, address).ifPresent(labels::add);
    for (String code : address.all(OptionAddress.SOFT_TISSUE)) {
      Coded.parse(SoftTissue.class, code)
          .ifPresent(one -> labels.add(on(one.label(), address, OptionAddress.SOFT_TISSUE)));
    }
    if (!address.first(OptionAddress.AGE).isEmpty()) {
      labels.add(
          on(
              say("decision.age", Map.of("age", address.first(OptionAddress.AGE))),
              address,
              OptionAddress.AGE));
    }
    if (address.has(OptionAddress.SMOKER, "yes")) {
      labels.add(on(say("decision.smokes"), address, OptionAddress.SMOKER));
    }
    if (address.has(OptionAddress.DIABETES, "yes")) {
      labels.add(on(say("decision.diabetes"), address, OptionAddress.DIABETES));
    }
    for (String code : address.all(OptionAddress.WISH)) {
      Coded.parse(Wish.class, code)
          .ifPresent(
              one ->
                  labels.add(
                      new On(
                          one.label(),
                          PagePaths.COMPARE,
                          address.without(OptionAddress.WISH, code))));
    }
    return labels;
  }

  private static On on(String label, Address address, String name) {
    return new On(label, PagePaths.COMPARE, address.without(List.of(name)));
  }
}
