package gapwise.figure.forest;

import gapwise.figure.FigureProvenance;
import gapwise.figure.drawing.AxisWords;
import gapwise.figure.span.Span;
import gapwise.figure.span.SpanRule;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.Quantity;
import gapwise.figure.value.SeriesCount;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * Figures for tests. Every name and number in them is invented; intervals are made up to look
 * plausible and are no one's result.
 */
public final class InventedForests {
  private static final String CAUTION =
      "Supports a discussion, not advice. Licensed surgeons and local protocols decide.";
  private static final String APART =
      "These are separate groups of patients, not a comparison: defects, infection and follow-up"
          + " differ.";

  private InventedForests() {}

  static ForestRow row(
      String study, Span span, int events, int total, double low, double high, double weight) {
    ForestRow.OpenEnd open =
        events == total
            ? ForestRow.OpenEnd.HIGH
            : events == 0 ? ForestRow.OpenEnd.LOW : ForestRow.OpenEnd.NONE;
    return new ForestRow(
        study,
        "",
        span,
        events + " of " + total,
        Estimate.of((double) events / total, low, high),
        OptionalDouble.of(weight),
        open,
        Optional.empty());
  }

  static Span mean(double cm, double shortest, double longest) {
    return new Span.Mean(cm, Optional.of(SpanRule.range(shortest, longest)));
  }

  static FigureProvenance provenance(int studies, String participants) {
    return new FigureProvenance(
        SeriesCount.of(studies),
        participants,
        "random effects on the logit scale, Hartung-Knapp interval",
        "change 412",
        Optional.of(LocalDate.of(2026, 1, 31)),
        true);
  }

  /** Eight series in two blocks, every kind of span, both bounds, one left out. */
  public static Forest twoMethods() {
    Block ring =
        new Block(
            "Transport in a ring frame",
            List.of(
                detailed(
                    row(
                        "Invented series 03, Alder Bay 2012",
                        mean(5.1, 3, 8),
                        27,
                        31,
                        .70,
                        .96,
                        26),
                    "Tibia, infected 31 of 31"),
                detailed(
                    row(
                        "Invented series 07, Port Winnow 2015",
                        new Span.Median(6.8, Optional.of(SpanRule.quartiles(5, 9.5))),
                        22,
                        24,
                        .73,
                        .99,
                        21),
                    "Tibia and femur, infected 15 of 24"),
                detailed(
                    row(
                        "Invented series 11, Marl Hill 2017",
                        new Span.PerPatient(
                            List.of(4.5, 5.0, 6.2, 7.0, 7.4, 7.8, 8.1, 9.0, 10.5), 7.4),
                        18,
                        18,
                        .81,
                        1,
                        12),
                    "Tibia, comparison arm"),
                detailed(
                    row(
                        "Invented series 19, Tarn 2020",
                        new Span.Mean(6, Optional.of(SpanRule.standardDeviation(6, 2.1))),
                        38,
                        42,
                        .77,
                        .97,
                        41),
                    "Tibia, none infected")),
            new ForestSummary.Pooled(
                "Pooled, random effects",
                Estimate.of(.902, .831, .949),
                Optional.of(new Limits(.74, .97)),
                SeriesCount.of(4),
                "115 limbs"));
    Block membrane =
        new Block(
            "Induced membrane, two stages",
            List.of(
                row("Invented series 02, Alder Bay 2013", mean(4.9, 3, 7), 18, 22, .60, .95, 26),
                row(
                    "Invented series 14, Quarry Ness 2018",
                    new Span.RangeOnly(3, 9),
                    30,
                    37,
                    .65,
                    .92,
                    52),
                row("Invented series 22, Loam 2021", new Span.Threshold(4), 8, 12, .35, .90, 20),
                row(
                    "Invented case report 31, Sedge 2022",
                    new Span.NotReported(),
                    1,
                    1,
                    .025,
                    1,
                    2)),
            new ForestSummary.Pooled(
                "Pooled, random effects",
                Estimate.of(.808, .71, .88),
                Optional.of(new Limits(.58, .93)),
                SeriesCount.of(4),
                "72 limbs"));
    return new Forest(
        new Heading(
            "Limbs united without further grafting, of 100",
            List.of(
                "Ring transport: about 90 (83 to 95). A new centre could see 74 to 97. Membrane:"
                    + " about 81 (71 to 88), 58 to 93.",
                APART),
            "United",
            "Of 100 (95 %)"),
        Quantity.of100(),
        new AxisWords("limbs united, of 100", "", "more limbs united", List.of()),
        List.of(ring, membrane),
        Optional.empty(),
        List.of(
            new ForestLeftOut(
                "Invented series 29, Fen End 2016",
                mean(7.2, 4, 12),
                "14 of 20",
                "Counts union after further grafting: another definition is never pooled with this.",
                Optional.empty())),
        List.of(),
        List.of(CAUTION),
        provenance(8, "187 limbs"));
  }

