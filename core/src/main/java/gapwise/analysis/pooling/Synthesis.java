package gapwise.analysis.pooling;

import gapwise.analysis.rows.DataTable;
import gapwise.effect.Measure;
import gapwise.effect.StudyData;

/**
 * What a part of the result of a synthesis is made from.
 *
 * @param <D> what a study reports
 * @param plan how studies are read and pooled
 * @param measure on its scale
 * @param studies the rows with their effects
 * @param table the rows as they came, with every column
 * @param pooler pools any of the studies in the way the plan says
 */
public record Synthesis<D extends StudyData>(
    PoolingPlan plan, Measure<D> measure, Studies<D> studies, DataTable table, Pooler pooler) {
  /**
   * Reads the rows and takes their effects.
   *
   * @param measure that of the plan
   * @throws gapwise.problem.WrongInputException with everything that is wrong with columns and rows
   */
  public static <D extends StudyData> Synthesis<D> of(
      PoolingPlan plan, Measure<D> measure, DataTable table) {
    Studies<D> studies = Studies.read(plan, measure, table);
    return new Synthesis<>(plan, measure, studies, table, plan.model().pooler(studies));
  }
}
