package gapwise.figure.plane;

import gapwise.figure.FigureProvenance;
import gapwise.figure.Reference;
import gapwise.figure.drawing.MethodMark;
import gapwise.figure.value.SeriesCount;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Costs and effects for tests. Every name and number in them is invented. */
public final class InventedPlanes {
  private static final List<MethodMark> METHODS =
      List.of(
          new MethodMark("bone-transport", "Bone transport", "ring", "#2128D2"),
          new MethodMark("induced-membrane", "Induced membrane", "square", "#8A5A00"),
          new MethodMark(
              "vascularised-flap", "Vascularised fibular flap with a frame", "triangle", "#5B1E8C"),
          new MethodMark("acute-shortening", "Shorten, lengthen", "chevron", "#1E6FA8"),
          new MethodMark("allograft", "Structural allograft over a nail, plated", "bar", "#7A3B12"),
          new MethodMark("metal-cage", "Metal cage", "barred-square", "#3F4A56"),
          new MethodMark("amputation", "Amputation", "cross", "#5A5F66"));

  private InventedPlanes() {}

  private static FigureProvenance provenance(List<Reference> references) {
    return new FigureProvenance(
            SeriesCount.of(14), "231 limbs", "cohort by months", "test", Optional.empty(), true)
        .citing(references);
  }

  private static Cloud cloud(MethodMark kind, double effect, double cost, int methods) {
    SplittableRandom random = new SplittableRandom(kind.code().hashCode());
    List<Cloud.Spot> all = new ArrayList<>();
    for (int i = 0; i < 2_000; i++) {
      double first = noise(random);
      all.add(
          new Cloud.Spot(effect + 0.4 * first, cost + 5_000 * (0.4 * first + 0.9 * noise(random))));
    }
    return Cloud.thinned(kind, new Cloud.Spot(effect, cost), all, Plane.marksOfEach(methods));
  }

  private static double noise(SplittableRandom random) {
    return DoubleStream.generate(random::nextDouble).limit(12).sum() - 6;
  }

  /** Methods against another, from one to six. */
  public static Plane plane(int methods, List<Reference> references) {
    List<Cloud> clouds =
        IntStream.range(0, methods)
            .mapToObj(i -> cloud(METHODS.get(i), -0.6 + 0.5 * i, 9_000 - 6_000 * i, methods))
            .toList();
    return new Plane(
        "Costs and years healed against amputation",
        List.of(
            "In 71 of 100 draws bone transport costs more than amputation, in 83 it brings more"
                + " years on the own leg.",
            "Invented numbers."),
        "Amputation",
        "years healed",
        "EUR of 2024",
        clouds,
        List.of(
            "Prices are those that were entered; another place has others.",
            "What was not compared in one study is compared here across studies."),
        provenance(references));
  }

  /** One method that costs more and does less in every draw. */
  public static Plane dominated() {
    Plane usual = plane(1, List.of());
    return new Plane(
        usual.title(),
        List.of(),
        usual.against(),
        "quality-adjusted years",
        "thousands of pounds sterling at the prices of the year 2023",
        List.of(cloud(METHODS.get(2), -3, 60_000, 1)),
        usual.cautions(),
        usual.provenance());
  }

  /** Methods that take over from each other as an effect is worth more, from two to seven. */
  public static Acceptability acceptability(int methods, List<Reference> references) {
    int amounts = 41;
    List<Double> money = IntStream.range(0, amounts).mapToObj(i -> 2_500.0 * i).toList();
    double[][] shares = new double[methods][amounts];
    List<Integer> best = new ArrayList<>();
    for (int i = 0; i < amounts; i++) {
      double sum = 0;
      for (int m = 0; m < methods; m++) {
        double peak = (m + 0.3) * amounts / methods;
        shares[m][i] = Math.exp(-0.5 * Math.pow((i - peak) / (30.0 / methods), 2)) + 0.02;
        sum += shares[m][i];
      }
      for (int m = 0; m < methods; m++) {
        shares[m][i] /= sum;
      }
      best.add(Math.min(methods - 1, (i + 3) * methods / amounts));
    }
    List<Acceptability.Line> lines =
        IntStream.range(0, methods)
            .mapToObj(
                m ->
                    new Acceptability.Line(
                        METHODS.get(m), DoubleStream.of(shares[m]).boxed().toList()))
            .toList();
    return new Acceptability(
        "Which of " + methods + " methods is worth its money",
        List.of("The likeliest to be best is not always best on average. Invented numbers."),
        "EUR of 2024 for one more year healed",
        money,
        lines,
        best,
        List.of("How much a year healed is worth is for those who pay to say, not for a model."),
        provenance(references));
  }
}