  private static ForestRow detailed(ForestRow row, String detail) {
    return new ForestRow(
        row.study(),
        detail,
        row.span(),
        row.counts(),
        row.estimate(),
        row.weightPercent(),
        row.openEnd(),
        Optional.of("studies/" + row.study().length()));
  }

  /** Many series in many blocks, with names of up to 60 letters and rows at both bounds. */
  public static Forest many(int rows, int blocks) {
    Random random = new Random(20260131L + rows);
    List<Block> all = new ArrayList<>();
    int left = rows;
    for (int b = 0; b < blocks; b++) {
      int size = left / (blocks - b);
      left -= size;
      List<ForestRow> some = new ArrayList<>();
      for (int i = 0; i < size; i++) {
        some.add(random(random, b, i, size));
      }
      double p = 0.7 + 0.04 * b % 0.25;
      all.add(
          new Block(
              METHODS[b % METHODS.length],
              some,
              new ForestSummary.Pooled(
                  "Pooled, random effects",
                  Estimate.of(p, p - .06, p + .05),
                  Optional.of(new Limits(p - .2, Math.min(.99, p + .14))),
                  SeriesCount.of(Math.max(1, size)),
                  size * 23 + " limbs")));
    }
    return new Forest(
        new Heading(
            "Limbs united without further grafting, of 100",
            List.of("Results of series differ more than chance explains.", APART),
            "United",
            "Of 100 (95 %)"),
        Quantity.of100(),
        new AxisWords("limbs united, of 100", "fewer limbs united", "more limbs united", List.of()),
        all,
        Optional.of(
            new ForestSummary.Pooled(
                "All methods together",
                Estimate.of(.82, .79, .85),
                Optional.of(new Limits(.55, .95)),
                SeriesCount.of(Math.max(1, rows)),
                rows * 23 + " limbs")),
        List.of(),
        List.of("The summary over all methods mixes different treatments and patients."),
        List.of(CAUTION, "Mostly non-randomised series; differences may come from the patients."),
        provenance(rows, rows * 23 + " limbs"));
  }

  private static final String[] METHODS = {
    "Transport in a ring frame",
    "Induced membrane, two stages",
    "Vascularised fibula",
    "Autograft from the iliac crest",
    "Structural allograft",
    "Patient-specific scaffold",
    "Transport over a nail"
  };

  private static final String[] PLACES = {
    "Alder Bay",
    "Port Winnow",
    "Marl Hill",
    "Tarn",
    "Quarry Ness",
    "Loam",
    "Sedge",
    "Fen End",
    "Saint Orwen by the Lower Weir and Upper Marsh Infirmary"
  };

  private static ForestRow random(Random random, int block, int i, int size) {
    int total = 3 + random.nextInt(60);
    int kind = random.nextInt(12);
    int events =
        kind == 0 ? total : kind == 1 ? 0 : (int) (total * (.6 + .38 * random.nextDouble()));
    double p = (double) events / total;
    double half = .9 / Math.sqrt(total);
    double cm = 1 + random.nextInt(130) / 10.0;
    Span[] spans = {
      mean(cm, Math.max(.5, cm - 3), cm + 4),
      new Span.Median(cm, Optional.empty()),
      new Span.Threshold(4),
      new Span.NotReported(),
      new Span.RangeOnly(cm / 2, cm * 1.5)
    };
    String name =
        String.format(
            Locale.ROOT,
            "Invented series %d.%02d, %s %d",
            block + 1,
            i + 1,
            PLACES[random.nextInt(PLACES.length)],
            1995 + random.nextInt(30));
    return row(
        name,
        spans[random.nextInt(spans.length)],
        events,
        total,
        events == 0 ? 0 : Math.max(0, p - half * 1.2),
        events == total ? 1 : Math.min(1, p + half * .6),
        100.0 * total / (size * 63));
  }

