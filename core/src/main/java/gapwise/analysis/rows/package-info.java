/**
 * Rows that a plan is run on, wherever they come from: a file, the plan itself, the evidence base;
 * and their cells by role.
 *
 * <p>Start at {@link gapwise.analysis.rows.DataTable}. What a role means for a task belongs to the
 * task.
 */
package gapwise.analysis.rows;
