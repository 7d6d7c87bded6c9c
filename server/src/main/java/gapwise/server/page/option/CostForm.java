package gapwise.server.page.option;

import gapwise.decision.cost.Entry;
import gapwise.decision.cost.Health;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.evidence.vocabulary.Method;
import gapwise.server.address.CostAddress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * What is asked about costs. No field has a number of ours in it.
 *
 * @param common what other forms have too
 * @param frame currency and price year, horizon and rates
 * @param prices amounts of money that all methods share, and times
 * @param treatments cost of the planned operations of each method
 * @param stages planned stages of each method, where they are other than the records have them
 * @param utilities worth of a year in each state, all of them or none
 * @param against methods that the others can be held against
 */
public record CostForm(
    ChoiceForm common,
    List<Field> frame,
    List<Field> prices,
    List<Field> treatments,
    List<Field> stages,
    List<Field> utilities,
    List<SituationForm.Choice> against) {
  private static final List<Entry> OF_FRAME =
      List.of(
          Entry.HORIZON_YEARS,
          Entry.DISCOUNT_COSTS,
          Entry.DISCOUNT_EFFECTS,
          Entry.DEATH_FIRST_YEAR,
          Entry.DEATH_GROWTH);

  /** Groups in which methods are not told apart have no planned operations of one kind. */
  private static final Set<String> NO_ONE_TREATMENT = Set.of("mixed-salvage", "combined", "other");

  /**
   * One field.
   *
   * @param name its name in the address
   * @param label what it is
   * @param value what the address has
   * @param spread name of its standard deviation; empty where it has none
   * @param spreadValue what the address has of that
   */
  public record Field(String name, String label, String value, String spread, String spreadValue) {}

  static CostForm of(OptionQuestion question, ChoiceForm common) {
    List<Field> frame = new ArrayList<>();
    frame.add(known(common, CostAddress.CURRENCY, "currency of all money"));
    frame.add(known(common, CostAddress.PRICE_YEAR, "year of all prices"));
    OF_FRAME.forEach(entry -> frame.add(of(common, entry)));
    frame.add(
        known(common, CostAddress.WORTH_UP_TO, "most money for one more year, end of the curve"));
    List<Method> methods = methods(question);
    String against = common.value(CostAddress.AGAINST);
    return new CostForm(
        common,
        frame,
        Arrays.stream(Entry.values())
            .filter(entry -> !OF_FRAME.contains(entry))
            .map(entry -> of(common, entry))
            .toList(),
        methods.stream()
            .map(
                method -> money(common, CostAddress.TREATMENT + method.code(), method.shortLabel()))
            .toList(),
        methods.stream()
            .map(method -> known(common, CostAddress.STAGES + method.code(), method.shortLabel()))
            .toList(),
        Arrays.stream(Health.values())
            .map(health -> known(common, CostAddress.UTILITY + health.code(), health.label()))
            .toList(),
        methods.stream()
            .map(
                method ->
                    new SituationForm.Choice(
                        method.code(), method.shortLabel(), method.code().equals(against)))
            .toList());
  }

  /** Methods named and amputation; where none is, all that are one treatment. */
  private static List<Method> methods(OptionQuestion question) {
    Set<String> named = question.situation().among().methods();
    return Method.vocabulary().all().stream()
        .filter(method -> !NO_ONE_TREATMENT.contains(method.code()))
        .filter(
            method ->
                named.isEmpty() || named.contains(method.code()) || Aspect.isAmputation(method))
        .toList();
  }

  private static Field of(ChoiceForm common, Entry entry) {
    return entry.kind() == Entry.Kind.MONEY
        ? money(common, entry.code(), entry.label())
        : known(common, entry.code(), entry.label());
  }

  private static Field known(ChoiceForm common, String name, String label) {
    return new Field(name, label, common.value(name), "", "");
  }

  private static Field money(ChoiceForm common, String name, String label) {
    String spread = CostAddress.SPREAD + name;
    return new Field(name, label, common.value(name), spread, common.value(spread));
  }
}
