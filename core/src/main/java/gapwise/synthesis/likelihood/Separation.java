package gapwise.synthesis.likelihood;

import gapwise.numeric.SymmetricMatrix;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.exception.TooManyIterationsException;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NoFeasibleSolutionException;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;

/**
 * Whether the columns of a regression can be taken so that the means of studies without an event go
 * down for ever, or stay, those of studies with nothing but events go up, and all others stay: then
 * no end of it is the best, and the likelihood has no top (Albert and Anderson, Biometrika
 * 1984;71:1, for logistic regression).
 *
 * <p>There is such a way unless the rows of studies at a limit, with the sign of theirs and as far
 * as the other studies leave them free, sum to 0 with weights that are all above 0 (Stiemke's
 * theorem). Weights of 1 and more are looked for by the simplex method, whose time grows with the
 * number of studies, since there are no more equations than columns.
 */
final class Separation {
  /** Directions that the other studies hold by less than this share are free but for rounding. */
  private static final double FREE = 1e-11;

  private static final double SAME = 1e-9;

  private static final int MOST_PIVOTS = 10_000;

  private Separation() {}

  static boolean of(StudyLikelihoods studies, LinearMeans means) {
    double[][] free = free(studies, means);
    if (free.length == 0) {
      return false;
    }
    List<double[]> rows = new ArrayList<>();
    for (int i = 0; i < studies.size(); i++) {
      int sign = sign(studies.pull(i));
      if (sign != 0) {
        row(means, i, sign, free).ifPresent(rows::add);
      }
    }
    return rows.isEmpty() || !canSumToNothing(rows, free.length);
  }

  /** Which way a study's likelihood rises for ever. */
  static int sign(StudyLikelihoods.Pull pull) {
    return pull == StudyLikelihoods.Pull.UP ? 1 : pull == StudyLikelihoods.Pull.DOWN ? -1 : 0;
  }

  /** The directions in which no study with a top of its own is moved. */
  private static double[][] free(StudyLikelihoods studies, LinearMeans means) {
    int p = means.columns();
    double[][] held = new double[p][p];
    for (int i = 0; i < studies.size(); i++) {
      if (sign(studies.pull(i)) == 0) {
        for (int a = 0; a < p; a++) {
          for (int b = 0; b < p; b++) {
            held[a][b] += means.value(i, a) * means.value(i, b);
          }
        }
      }
    }
    SymmetricMatrix apart = SymmetricMatrix.of(new Array2DRowRealMatrix(held, false));
    return java.util.stream.IntStream.range(0, p)
        .filter(l -> apart.value(l) < FREE)
        .mapToObj(l -> apart.direction(l).toArray())
        .toArray(double[][]::new);
  }

  /** A study's row along the free directions, of length 1; empty where it has none. */
  private static java.util.Optional<double[]> row(
      LinearMeans means, int study, int sign, double[][] free) {
    double[] row = new double[free.length];
    double whole = 0;
    for (int j = 0; j < means.columns(); j++) {
      whole += means.value(study, j) * means.value(study, j);
      for (int l = 0; l < free.length; l++) {
        row[l] += sign * means.value(study, j) * free[l][j];
      }
    }
    double length = Math.sqrt(Arrays.stream(row).map(x -> x * x).sum());
    if (length <= SAME * Math.sqrt(whole)) {
      return java.util.Optional.empty();
    }
    for (int l = 0; l < row.length; l++) {
      row[l] /= length;
    }
    return java.util.Optional.of(row);
  }

  /** Whether weights of 1 and more, those beyond 1 the unknowns, make the rows sum to 0. */
  private static boolean canSumToNothing(List<double[]> rows, int columns) {
    List<LinearConstraint> equations = new ArrayList<>();
    for (int l = 0; l < columns; l++) {
      double[] numbers = new double[rows.size()];
      double sum = 0;
      for (int i = 0; i < numbers.length; i++) {
        numbers[i] = rows.get(i)[l];
        sum += numbers[i];
      }
      equations.add(new LinearConstraint(numbers, Relationship.EQ, -sum));
    }
    try {
      new SimplexSolver()
          .optimize(
              new MaxIter(MOST_PIVOTS),
              new LinearObjectiveFunction(new double[rows.size()], 0),
              new LinearConstraintSet(equations),
              GoalType.MINIMIZE,
              new NonNegativeConstraint(true));
      return true;
    } catch (NoFeasibleSolutionException none) {
      return false;
    } catch (TooManyIterationsException undecided) {
      return true; // the search then says whether it settled
    }
  }
}
