package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.choice.Range;
import gapwise.decision.choice.WishWords;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.OptionQuestion;
import gapwise.decision.situation.Wish;
import gapwise.figure.value.Shown;
import gapwise.server.address.Address;
import gapwise.server.address.ChoiceAddress;
import gapwise.server.address.WeighingAddress;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What can be said of the weights of outcomes.
 *
 * @param common what other forms have too
 * @param lines the outcomes of the table
 */
public record WeighingForm(ChoiceForm common, List<Line> lines) {
  /** Parts of 100 of the decision that have a name. */
  private static final List<String> PARTS = List.of("10", "20", "25", "33", "50", "67", "75");

  private static final double HUNDRED = 100;

  /** What matters to most where no wish was named; our choice. */
  private static final List<Aspect> USUAL =
      List.of(Aspect.UNION, Aspect.INFECTION, Aspect.FULL_WEIGHT);

  /**
   * One outcome.
   *
   * @param code its code
   * @param label what matters
   * @param unit what its range is in
   * @param weighed whether it is weighed
   * @param places places in the order of importance
   * @param least least parts of the decision
   * @param most greatest parts
   * @param worst the worst of its range as the address has it
   * @param best the best
   * @param usualWorst the worst that is taken otherwise; empty where there is none
   * @param usualBest the best
   */
  public record Line(
      String code,
      String label,
      String unit,
      boolean weighed,
      List<SituationForm.Choice> places,
      List<SituationForm.Choice> least,
      List<SituationForm.Choice> most,
      String worst,
      String best,
      String usualWorst,
      String usualBest) {}

  static WeighingForm of(OptionQuestion question, ChoiceForm common) {
    Address address = common.here();
    boolean asked = ChoiceAddress.isAsked(address);
    Map<Aspect, Integer> wished = wished(question);
    boolean ordered = wished.size() > 1;
    List<Line> lines = new ArrayList<>();
    for (Aspect aspect : question.aspects()) {
      String place =
          asked
              ? address.first(WeighingAddress.PLACE + aspect.code())
              : ordered
                  ? Optional.ofNullable(wished.get(aspect)).map(String::valueOf).orElse("")
                  : "";
      boolean weighed =
          asked
              ? address.has(WeighingAddress.WEIGH, aspect.code())
              : wished.containsKey(aspect) || USUAL.contains(aspect);
      lines.add(line(aspect, address, weighed, place, question.aspects().size()));
    }
    return new WeighingForm(common, lines);
  }

  private static Line line(
      Aspect aspect, Address address, boolean weighed, String place, int places) {
    String code = aspect.code();
    return new Line(
        code,
        aspect.label(),
        unit(aspect),
        weighed,
        IntStream.rangeClosed(1, places)
            .mapToObj(Integer::toString)
            .map(one -> new SituationForm.Choice(one, one, one.equals(place)))
            .toList(),
        parts(address.first(WeighingAddress.LEAST + code)),
        parts(address.first(WeighingAddress.MOST + code)),
        address.first(WeighingAddress.WORST + code),
        address.first(WeighingAddress.BEST + code),
        Range.usual(aspect).map(range -> Shown.centimetres(range.worst())).orElse(""),
        Range.usual(aspect).map(range -> Shown.centimetres(range.best())).orElse(""));
  }

  private static List<SituationForm.Choice> parts(String chosen) {
    List<SituationForm.Choice> parts = new ArrayList<>();
    for (String part : PARTS) {
      parts.add(
          new SituationForm.Choice(
              part, WishWords.part(Double.parseDouble(part) / HUNDRED), part.equals(chosen)));
    }
    if (!chosen.isEmpty() && !PARTS.contains(chosen)) {
      parts.add(
          new SituationForm.Choice(chosen, say("choice.part", Map.of("parts", chosen)), true));
    }
    return parts;
  }

  private static String unit(Aspect aspect) {
    return switch (aspect) {
      case FRAME_TIME, FULL_WEIGHT -> say("page.unit-months");
      case OPERATIONS -> say("page.unit-operations");
      case COST -> say("page.unit-of-prices");
      default -> say("page.of-hundred");
    };
  }

  /** The outcome that answers each wish, the first wish first. */
  private static Map<Aspect, Integer> wished(OptionQuestion question) {
    Map<Aspect, Integer> wished = new EnumMap<>(Aspect.class);
    for (Wish wish : question.situation().wishes()) {
      Aspect aspect =
          switch (wish) {
            case KEEPING_THE_LIMB -> Aspect.LATER_AMPUTATION;
            case WALKING_SOON -> Aspect.FULL_WEIGHT;
            case FEWER_OPERATIONS -> Aspect.OPERATIONS;
            case LEAST_INFECTION -> Aspect.INFECTION;
            case SHORT_FRAME -> Aspect.FRAME_TIME;
            case BACK_TO_WORK -> Aspect.WORK;
            case LOW_COST -> Aspect.COST;
          };
      wished.putIfAbsent(aspect, wished.size() + 1);
    }
    return wished;
  }
}