  /** A ratio of two groups on a log axis, with a wild interval, one without weights. */
  public static Forest ratios() {
    List<ForestRow> rows =
        List.of(
            ratio("Invented trial 1, Alder Bay 2009", "4 of 31 vs 9 of 30", .43, .15, 1.25, 30),
            ratio("Invented trial 2, Tarn 2014", "2 of 40 vs 11 of 42", .19, .045, .81, 22),
            ratio("Invented trial 3, Loam 2019", "0 of 6 vs 1 of 5", .28, .013, 5.7, 4),
            ratio("Invented trial 4, Sedge 2021", "12 of 90 vs 14 of 88", .84, .41, 1.71, 44));
    return new Forest(
        new Heading(
            "Infection back within two years, flap against no flap",
            List.of("Risk about 0.52 times as high (0.23 to 1.18): the trials leave both open."),
            "Events",
            "Risk ratio (95 %)"),
        Quantity.ratio(),
        new AxisWords(
            "risk ratio, log axis",
            "fewer infections with a flap",
            "more infections with a flap",
            List.of(new AxisWords.Threshold(.5, "half as many infections"))),
        List.of(
            new Block(
                "",
                rows,
                new ForestSummary.Pooled(
                    "Pooled, random effects",
                    Estimate.of(.52, .23, 1.18),
                    Optional.of(new Limits(.08, 3.4)),
                    SeriesCount.of(4),
                    "332 patients"))),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(CAUTION),
        provenance(4, "332 patients"));
  }

  private static ForestRow ratio(
      String study, String counts, double value, double lower, double upper, double weight) {
    return new ForestRow(
        study,
        "",
        mean(4 + value, 2, 7 + value),
        counts,
        Estimate.of(value, lower, upper),
        OptionalDouble.of(weight),
        ForestRow.OpenEnd.NONE,
        Optional.empty());
  }

