/**
 * How an event comes over time after each method: published curves of the groups that a question
 * finds, rebuilt and pooled by method through a plan that anyone can run again.
 *
 * <p>Start at {@link gapwise.course.Courses}. What a curve is stands in {@code gapwise.evidence};
 * how curves are rebuilt and pooled in {@code gapwise.synthesis.survival}.
 */
package gapwise.course;
