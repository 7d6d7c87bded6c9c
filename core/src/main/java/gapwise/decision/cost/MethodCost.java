package gapwise.decision.cost;

/**
 * What one method comes to for a patient, on average over draws.
 *
 * @param method which
 * @param parts mean cost by what it is for
 * @param effect mean effect
 * @param course where the cohort is month by month, at the means of all inputs
 * @param scaled draws in which more than all patients were healed or amputated, and both were
 *     scaled to all
 * @param lengthened draws in which infection and waiting took up the months in treatment, so that
 *     these became longer
 */
public record MethodCost(
    MethodCourse method,
    CostParts parts,
    double effect,
    Trace course,
    int scaled,
    int lengthened) {}
