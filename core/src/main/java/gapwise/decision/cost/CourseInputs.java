package gapwise.decision.cost;

/** One value of each input of a course; see {@link CourseDraws#of}. */
record CourseInputs(
    double months, double joined, double infected, double amputated, double reoperated) {}