  /** Means of which some stand without a spread, with counts told in far too many words. */
  public static Forest meansWithoutASpread() {
    List<ForestRow> rows = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      Estimate estimate =
          i % 2 == 0 ? Estimate.alone(9.2 + i) : Estimate.of(10.5 + i, 8.7 + i, 12.6 + i);
      rows.add(
          new ForestRow(
              "Invented series " + i + ", Sedge 2020",
              "retrospective series",
              mean(5 + i, 3, 9 + i),
              "mean 10.5, median 10.1, SD 2.8, middle half 8.5 to 12.4, 7.0 to 14.6 months",
              estimate,
              i % 2 == 0 ? OptionalDouble.empty() : OptionalDouble.of(50),
              ForestRow.OpenEnd.NONE,
              Optional.empty(),
              "Sedge A. Invented series " + i + ". 2020"));
    }
    return new Forest(
        new Heading("Months in a frame", List.of(), "Reported", "months (95 %)"),
        Quantity.mean("months"),
        new AxisWords("months", "better for patients", "", List.of()),
        List.of(
            new Block(
                "Transport in a ring frame",
                rows,
                new ForestSummary.Pooled(
                    "Pooled, random effects",
                    Estimate.of(12.1, 9.0, 15.4),
                    Optional.empty(),
                    SeriesCount.of(2),
                    "40 limbs"))),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(CAUTION),
        provenance(2, "40 limbs"));
  }

  /** Months in a frame, one series, nothing pooled; and a block without any series. */
  public static Forest oneSeriesAndAnEmptyBlock() {
    ForestRow only =
        new ForestRow(
            "Invented series 40, Tarn 2023",
            "Tibia",
            new Span.PerPatient(List.of(8.0), 8),
            "9 limbs",
            Estimate.of(11.84, 8.2, 15.45),
            OptionalDouble.empty(),
            ForestRow.OpenEnd.NONE,
            Optional.empty());
    return new Forest(
        new Heading("Months in a frame", List.of(), "Limbs", "Months (95 %)"),
        Quantity.mean("months"),
        new AxisWords("months", "shorter", "longer", List.of()),
        List.of(
            new Block(
                "Transport in a ring frame",
                List.of(only),
                new ForestSummary.NotPooled(
                    "Not pooled", "One series only: its own value stands alone.")),
            new Block(
                "Transport over a nail",
                List.of(),
                new ForestSummary.NotPooled(
                    "No usable series", "Nothing was found for this method."))),
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(CAUTION),
        provenance(1, "9 limbs"));
  }

  /** Series in which every limb united, so that nothing is pooled. */
  public static Forest allUnited(int series) {
    List<ForestRow> rows = new ArrayList<>();
    for (int i = 1; i <= series; i++) {
      int limbs = 4 + 3 * i;
      rows.add(
          row(
              "Invented series " + i + ", Quarry Ness 20" + (10 + i),
              mean(3 + i % 7, 2, 5 + i),
              limbs,
              limbs,
              Math.pow(.025, 1.0 / limbs),
              1,
              100.0 / series));
    }
    return new Forest(
        new Heading(
            "Union, as the paper counts it, after transport in a ring frame",
            List.of("Every limb united in every series."),
            "United",
            "Of 100 (95 %)"),
        Quantity.of100(),
        new AxisWords("limbs united, of 100", "", "better for patients", List.of()),
        List.of(
            new Block(
                "Transport in a ring frame",
                rows,
                new ForestSummary.NotPooled(
                    "Not pooled",
                    "Nobody in any series was without it: an average could not be told from 100"
                        + " of 100."))),
        Optional.empty(),
        List.of(),
        List.of("Papers that do not say whether further grafting was needed tend to count it."),
        List.of(CAUTION, "Mostly non-randomised series; differences may come from the patients."),
        provenance(series, series * 20 + " limbs"));
  }

  /** The same figure with another provenance. */
  public static Forest from(Forest forest, FigureProvenance provenance) {
    return new Forest(
        forest.heading(),
        forest.measure(),
        forest.axis(),
        forest.blocks(),
        forest.overall(),
        forest.leftOut(),
        forest.notes(),
        forest.cautions(),
        provenance);
  }

  /**
   * Words that would break a careless writer: markup, control letters, other scripts, no spaces.
   */
  public static Forest hostileWords() {
    String endless = "Xyzzy".repeat(30);
    List<ForestRow> rows =
        List.of(
            row("<script>alert(\"1\")</script> & 'more' 2001", mean(5, 2, 9), 0, 9, 0, .34, 10),
            row(
                "\u9aa8\u79fb\u690d \u0001 \u0645\u062b\u0627\u0644 2002",
                mean(5, 2, 9),
                9,
                9,
                .66,
                1,
                10),
            row(endless, new Span.NotReported(), 4, 9, .14, .79, 10));
    Forest plain = twoMethods();
    return new Forest(
        new Heading(
            "Less < more & \"quoted\" \u0001", List.of(endless), "United of treated", "95 %"),
        plain.measure(),
        new AxisWords("of 100", endless.substring(0, 40), "more limbs united", List.of()),
        List.of(
            new Block(
                endless,
                rows,
                new ForestSummary.Pooled(
                    endless,
                    Estimate.of(.5, .01, .99),
                    Optional.empty(),
                    SeriesCount.of(3),
                    "27 limbs"))),
        Optional.of(new ForestSummary.NotPooled("Not pooled <all>", endless)),
        List.of(
            new ForestLeftOut(endless, new Span.Threshold(4), "", endless, Optional.empty()),
            new ForestLeftOut(
                "B", new Span.NotReported(), "3 of 4", "No interval", Optional.empty())),
        List.of(endless),
        List.of(CAUTION),
        provenance(3, "27 limbs"));
  }
}
