/**
 * Regression of effects on what studies differ in: coefficients with intervals and tests, residual
 * differences, predictions, permutation tests, and variances that allow for clusters.
 *
 * <p>Start at {@link gapwise.synthesis.regression.DesignMatrix}, a matrix with named terms, and
 * {@link gapwise.synthesis.regression.LinearModel}. How columns of a table become terms does not
 * belong here.
 */
package gapwise.synthesis.regression;
