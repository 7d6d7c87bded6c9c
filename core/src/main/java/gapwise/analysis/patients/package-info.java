/**
 * The task {@code patients-with-summaries}: patients one by one and summaries of arms in one
 * likelihood.
 *
 * <p>Start at {@link gapwise.analysis.patients.PatientsTask}.
 */
package gapwise.analysis.patients;
