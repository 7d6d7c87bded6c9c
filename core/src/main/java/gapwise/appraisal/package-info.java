/**
 * What follows from what people judged of a study with a published instrument: the judgement on the
 * whole by the instrument's own rule, what is missing, and the risk of bias of a result. Start at
 * {@link gapwise.appraisal.StudyRisk}. No weight and no band of points is made here, and certainty
 * of a body of evidence does not belong here.
 */
package gapwise.appraisal;
