package gapwise.analysis;

import gapwise.effect.Measure;
import gapwise.effect.StudyData;

/**
 * What a part of the result of a synthesis is made from.
 *
 * @param <D> what a study reports
 * @param plan what is asked
 * @param measure on its scale
 * @param studies the rows with their effects
 * @param table the rows as they came, with every column
 * @param pooler pools any of the studies in the way the plan says
 */
record Synthesis<D extends StudyData>(
    SynthesisPlan plan, Measure<D> measure, Studies<D> studies, DataTable table, Pooler pooler) {}
