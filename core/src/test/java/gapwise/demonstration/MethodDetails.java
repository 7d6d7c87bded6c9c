package gapwise.demonstration;

import gapwise.evidence.Detail;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/** What a paper tells of how the method was done. */
final class MethodDetails {
  private final Draw draw;
  private final SortedMap<String, Detail> details = new TreeMap<>();

  private MethodDetails(Draw draw) {
    this.draw = draw;
  }

  static SortedMap<String, Detail> of(ArmPlan plan, Draw draw) {
    MethodDetails told = new MethodDetails(draw);
    told.details.put("stages-planned", number(plan.stages()));
    switch (plan.method()) {
      case "bone-transport" -> told.transport(plan);
      case "acute-shortening-lengthening" -> told.shortening(plan);
      case "induced-membrane" -> told.membrane(plan);
      case "vascularised-bone-flap" -> told.flap();
      case "autograft" -> told.autograft();
      case "allograft" -> told.allograft();
      case "printed-scaffold" -> told.scaffold(plan);
      case "primary-amputation", "secondary-amputation", "amputation" -> told.amputation(plan);
      default -> told.words("fixation", plan.framed() ? "ring" : "mixed");
    }
    return told.details;
  }

  private void transport(ArmPlan plan) {
    String frame =
        plan.parts().contains("hexapod-frame")
            ? "hexapod"
            : plan.parts().contains("rail-frame") ? "monolateral" : "ring";
    words("fixation", frame);
    words("transport-levels", draw.oneOf(List.of("bifocal", "bifocal", "trifocal", "mixed")));
    number("latency-days", draw.whole(6, 10));
    number("transport-rate-mm-per-day", draw.oneOf(List.of(1.0, 1.0, 0.75)));
    words("docking-management", draw.oneOf(List.of("closed compression", "open", "graft")));
    words("index-denominator", draw.oneOf(List.of("defect length", "not stated")));
  }

  private void shortening(ArmPlan plan) {
    words("fixation", plan.parts().contains("ring-frame") ? "ring" : "monolateral");
    number("acute-shortening-cm", SummaryStyle.rounded(Math.min(4, plan.meanCentimetres() - 1), 1));
    number("latency-days", draw.whole(7, 10));
    words("index-denominator", "total lengthening");
  }

  private void membrane(ArmPlan plan) {
    words(
        "fixation",
        plan.parts().contains("over-nail")
            ? "nail"
            : plan.parts().contains("over-plate") ? "plate" : "mixed");
    words("spacer-antibiotic", "gentamicin, 1 g per 40 g");
    number("weeks-between-stages", draw.whole(6, 10));
    words("graft-source", draw.oneOf(List.of("anterior iliac crest", "intramedullary reaming")));
    number("graft-extender-percent", draw.oneOf(List.of(0.0, 20.0, 30.0)));
  }

  private void flap() {
    words("flap-donor", "fibula");
    words("flap-transfer", draw.oneOf(List.of("free", "free", "pedicled", "mixed")));
    words("flap-barrels", draw.oneOf(List.of("single", "double")));
    number("ischaemia-minutes", draw.whole(80, 170));
  }

  private void autograft() {
    words("fixation", draw.oneOf(List.of("plate", "nail", "mixed")));
    words("graft-source", draw.oneOf(List.of("anterior iliac crest", "posterior iliac crest")));
    number("graft-volume-cm3", draw.whole(20, 60));
    number("weeks-from-injury", draw.whole(4, 20));
  }

  private void allograft() {
    words("fixation", draw.oneOf(List.of("plate", "nail and plate")));
    words("allograft-kind", draw.oneOf(List.of("structural", "morselised")));
    words("allograft-processing", draw.oneOf(List.of("frozen", "freeze-dried")));
  }

  private void scaffold(ArmPlan plan) {
    boolean resorbable = plan.parts().contains("induced-membrane");
    words("scaffold-material", resorbable ? "polymer" : "titanium alloy");
    number("pore-size-um", draw.oneOf(List.of(500.0, 600.0, 800.0)));
    number("porosity-percent", draw.whole(62, 75));
    words("scaffold-permanence", resorbable ? "resorbable" : "permanent");
    words("fixation", plan.parts().contains("fusion-nail") ? "nail" : "nail and plate");
  }

  private void amputation(ArmPlan plan) {
    boolean late = plan.method().equals("secondary-amputation");
    words("amputation-level", draw.oneOf(List.of("transtibial", "mixed")));
    words(
        "amputation-reason",
        late ? "infection that would not heal, or never joined" : "crushed beyond repair");
  }

  private void words(String code, String text) {
    details.put(code, words(text));
  }

  private void number(String code, double value) {
    details.put(code, number(value));
  }

  static Detail words(String text) {
    return new Detail(text, OptionalDouble.empty());
  }

  /** A number with the words in which a person would type it. */
  static Detail number(double value) {
    String text = value == Math.rint(value) ? String.valueOf((long) value) : String.valueOf(value);
    return new Detail(text, OptionalDouble.of(value));
  }
}
