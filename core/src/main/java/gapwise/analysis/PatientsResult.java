package gapwise.analysis;

/** Patients and summaries of arms in one likelihood. Part of a {@link Result}. */
public record PatientsResult() {}
