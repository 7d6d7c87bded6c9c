package gapwise.analysis.moderators;

import com.fasterxml.jackson.databind.JsonNode;
import gapwise.analysis.pooling.Studies;
import gapwise.analysis.result.Result;
import gapwise.analysis.rows.DataTable;
import gapwise.analysis.rows.RowValue;
import gapwise.budget.Work;
import gapwise.effect.StudyData;
import gapwise.problem.Problem;
import gapwise.problem.Problems;
import gapwise.problem.WrongInputException;
import gapwise.synthesis.regression.DesignMatrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The sum of coefficients that a plan names, and the rows of the design by which it is told of any
 * of the studies. Levels, knots, and what is held at its mean are settled once, of the studies that
 * the plan's own analysis takes, so that the sum means the same in every analysis.
 */
public final class NamedSum {
  private static final String FIELD = "about";

  private final List<String> terms;
  private final double[] factors;
  private final List<Optional<double[]>> rows;
  private final AskedAbout asked;
  private final List<Map<String, JsonNode>> places;
  private final boolean outsideData;

  private NamedSum(
      AskedAbout asked,
      ModeratorDesign design,
      Reader reader,
      double[] factors,
      List<Optional<double[]>> rows) {
    this.asked = asked;
    this.terms = design.design().terms();
    this.factors = factors;
    this.rows = rows;
    this.places = reader.places.stream().map(reader.values::told).toList();
    this.outsideData = reader.places.stream().anyMatch(reader.values::outside);
  }

  /**
   * Holds what is asked against the data.
   *
   * @param studies as the plan's own analysis reads them
   * @param warnings takes a warning for each study with a blank, and others
   * @throws WrongInputException with everything that does not fit
   */
  public static <D extends StudyData> NamedSum of(
      AskedRegression regression,
      AskedAbout about,
      Studies<D> studies,
      DataTable table,
      List<Result.Warning> warnings) {
    List<Studies.Entry<D>> pooled = studies.pooled();
    ModeratorDesign design = ModeratorDesign.of(regression.moderators(), table, pooled, warnings);
    ModeratorCautions.add(design.design(), warnings);
    Reader reader =
        new Reader(
            design,
            new ModeratorValues(
                design.moderators(),
                design.places().stream().map(i -> pooled.get(i).row()).toList()));
    double[] factors = reader.factors(about);
    List<Optional<double[]>> rows = new ArrayList<>();
    for (Studies.Entry<D> entry : studies.all()) {
      rows.add(row(design, entry.row()));
    }
    return new NamedSum(about, design, reader, factors, rows);
  }

  /** The row of the design of a study; empty where it says too little, or what no other says. */
  private static Optional<double[]> row(ModeratorDesign design, DataTable.Row row) {
    Work.check();
    Map<String, RowValue> cells = row.cells();
    boolean known =
        design.moderators().stream()
            .allMatch(
                one ->
                    one.columns().stream().noneMatch(c -> row.text(c).isEmpty())
                        && one.takes(cells));
    return known ? Optional.of(design.values(cells)).filter(NamedSum::finite) : Optional.empty();
  }

  private static boolean finite(double[] numbers) {
    return Arrays.stream(numbers).allMatch(Double::isFinite);
  }

  /** Whether the study at a place of the data says what the moderators ask. */
  public boolean enters(int place) {
    return rows.get(place).isPresent();
  }

  /**
   * The sum told of some studies.
   *
   * @param design a row for each of them
   * @param factors of its terms
   */
  public record Of(DesignMatrix design, List<Double> factors) {
    public Of {
      factors = List.copyOf(factors);
    }
  }

  /**
   * The design of the studies at some places, all of which enter. Terms that none of them has, such
   * as a level that a narrower choice of rows leaves out, are left out where the sum has no use for
   * them: they change nothing.
   */
  public Of of(List<Integer> places) {
    List<double[]> some = places.stream().map(i -> rows.get(i).orElseThrow()).toList();
    List<Integer> kept = new ArrayList<>();
    for (int j = 0; j < factors.length; j++) {
      int term = j;
      if (factors[j] != 0 || some.stream().anyMatch(row -> row[term] != 0)) {
        kept.add(j);
      }
    }
    return new Of(
        DesignMatrix.of(
            kept.stream().map(terms::get).toList(),
            some.stream().map(row -> kept.stream().mapToDouble(j -> row[j]).toArray()).toList()),
        kept.stream().map(j -> factors[j]).toList());
  }

  /** Whether it is a mean, which people read on the scale of the measure, and no difference. */
  public boolean isMean() {
    return asked instanceof AskedAbout.At;
  }

  /** The term; empty for means and differences. */
  public Optional<String> term() {
    return asked instanceof AskedAbout.Term one ? Optional.of(one.term()) : Optional.empty();
  }

  /** The values of all moderators, of a difference those it is against too. */
  public List<Map<String, JsonNode>> places() {
    return places;
  }

  /** Whether a number of these lies outside those of the studies that enter. */
  public boolean isOutsideData() {
    return outsideData;
  }

  /** What is asked, held against the moderators. */
  private static final class Reader {
    private final ModeratorDesign design;
    private final ModeratorValues values;
    private final Problems problems = new Problems();
    private final List<Map<String, RowValue>> places = new ArrayList<>();

    Reader(ModeratorDesign design, ModeratorValues values) {
      this.design = design;
      this.values = values;
    }

    double[] factors(AskedAbout about) {
      List<String> terms = design.design().terms();
      double[] factors = new double[terms.size()];
      if (about instanceof AskedAbout.Term asked) {
        int at = terms.indexOf(asked.term());
        if (at < 0) {
          throw wrong(
              FIELD + ".term",
              "unknown-term",
              "found '" + asked.term() + "', expected a term of the moderators: " + terms);
        }
        factors[at] = 1;
        return factors;
      }
      if (about instanceof AskedAbout.At asked) {
        return row(asked.values(), "at");
      }
      AskedAbout.Difference asked = (AskedAbout.Difference) about;
      double[] first = row(asked.values(), "at");
      double[] second = row(asked.others(), "against");
      for (int j = 0; j < factors.length; j++) {
        factors[j] = first[j] - second[j];
      }
      if (Arrays.stream(factors).allMatch(one -> one == 0)) {
        throw wrong(
            FIELD + ".against",
            "no-difference",
            "the moderators are the same at both places; name other values in one of them");
      }
      return factors;
    }

    private double[] row(Map<String, RowValue> given, String field) {
      Map<String, RowValue> cells =
          values.complete(new LinkedHashMap<>(given), FIELD + "." + field, problems);
      if (!problems.isEmpty()) {
        throw new WrongInputException(problems.list());
      }
      double[] row = design.values(cells);
      if (!Arrays.stream(row).allMatch(x -> Math.abs(x) < 1e100)) {
        throw wrong(
            FIELD + "." + field,
            "number-out-of-range",
            "a value is so large that its terms cannot be reckoned with: " + cells);
      }
      places.add(cells);
      return row;
    }

    private static WrongInputException wrong(String where, String code, String message) {
      return new WrongInputException(List.of(new Problem(where, code, message)));
    }
  }
}
