/**
 * Patients one by one and summaries of arms in one likelihood, with the slope of a moderator within
 * studies kept apart from that across them, so that ecological bias shows.
 *
 * <p>Start at {@link gapwise.synthesis.patients.BinaryModel} for events and {@link
 * gapwise.synthesis.patients.MeasuredModel} for times and other measurements. Plans and JSON do not
 * belong here.
 */
package gapwise.synthesis.patients;
