/**
 * How often intervals hold what they should, by simulation; docs/methods/coverage.md tells the
 * result. Not part of the tool.
 *
 * <p>Start at {@link gapwise.coverage.CoverageSimulation}.
 */
package gapwise.coverage;
