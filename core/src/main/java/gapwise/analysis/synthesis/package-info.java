/**
 * The task {@code synthesis}: defaults, rules and settings of its plans, and its run, which puts
 * the parts together.
 *
 * <p>Start at {@link gapwise.analysis.synthesis.SynthesisTask}. Each part stands in a room of its
 * own.
 */
package gapwise.analysis.synthesis;
