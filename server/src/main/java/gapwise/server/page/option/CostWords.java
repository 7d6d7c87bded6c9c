package gapwise.server.page.option;

import static gapwise.sentence.Sentences.say;

import gapwise.decision.choice.CostFigures;
import gapwise.decision.choice.CostedMethods;
import gapwise.decision.choice.CostedTable;
import gapwise.decision.cost.Acceptance;
import gapwise.decision.cost.CostParts;
import gapwise.decision.cost.Increment;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.Shown;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** Costs and effects in words. */
final class CostWords {
  /** Amounts of money at which it is told what knowing everything would be worth, beside 0. */
  private static final int AMOUNTS = 4;

  private static final Quantity NUMBER = Quantity.mean("");

  private CostWords() {}

  static CostView.Shown shown(CostedMethods methods, Optional<CostView.Drawn> figures) {
    return new CostView.Shown(
        List.of(
            CostFigures.terms(methods),
            CostFigures.stages(methods),
            say(
                "page.cost-courses",
                Map.of("draws", CostedTable.DRAWS, "seed", Long.toString(methods.asked().seed())))),
        CostFigures.cautions(methods),
        CostFigures.notes(methods),
        CostFigures.money(methods),
        CostFigures.effect(methods),
        IntStream.range(0, methods.methods().size()).mapToObj(m -> line(methods, m)).toList(),
        parts(methods),
        methods.at(AMOUNTS).stream().map(at -> worth(methods, at)).toList(),
        figures,
        methods.leftOut(),
        methods.filled());
  }

  private static CostView.Line line(CostedMethods methods, int m) {
    return new CostView.Line(
        methods.methods().get(m),
        Shown.estimate(NUMBER, methods.cost(m)),
        methods.isSilent(m)
            ? say("page.no-years-healed")
            : Shown.estimate(NUMBER, methods.effect(m)),
        m == methods.against() ? say("page.held-against") : against(methods, m),
        m == methods.against() ? "" : quarters(methods, m));
  }

  private static boolean isPairSilent(CostedMethods methods, int m) {
    return methods.isSilent(m) || methods.isSilent(methods.against());
  }

  private static String against(CostedMethods methods, int m) {
    Increment increment = methods.costed().outcomes().increment(m, methods.against());
    String cost = Shown.difference(increment.cost(), "");
    return isPairSilent(methods, m)
        ? say("page.extra-cost", Map.of("cost", cost))
        : say(
            "page.extra", Map.of("cost", cost, "effect", Shown.difference(increment.effect(), "")));
  }

  private static String quarters(CostedMethods methods, int m) {
    if (isPairSilent(methods, m)) {
      return say("page.quarters-silent");
    }
    Increment increment = methods.costed().outcomes().increment(m, methods.against());
    String quarters =
        say(
            "page.quarters",
            Map.of(
                "dearerBetter", of100(increment.dearerBetter()),
                "dearerWorse", of100(increment.dearerWorse()),
                "cheaperBetter", of100(increment.cheaperBetter()),
                "cheaperWorse", of100(increment.cheaperWorse())));
    String ratio =
        increment.ratio().isPresent()
            ? say(
                "page.ratio",
                Map.of(
                    "ratio",
                    Shown.number(increment.ratio().getAsDouble()),
                    "effect",
                    CostFigures.one(methods)))
            : say("page.no-ratio");
    return say("page.quarters-and-ratio", Map.of("quarters", quarters, "ratio", ratio));
  }

  private static String of100(double share) {
    return Shown.of100(Math.max(0, Math.min(1, share)));
  }

  private static List<CostView.Part> parts(CostedMethods methods) {
    List<CostView.Part> parts = new ArrayList<>();
    parts.add(part(methods, say("page.part-treatment"), CostParts::treatment));
    parts.add(part(methods, say("page.part-months"), CostParts::months));
    parts.add(part(methods, say("page.part-reoperations"), CostParts::reoperations));
    parts.add(part(methods, say("page.part-infections"), CostParts::infections));
    parts.add(part(methods, say("page.part-amputations"), CostParts::amputations));
    parts.add(part(methods, say("page.part-prostheses"), CostParts::prostheses));
    parts.add(part(methods, say("page.part-not-healed"), CostParts::notHealed));
    parts.add(part(methods, say("page.part-lost-work"), CostParts::lostWork));
    parts.add(part(methods, say("page.part-total"), CostParts::total));
    return parts;
  }

  private static CostView.Part part(
      CostedMethods methods, String label, ToDoubleFunction<CostParts> amount) {
    return new CostView.Part(
        label,
        methods.costed().methods().stream()
            .map(one -> Shown.reported(NUMBER, amount.applyAsDouble(one.parts())))
            .toList());
  }

  private static CostView.Worth worth(CostedMethods methods, Acceptance at) {
    return new CostView.Worth(
        Shown.reported(NUMBER, at.lambda()),
        methods.methods().get(methods.compared().get(at.best())).shortLabel(),
        of100(at.frontier()),
        Shown.reported(NUMBER, at.perfectInformation()));
  }
}
