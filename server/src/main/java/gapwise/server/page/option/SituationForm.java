package gapwise.server.page.option;

import gapwise.decision.situation.SoftTissue;
import gapwise.decision.situation.Taken;
import gapwise.decision.situation.Wish;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.server.address.Address;
import gapwise.server.address.OptionAddress;
import gapwise.wording.Segments;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * What can be asked of options, as the address has it.
 *
 * @param address the address
 * @param methods methods to compare
 * @param bones bones
 * @param parts parts of bones
 * @param infections whether it is infected
 * @param softTissues skin and muscle over the gap
 * @param wishes what may matter most
 * @param taken which groups the numbers are from
 * @param kept what else the address has, which goes along
 */
public record SituationForm(
    Address address,
    List<Choice> methods,
    List<Choice> bones,
    List<Choice> parts,
    List<Choice> infections,
    List<Choice> softTissues,
    List<Choice> wishes,
    List<Choice> taken,
    List<Kept> kept) {

  private static final Set<String> FIELDS =
      Set.of(
          "method",
          "bone",
          "segment",
          "infected",
          "from",
          "to",
          OptionAddress.SOFT_TISSUE,
          OptionAddress.AGE,
          OptionAddress.SMOKER,
          OptionAddress.DIABETES,
          OptionAddress.WISH,
          OptionAddress.TAKEN);

  /** One choice. */
  public record Choice(String value, String label, boolean chosen) {}

  /** A value of the address that no field shows. */
  public record Kept(String name, String value) {}

  static SituationForm of(Address address) {
    return new SituationForm(
        address,
        choices("method", Method.vocabulary().all(), address),
        choices("bone", List.of(Bone.values()), address),
        parts(address),
        choices("infected", List.of(YesOrNo.YES, YesOrNo.NO), address),
        choices(OptionAddress.SOFT_TISSUE, List.of(SoftTissue.values()), address),
        choices(OptionAddress.WISH, List.of(Wish.values()), address),
        choices(OptionAddress.TAKEN, List.of(Taken.values()), address),
        kept(address));
  }

  private static List<Choice> choices(
      String name, List<? extends Coded> vocabulary, Address address) {
    return vocabulary.stream()
        .map(
            word ->
                new Choice(
                    word.code(),
                    word instanceof Method method ? method.shortLabel() : word.label(),
                    address.has(name, word.code())))
        .toList();
  }

  private static List<Choice> parts(Address address) {
    List<Choice> parts = new ArrayList<>();
    Map<String, String> names = new TreeMap<>();
    for (String code : List.of("31", "32", "33", "41", "42", "43", "44")) {
      names.put(code, Segments.name(code));
    }
    names.forEach((code, name) -> parts.add(new Choice(code, name, address.has("segment", code))));
    return parts;
  }

  private static List<Kept> kept(Address address) {
    List<Kept> kept = new ArrayList<>();
    address
        .parameters()
        .forEach(
            (name, values) -> {
              if (!FIELDS.contains(name)) {
                values.forEach(value -> kept.add(new Kept(name, value)));
              }
            });
    return kept;
  }

  /** Whether the patient smokes. */
  public boolean smoker() {
    return address.has(OptionAddress.SMOKER, "yes");
  }

  /** Whether the patient has diabetes. */
  public boolean diabetes() {
    return address.has(OptionAddress.DIABETES, "yes");
  }
}
