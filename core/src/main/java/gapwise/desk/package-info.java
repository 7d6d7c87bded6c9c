/**
 * The reviewer's desk: a study as it is typed in, cell by cell as in the template, before it is
 * evidence; what is wrong or doubtful in it, at its cells; what differs between two versions.
 *
 * <p>Start at {@link gapwise.desk.Draft} and {@link gapwise.desk.Drafts}. No rule of its own: a
 * draft is read and checked as a filled template is.
 */
package gapwise.desk;
